"""The two streams: lines come in one at a time, are looked over before anything hears them, and go out inert.

A line that is too long, cut short, or holds anything but printable text never becomes a command: a count that was cut
off on its way would be a wrong count.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import BinaryIO

from finishing_tui.inert import inert
from finishing_tui.letters import ALIKE
from finishing_tui.recipe.reader.text import named, tidy, unprintable

LONGEST = 1000
"""The longest line that is taken, in bytes: twice the longest note."""

_SENTENCES = re.compile(r"(?<=[.?!]) (?=[^a-z ])")


@dataclass(frozen=True, slots=True)
class Unheard:
    """A line that was not taken, and why, as a sentence."""

    why: str


def read_line(source: BinaryIO) -> str | Unheard | None:
    """Return the next line without its end, or why it is not taken; None at the end of the input.

    A last line without an end may have been cut short, so it is not taken.
    """
    raw = source.readline(LONGEST + 2)
    if not raw:
        return None
    if not raw.endswith(b"\n"):
        if len(raw) <= LONGEST:
            return Unheard("The last line may be cut short, so it is not taken. Nothing was done.")
        rest = raw
        while rest and not rest.endswith(b"\n"):
            rest = source.readline(65536)
    raw = raw.removesuffix(b"\n").removesuffix(b"\r")
    if len(raw) > LONGEST:
        return Unheard(f"That line is too long: use up to {LONGEST} characters. Nothing was done.")
    try:
        line = tidy(raw.decode())
    except UnicodeDecodeError:
        return Unheard("That line is not text in UTF-8. Nothing was done.")
    strange = unprintable(line, allowed="")
    if strange is not None:
        return Unheard(f"That line has {named(strange)} in it. Leave that out. Nothing was done.")
    return line.strip(" ")


def laid_out(lines: Iterable[str]) -> list[str]:
    """Return ``lines`` as they go out: one sentence a line, and every further sentence of a line set in by two spaces.

    Words from outside never begin a line, since each line begins with a word of ours and what follows is set in.
    """
    return ["\n  ".join(_SENTENCES.split(_line(line))) for line in lines if line]


def _line(text: str) -> str:
    """Return ``text`` as one inert line: its own line ends, and whatever passes for one, become spaces first."""
    return inert(" ".join(text.split()), lines=False)


class LineWriter:
    """Writes lines, each of them out before the next; a sign the stream cannot show becomes one like it."""

    def __init__(self, stream: BinaryIO, encoding: str = "utf-8") -> None:
        self._stream = stream
        self._encoding = encoding

    def say(self, lines: Iterable[str]) -> None:
        """Write ``lines``. Raises ``OSError`` when nobody can read them any more."""
        for line in (row for one in laid_out(lines) for row in one.split("\n")):
            self._stream.write(f"{line}\n".encode(self._encoding, ALIKE))
            self._stream.flush()
