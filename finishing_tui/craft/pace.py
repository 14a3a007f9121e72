"""Pace: how fast this sitting goes, and an honest time left.

The estimator, so that it can be judged: of the last 40 stretches (from one press to the next) the time of a unit is
taken, and the median of those. A stretch four times as slow as the median, or half an hour a unit, is a pause (tea, a
telephone, a recount) and is left out; what remains is averaged, because an average, unlike a median, adds up to the
time of many units. With fewer than five stretches left nothing is said at all: silence is better than a guess.

Reads no clock: whoever calls brings the times.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from statistics import median_low

from finishing_tui.craft.words import plural

RECENT = 40
"""Stretches looked at: older ones say how it went, not how it goes."""
FEWEST = 5
"""Stretches without a pause below which nothing is said."""
_PAUSE = 4
"""A stretch longer than so many medians is a pause."""
_LONG_MS = 1_800_000
"""A stretch longer than this a unit is a pause whatever the others are."""


@dataclass(frozen=True, slots=True)
class UnitPace:
    """How long one unit takes."""

    ms_per_unit: Fraction
    """Milliseconds."""
    stretches: int
    """From how many stretches without a pause."""

    def time_left(self, units: int) -> int:
        """Return the milliseconds that ``units`` more will take, pauses not counted."""
        return int(self.ms_per_unit * max(units, 0))


def pace_of(stretches: Sequence[tuple[int, int]]) -> UnitPace | None:
    """Return the pace from ``stretches`` of (milliseconds, units done in them), oldest first; None when unknown.

    Stretches without units, or in which the clock ran backwards, are passed over.
    """
    recent = [(ms, units) for ms, units in stretches if ms >= 0 and units > 0][-RECENT:]
    brisk = [(ms, units) for ms, units in recent if ms <= _LONG_MS * units]
    if not brisk:
        return None
    usual = median_low(Fraction(ms, units) for ms, units in brisk)
    steady = [(ms, units) for ms, units in brisk if ms <= _PAUSE * usual * units]
    if len(steady) < FEWEST:
        return None
    spent, done = sum(ms for ms, _ in steady), sum(units for _, units in steady)
    return UnitPace(Fraction(spent, done), len(steady)) if spent else None


def pace_between(times_ms: Sequence[int]) -> UnitPace | None:
    """Return the pace from the moments (milliseconds) at which single units were done; None when unknown."""
    return pace_of([(later - earlier, 1) for earlier, later in pairwise(times_ms)])


def said(milliseconds: int) -> str:
    """Return a time left as one says it, never finer than it is known: ``about 12 min``, ``about 1 h 25 min``."""
    minutes = max(milliseconds, 0) // 60_000
    if milliseconds < 60_000:
        return "less than a minute"
    if minutes >= 10:
        minutes = (milliseconds + 150_000) // 300_000 * 5
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"about {minutes} min"
    return f"about {plural(hours, 'hour')}" + (f" {rest} min" if rest else "")
