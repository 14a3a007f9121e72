"""Runs the conversation on two streams, from picking the garment up to putting it down, however it ends."""

import os
import signal
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import UTC
from pathlib import Path
from types import FrameType
from typing import BinaryIO

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.clock import Clock
from finishing_tui.garment.commands import ChoosePace
from finishing_tui.garment.events import Pace
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import InUse, OnlyToRead
from finishing_tui.glance.coming_back import coming_back
from finishing_tui.glance.wishes import Wishes
from finishing_tui.plain import telling
from finishing_tui.plain.line_by_line import LineByLine
from finishing_tui.plain.rescuing import settle
from finishing_tui.plain.streams import LineWriter, Unheard, read_line
from finishing_tui.settings import Settings
from finishing_tui.settings.looks import looks_in_force

WAIT = 5.0
"""Seconds an answer waits for the disk, while nothing is known to be wrong."""

WAIT_IN_TROUBLE = 0.2
"""The same once saving has failed, so that the hands can go on."""

EAGER_MS = 120
"""A line that comes sooner than this after an answer was not typed by someone who has heard it."""


class Ended(Exception):
    """A signal asked for the end while a line was waited for."""


@dataclass
class _Ends:
    waiting: bool = False
    asked: bool = False

    def heard(self, _number: int, _frame: FrameType | None) -> None:
        self.asked = True
        if self.waiting:  # never in the middle of a command: what was begun is brought to its end
            raise Ended


def work(
    folder: Path,
    source: BinaryIO,
    sink: BinaryIO,
    *,
    encoding: str = "utf-8",
    clock: Clock | None = None,
    settings: Settings | None = None,
    said: str = "",
) -> None:
    """Work the garment in ``folder`` by the lines of ``source``, with the answers on ``sink``.

    ``settings``: the usual ones when not given; of them the pace and the units hold here. ``said``: the first line.

    Raises ``FinishingError`` with a sentence: no garment, a journal that cannot be opened, entries that could not be
    saved.
    """
    clock, out = clock or Clock(), LineWriter(sink, encoding)
    with _listening() as ends, suppress(Ended):

        def says_yes(lines: Sequence[str]) -> bool:
            out.say(lines)
            return _line(source, ends) == "yes"

        out.say([said])
        settled = settle(folder, says_yes)
        look, hand = settled.look, None
        try:
            hand = InHand.open(folder, look=look, clock=clock)
        except (InUse, OnlyToRead) as error:
            if not says_yes([str(error), "Look at it only? Type yes or no."]):
                raise
            look, hand = True, InHand.open(folder, look=True, clock=clock)
        settings = settings or Settings()
        talk = LineByLine(hand, clock, Wishes(units=settings.units), look=look)
        try:
            out.say(settled.lines)
            _talked(talk, hand, source, out, clock, ends, settings.pace, look=look)
        except (Ended, KeyboardInterrupt, OSError):
            pass  # nobody answers any more, or nobody can hear: put it down
        finally:
            if not look:
                hand.put_down(talk.where)
            hand.close()
        if hand.given_up is not None:
            raise FinishingError(str(hand.given_up))
        with suppress(OSError):
            out.say(["you only looked; nothing changed." if look else "put down; everything is kept."])


def _talked(
    talk: LineByLine,
    hand: InHand,
    source: BinaryIO,
    out: LineWriter,
    clock: Clock,
    ends: _Ends,
    pace: Pace,
    *,
    look: bool,
) -> None:
    """Talk until the end."""
    back = coming_back(hand.state, clock.now().astimezone(UTC)) if hand.state.sittings else None
    if not look:
        hand.pick_up()
        if back is None:
            hand.do(ChoosePace(pace))
    unsaved = False
    lines = [*(telling.came_back(back) if back else []), *talk.greet()]
    while True:
        told = _settled(hand, before=unsaved)
        unsaved = bool(hand.unsaved)
        out.say([*told, *lines])
        if talk.ends:
            return
        said_at = clock.ticks()
        line = _line(source, ends)
        if line is None:
            return
        eager = clock.ticks() - said_at < EAGER_MS
        meanwhile: list[str] = []
        if look:  # another window may have gone on while the line was waited for
            before = hand.state
            hand.hear(hand.news(), hand.known)
            meanwhile = talk.meanwhile(before)
        answer = [line.why, *talk.hear_nothing()] if isinstance(line, Unheard) else talk.hear(line, eager=eager)
        lines = [*meanwhile, *answer]


def _settled(hand: InHand, *, before: bool) -> list[str]:
    """Wait for the disk, and return what is to be said of it: nothing, as long as all goes well."""
    if hand.flush(WAIT_IN_TROUBLE if hand.trouble else WAIT):
        return ["saved: everything is on the disk again."] if before else []
    return [f"not saved yet: {hand.unsaved}. {hand.trouble}"]


def _line(source: BinaryIO, ends: _Ends) -> str | Unheard | None:
    if ends.asked:
        raise Ended
    ends.waiting = True
    try:
        return read_line(source)
    finally:
        ends.waiting = False


@contextmanager
def _listening() -> Iterator[_Ends]:
    """Let a hang-up, an interrupt or a terminate signal end the conversation properly, where the system has them."""
    ends = _Ends()
    kept = {}
    for name in ("SIGHUP", "SIGTERM", "SIGINT"):
        number = getattr(signal, name, None)
        if number is not None:
            with suppress(ValueError):  # not the main thread: the journal is safe without it
                kept[number] = signal.signal(number, ends.heard)
    try:
        yield ends
    finally:
        for number, handler in kept.items():
            signal.signal(number, handler)


def on_standard_streams(folder: Path, settings: Settings) -> None:
    """Work the garment in ``folder`` on standard input and output; raises ``FinishingError`` as ``work`` does."""
    looks, said = looks_in_force(settings, sys.stdout)
    encoding = "ascii" if "ascii" in looks else sys.stdout.encoding
    try:
        work(folder, sys.stdin.buffer, sys.stdout.buffer, encoding=encoding, settings=settings, said=said)
    finally:
        try:
            sys.stdout.flush()
        except OSError:  # the reader is gone; without this the interpreter would complain of it at its end
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
