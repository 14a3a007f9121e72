"""How the rest of a section will lie, from what is still to be picked and what is left to pick it from.

The one place that knows the limits of 5 and 10 per cent. It judges; what to do about it is for ``craft.recount``.
"""

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from finishing_tui.craft.errors import Impossible

FLAT = Fraction(1, 20)
"""A change of up to one in twenty, inclusive, lies flat."""

SHOWS = Fraction(1, 10)
"""Beyond that a change of up to one in ten, inclusive, just shows."""

USUAL_PER_10CM = 20
"""Band stitches in 10 cm where the gauge is not known."""


class Verdict(Enum):
    """How the rest will lie; the value is what it is stored as."""

    LIES_FLAT = "lies-flat"
    JUST_SHOWS = "just-shows"
    WILL_PUCKER = "will-pucker"
    """Too few stitches in what is left."""
    WILL_FLARE = "will-flare"
    """Too many stitches in what is left."""
    CANNOT_BE = "cannot-be"


@dataclass(frozen=True, slots=True)
class Judgement:
    """What is left, judged.

    ``off`` is how many stitches too many (below 0: too few) the rest has for its spots; ``change`` is that as a share
    of the stitches it should have, or of 10 cm of the band where the rest is shorter than that.
    """

    off: Fraction
    change: Fraction
    verdict: Verdict


def judge(
    target_left: int, spots_left: int, natural: Fraction, *, target: int, per_10cm: int | None = None
) -> Judgement:
    """Judge ``target_left`` stitches still to come out of ``spots_left`` spots.

    ``natural`` is the natural ratio of the edge in stitches a spot, ``target`` the stitches of the whole section and
    ``per_10cm`` the band stitches in 10 cm (None: 20 are taken). Common practice, no source: one stitch more or less
    never shows, and neither does one in twenty.

    Raises:
        Impossible: a ratio, target or gauge that is not above nothing, or fewer than no spots.

    """
    if natural <= 0 or target < 1 or spots_left < 0 or (per_10cm is not None and per_10cm < 1):
        raise Impossible("the ratio, the target and the stitches in 10 cm must be more than 0, and spots at least 0")
    off = target_left - natural * spots_left
    change = off / base_of(spots_left, natural, target=target, per_10cm=per_10cm)
    return Judgement(off, change, _verdict(target_left, spots_left, off, change))


def base_of(spots_left: int, natural: Fraction, *, target: int, per_10cm: int | None) -> Fraction:
    """Return the stitches that a change is a share of: what is left by nature, or 10 cm of band if that is more."""
    short = Fraction(min(target, USUAL_PER_10CM if per_10cm is None else per_10cm))
    return max(natural * spots_left, short)


def _verdict(target_left: int, spots_left: int, off: Fraction, change: Fraction) -> Verdict:
    """Put the word to it. Nothing left of either is the end of a section that came out."""
    if not 0 <= target_left <= 2 * spots_left:
        return Verdict.CANNOT_BE
    if abs(off) <= 1 or abs(change) <= FLAT:
        return Verdict.LIES_FLAT
    if abs(change) <= SHOWS:
        return Verdict.JUST_SHOWS
    return Verdict.WILL_FLARE if off > 0 else Verdict.WILL_PUCKER


def one_row_can(change: int, of: int) -> bool:
    """Return whether one row or round makes ``of`` stitches ``change`` more (below 0: fewer), at most one at each."""
    return -(of // 2) <= change <= of
