"""Marking off an edge: equal parts, so that a count goes wrong in one part only and is put right there.

It divides; what is picked within a part is the work of spacing. Counts of spots and of stitches are divided
by the same rule, so that the parts of both fall together.
"""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.counts import counted
from finishing_tui.craft.even_parts import spread
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.ratio import NearRatio, simplest

APART = 15
"""The most stitches between two markers (Pepperknits, 2020: "about 15")."""


@dataclass(frozen=True, slots=True)
class MarkedEdge:
    """An edge in parts: the spots and the stitches of each, in walking order."""

    spots: tuple[int, ...]
    stitches: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class ByFold:
    """How to pick up along an edge whose rows nobody counted.

    Pick ``rhythm``, fold the edge and mark its half; ``half`` stitches should be on the needle there (give or
    take half a stitch where the total is odd), and that is where to count. ``known`` tells a ratio from a
    gauge from the usual 3 of 4.
    """

    rhythm: NearRatio
    half: int
    known: bool


def divide(n: int, parts: int) -> tuple[int, ...]:
    """Return ``n`` spots or stitches in ``parts`` parts that differ by at most one, spread evenly.

    Every boundary lies within half a spot of its true place, so the parts read the same from both ends wherever that
    is possible (not where n is odd and the parts are even in number).

    Raises:
        Impossible: n is not from 1 to 100,000, or there are more parts than n.

    """
    counted("what is divided", n)
    return spread(n, counted(f"the parts of {n}", parts, 1, n))


def parts_for(stitches: int, apart: int = APART) -> int:
    """Return the fewest parts of at most ``apart`` stitches each.

    Raises:
        Impossible: a number that is not from 1 to 100,000.

    """
    return -(-counted("the stitches", stitches) // counted("the stitches between markers", apart))


def mark(spots: int, stitches: int, parts: int | None = None) -> MarkedEdge:
    """Divide an edge of ``spots`` for ``stitches`` into ``parts`` (None: as few as keep 15 stitches between markers).

    Raises:
        Impossible: a number out of range, or more parts than there are spots or stitches.

    """
    if parts is None:
        parts = min(parts_for(stitches), spots)
    return MarkedEdge(divide(spots, parts), divide(stitches, parts))


def by_fold(stitches: int, natural: Fraction | None, usual: Fraction = Fraction(3, 4)) -> ByFold:
    """Return how to pick ``stitches`` along an edge of unknown length in spots.

    ``natural`` is the natural ratio, None where no gauge is known; then ``usual`` is worked (3 of 4 along
    rows).

    Raises:
        Impossible: stitches out of range, or a ratio that is not more than 0.

    """
    counted("the stitches", stitches)
    ratio = usual if natural is None else natural
    return ByFold(simplest(ratio), rounded(Fraction(stitches, 2)), natural is not None)
