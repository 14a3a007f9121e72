"""A key that is held down is not knitting: its own repeat is told from a person's taps by its even beat.

A keyboard repeats a key after a first pause, and from then on evenly and faster than hands tap. Taps of a person who
catches up are uneven, or slower, or come in one read where the machine was busy: each of them counts.
"""

from finishing_tui.garment.stops import stops
from finishing_tui.talk.action import Action
from finishing_tui.talk.conversation import Held, Talk

PAUSE = (0.2, 0.7)
"""Seconds that a keyboard waits before it begins to repeat a key, at least and at most."""

SLOWEST = 0.1
"""Seconds between two keys of a repeat, at most; hands are slower than that."""

ONE_READ = 0.005
"""Keys that came closer than this came in one read of the terminal: nothing is known of their beat."""

EVEN = 0.01
"""Seconds by which the gaps of a repeat differ, at most."""

GAPS = 4
"""So many even gaps in a row after the pause are a repeat."""


class Beat:
    """Hears every key with when it came, in seconds, and knows a repeat once it has begun."""

    def __init__(self) -> None:
        self._key = ""
        self._came = 0.0
        self._mark = 0
        self._marks = (0, 0)
        self._gaps: tuple[float, ...] | None = None  # since the pause; None where there was none
        self._held = False

    def came(self, key: str, at: float, mark: int) -> tuple[int, int] | None:
        """Hear ``key``; return the marks of the first two keys of its repeat, or None for a person's own.

        ``mark``: whatever tells the moment before this key was taken. What is known for a repeat stays one until there
        is a pause, or another key: a busy machine may blur the beat of a key that is still held.
        """
        gap = at - self._came if key == self._key else SLOWEST
        before, self._key, self._came, self._mark = self._mark, key, at, mark
        if gap >= SLOWEST:
            self._gaps = () if PAUSE[0] <= gap <= PAUSE[1] else None
            self._marks, self._held = (before, mark), False
        elif not self._held and self._gaps is not None:
            self._gaps = gaps = (*self._gaps, gap)[-GAPS:]
            self._held = len(gaps) == GAPS and min(gaps) >= ONE_READ and max(gaps) - min(gaps) < EVEN
        return self._marks if self._held else None


def hold(talk: Talk, act: Action, marks: tuple[int, int]) -> None:
    """Count one more of a held key, never past a stop; what is no knitting is done once, by the key's first press.

    ``marks``: how many events were known at its first press, and at its second. When it is first known for a held key,
    what it did is made one act, and what went too far is taken back.
    """
    since, second = marks
    held = talk.held
    if held is None or held.since != since:
        presses = talk.hand.hold(since, None if act.held == "on" else second)
        held = Held(since, presses, talk.state.top, stopped=act.held == "once" or stops(talk.state))
    if not held.stopped:
        known, talk.joins = talk.hand.known, True
        try:
            act.does(talk)
        finally:
            talk.joins = False
        refused = talk.hand.known == known
        held = Held(since, held.presses + (not refused), talk.state.top, stopped=refused or stops(talk.state))
        if refused:  # and said why
            talk.held = held
            return
    talk.held = held
    if act.held == "once":
        talk.say("key held: it is taken once")
        return
    many, back = held.presses, talk.keys.begins("needles.take_back")
    stopped = "; it stops here" if held.stopped else ""
    talk.say(f"key held: {many} counted{stopped}. {back} takes back all {many}" if many > 1 else f"key held{stopped}")
