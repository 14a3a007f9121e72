"""How far to rip back so that the rest of a section lies flat: no further than need be, or not at all.

Which loops were made where is not known between two counts, so they are taken as evenly spread; the answer is a
spot and the loops that are left there, as hands rip back ("until 14 loops are left, at row 22").
"""

from bisect import bisect_left
from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.judging import FLAT, Verdict, base_of, judge


@dataclass(frozen=True, slots=True)
class RipBack:
    """Take out until ``loops`` loops are left, at ``spot``."""

    spot: int
    loops: int


@dataclass(frozen=True, slots=True)
class WorkedStretch:
    """A section in work: what was counted at its last count (``since``, 0 at 0 if none) and what is here now.

    ``target`` stitches from ``spots`` spots are wanted; ``counted`` loops are there at spot ``at``, which lies beyond
    ``since_spot``; ``natural`` is the natural ratio and ``per_10cm`` the band stitches in 10 cm, if known.
    """

    target: int
    spots: int
    at: int
    counted: int
    since_loops: int
    since_spot: int
    natural: Fraction
    per_10cm: int | None

    def loops_at(self, spot: int) -> int:
        """Loops at a spot between the last count and here, taken as evenly spread: the even rhythm's own count."""
        wide = self.at - self.since_spot
        made = self.counted - self.since_loops
        return self.since_loops + (2 * (spot - self.since_spot) * made + wide) // (2 * wide)

    def flat_from(self, spot: int) -> bool:
        """Return whether the rest lies flat when all beyond ``spot`` is taken out."""
        left = self.target - self.loops_at(spot)
        judged = judge(left, self.spots - spot, self.natural, target=self.target, per_10cm=self.per_10cm)
        return judged.verdict is Verdict.LIES_FLAT


def rip_back(stretch: WorkedStretch) -> RipBack | None:
    """Return the largest spot before here, not before the last count, from which the rest lies flat; None if none.

    The rest lies flat when it is off by no more than ``max(1, base/20)``; without rounding the loops, off is a
    straight line over the spots, and the limit a convex one. So off minus its limit, and half a loop for the
    rounding, is concave, and where it is above nought here it stays so back to one single spot, found by halving.
    From there the exact answer is at most a few spots away, unless the two lines run side by side.
    """
    start = _last_hope(stretch)
    if start is None:
        return None
    for spot in range(start, stretch.since_spot - 1, -1):
        if stretch.flat_from(spot):
            return RipBack(spot, stretch.loops_at(spot))
    return None


def _last_hope(stretch: WorkedStretch) -> int | None:
    """Return a spot before here beyond which the rest surely does not lie flat; None if it nowhere does."""
    spots = range(stretch.since_spot, stretch.at)
    sign = 1 if _off(stretch, spots[-1]) > 0 else -1
    if not _hopeless(stretch, spots[-1], sign):
        return spots[-1]
    hopeful = bisect_left(spots, x=True, key=lambda spot: _hopeless(stretch, spot, sign))
    return spots[hopeful - 1] if hopeful else None


def _off(stretch: WorkedStretch, spot: int) -> Fraction:
    """Return how much the rest from ``spot`` would be off, the loops spread without rounding."""
    made = Fraction(stretch.counted - stretch.since_loops, stretch.at - stretch.since_spot)
    loops = stretch.since_loops + made * (spot - stretch.since_spot)
    return stretch.target - loops - stretch.natural * (stretch.spots - spot)


def _hopeless(stretch: WorkedStretch, spot: int, sign: int) -> bool:
    """Return whether the rest from ``spot`` is further off, to the side of ``sign``, than rounding can mend."""
    base = base_of(stretch.spots - spot, stretch.natural, target=stretch.target, per_10cm=stretch.per_10cm)
    return sign * _off(stretch, spot) > max(Fraction(1), FLAT * base) + Fraction(1, 2)
