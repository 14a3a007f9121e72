"""The one gate through which text from outside reaches the screen, inert.

Recipes, garments and notes come from outside. Whatever they hold is shown as it stands: no markup, no control
character, no override of direction. Widgets take ``Content`` only, and ``plain`` is what makes it.
"""

import re
from collections.abc import Iterable, Sequence

from textual.content import Content

from finishing_tui.inert import inert

_SPACE = re.compile(r"\s")

_END = re.compile(r"[.!?](?= [^a-z(])")
"""The end of a sentence before another one; an inch that is shortened ends none."""

_PAUSE = re.compile(r"(?:[,;]| ·)(?= |$)| (?=[(])")
"""Where a sentence may be cut, if it must be, and most of the line is left."""

_CLAUSE = 24
"""The fewest signs of a clause that stands by itself where the rest of its sentence is cut."""

_LONG_WORD = re.compile(r"\S{20,}")
"""A word that may not fit on a line, such as a path."""


def plain(text: str, style: str = "") -> Content:
    """Return ``text`` as one inert line; ``style`` is ours, and may name theme variables ("bold $count")."""
    if not text.isprintable():
        text = inert(_SPACE.sub(" ", text), lines=False)  # line ends and tabs are spaces here
    return Content.styled(text, style)


def plain_rows(texts: Iterable[str], style: str = "") -> list[Content]:
    """Return each of ``texts`` as one inert line, all in one style."""
    return [Content.styled(text, style) if text.isprintable() else plain(text, style) for text in texts]


def wrapped(content: Content, width: int, most: int = 0) -> list[Content]:
    """Return ``content`` in lines of ``width`` cells; of more than ``most`` lines, the last shows an ellipsis."""
    if len(content) > width and max(map(len, content.plain.split()), default=0) > width:
        content = _breakable(content, width)
    lines = content.wrap(max(width, 1))
    if most and len(lines) > most:
        lines = [*lines[: most - 1], (lines[most - 1] + Content(" …")).truncate(width, ellipsis=True)]
        if lines[-1].plain[-1:] != "…":
            lines[-1] = lines[-1].truncate(max(width - 1, 1)) + Content("…")
    return lines


def _breakable(content: Content, width: int) -> Content:
    """Return ``content`` with a place to break in every word that is too long: behind a stroke or a dash, if it can."""
    for word in reversed([*_LONG_WORD.finditer(content.plain)]):
        at, breaks = word.start(), list[int]()
        while word.end() - at > width:
            dash = max(content.plain.rfind(sign, at, at + width) for sign in "/-")
            at = dash + 1 if dash > at else at + max(width, 1)
            breaks.append(at)
        for place in reversed(breaks):
            content = content[:place] + Content(" ") + content[place:]
    return content


def cut_short(lines: list[Content], width: int, most: int, help_key: str = "") -> list[Content]:
    """Return at most so many lines, wrapped before, that end with a sentence if they can.

    Where that is not all of them, the last says so, and which key shows the rest.
    """
    if len(lines) <= most or not most:
        return lines[:most]
    more = plain(f" … {help_key} shows all" if help_key else " …", "$quiet")
    for at in range(most - 1, -1, -1):
        text, after = lines[at].plain, lines[at + 1].plain
        every = [end.end() for end in _END.finditer(f"{text} {after[:1]}")]
        ends = [end for end in every if end <= width - more.cell_length]
        if ends:
            return [*lines[:at], lines[at][: ends[-1]] + more]
        if every and at + 1 < most:
            return [*lines[:at], lines[at][: every[-1]], more[1:]]
        if at and _END.search(f"{lines[at - 1].plain[-1:]} {text[:1]}"):
            return [*lines[:at], more[1:]]
    last = wrapped(lines[most - 1], max(width - more.cell_length, 1))[0].rstrip()
    clauses = [at for at, sign in enumerate(last.plain) if sign == ";" and at > _CLAUSE]
    pauses = [pause.start() for pause in _PAUSE.finditer(last.plain) if pause.start() * 2 > width]
    if clauses or pauses:
        last = last[: (clauses or pauses)[-1]]
    return [*lines[: most - 1], last + more]


def packed(texts: Iterable[str], width: int, style: str = "") -> list[Content]:
    """Return short ``texts`` one beside the other, in as many lines as they need; none is torn apart."""
    lines: list[str] = []
    for text in texts:
        longer = f"{lines[-1]}   {text}" if lines else text
        lines = [*lines[:-1], longer] if lines and Content(longer).cell_length <= width else [*lines, text]
    return plain_rows(lines, style)


def between(left: Content, right: Content, width: int) -> Content:
    """Return ``left`` and ``right`` at the two ends of a line ``width`` cells wide; the left gives way."""
    room = width - right.cell_length - 2
    left = left if left.cell_length <= room else left.truncate(max(room, 0), ellipsis=True)
    return left + Content(" " * (width - left.cell_length - right.cell_length)) + right


def fits_between(left: Content, right: Content, width: int) -> bool:
    """Return whether both fit on one line with room between them."""
    return left.cell_length + right.cell_length + 2 <= width


def told_apart(names: Sequence[str]) -> list[str]:
    """Return names without the words that they begin with like others of them, where there is no room for these."""
    split = [name.split() for name in names]
    alike = [[other for other in split if other[:1] == words[:1]] for words in split]
    return [" ".join(words[_same(others) :]) for words, others in zip(split, alike, strict=True)]


def _same(split: Sequence[Sequence[str]]) -> int:
    """Return how many words several names all begin with; each keeps its last one."""
    same = 0
    while len(split) > 1 and all(len(words) > same + 1 and words[same] == split[0][same] for words in split):
        same += 1
    return same
