"""Simple rhythms near a ratio: what a hand can remember instead of "103 of every 137", and how far off it is.

The candidates are the nodes on the way to the ratio in the Stern-Brocot tree (M. Stern 1858, A. Brocot 1861):
every fraction that no other of the same or a smaller denominator beats on its own side of the ratio. It only
compares ratios; setting stitches over the spots of an edge is the work of spacing.
"""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.judging import FLAT


@dataclass(frozen=True, slots=True)
class NearRatio:
    """Pick ``pick`` of every ``of`` spots; ``error`` is how far that is off, as a share of the ratio wanted.

    An error of 1/20 is 5 % too many, -1/15 is 6.7 % too few.
    """

    pick: int
    of: int
    error: Fraction

    @property
    def ratio(self) -> Fraction:
        """Stitches for each spot."""
        return Fraction(self.pick, self.of)


def near_ratios(wanted: Fraction, most: int = 10) -> tuple[NearRatio, ...]:
    """Return the simple ratios near ``wanted`` (stitches a spot) of at most ``most`` spots a time, nearest first.

    Each is the nearest on its own side for its size; equally near ones stand simpler first. The first one is
    the nearest there is. ``wanted`` itself is among them when its denominator allows it, and then nothing
    nearer exists.

    Raises:
        Impossible: ``wanted`` is not more than 0 or is over 100, or ``most`` is not from 1 to 1,000.

    """
    if not 0 < wanted <= 100:
        raise Impossible("a ratio must be more than 0 and at most 100 stitches a spot")
    if not 1 <= most <= 1000:
        raise Impossible("a rhythm may be from 1 to 1,000 spots long")
    below = (wanted.numerator // wanted.denominator, 1)
    above = (below[0] + 1, 1)
    found = [below] if below[0] * wanted.denominator == wanted.numerator else [below, above]
    while Fraction(*below) != wanted:
        between = (below[0] + above[0], below[1] + above[1])
        if between[1] > most:
            break
        found.append(between)
        if Fraction(*between) > wanted:
            above = between
        else:
            below = between
    near = [NearRatio(pick, of, Fraction(pick, of) / wanted - 1) for pick, of in found if pick]
    return tuple(sorted(near, key=lambda one: (abs(one.error), one.of, one.pick)))


def simplest(wanted: Fraction, within: Fraction = FLAT) -> NearRatio:
    """Return the ratio of the fewest spots a time that is at most ``within`` (a share of it) off ``wanted``.

    Of two with equally many spots the nearer one. ``wanted`` must be more than 0, at most 100, and ``within``
    more than 0; where nothing of up to 1,000 spots a time is as near as that, the nearest of them.
    """
    for most in (10, 100, 1000):
        good = [one for one in near_ratios(wanted, most) if abs(one.error) <= within]
        if good:
            return min(good, key=lambda one: (one.of, abs(one.error), one.pick))
    return near_ratios(wanted, 1000)[0]
