"""Spacing: which of the spots along an edge are picked, so that the stitches lie as evenly as can be.

This is the door to everything about rhythms; the rest of the program imports them from here. Everything is exact
and nothing is searched for: the most even rhythm is written down as a formula, and the easy one is two kinds of run.

**Straying.** A rhythm of ``k`` stitches over ``n`` spots strays at spot ``i`` by ``loops(i) - i k/n`` stitches; its
drift is the worst of these. Let ``k/n = p/q`` in lowest terms.

*Open ends.* Among any ``q`` spots in a row ``i p mod q`` takes every value, so the strays of any rhythm lie on all
residues of ``1/q``, and one of them is at least ``floor(q/2)/q``. The line ``floor((i p + floor(q/2)) / q)`` strays
by no more: this is the rounding of Bresenham's line (1965), and up to turning it round it is Toussaint's Euclidean
rhythm E(k, n) (2005).

*Last spot picked* (and so with both). Before the last pick the stray is ``k/n - 1`` at most, so ``1 - k/n`` is a
second lower bound for fewer stitches than spots. It is reached together with the first: an offset of at most
``p - 1`` picks the last spot, one of at least ``q - p`` the first. Above one half ``floor(q/2)`` is both. Up to one
half ``p - 1`` will do for the last spot alone. For both, let the offset (in ``1/n``) slide from ``n - k`` at the
first spot to ``k - 1`` at the last but one: every offset between these strays by at most ``1 - k/n``, and a
line with a sliding offset is a line, ``floor(1 + (i - 1) (k n - n - 1) / (n (n - 2)))``.
"""

from fractions import Fraction
from math import gcd
from typing import Literal

from finishing_tui.craft.easy import easy_closed, easy_open
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.rhythm import Line, Rhythm, Run, Runs, draw
from finishing_tui.craft.saying import say
from finishing_tui.craft.words import plural

__all__ = [
    "Ends",
    "Line",
    "Rhythm",
    "Run",
    "Runs",
    "Style",
    "draw",
    "least_drift",
    "say",
    "space",
]

Style = Literal["easy", "even"]
"""``easy``: runs that a hand remembers, within one stitch of the straight line. ``even``: the least drift there is."""

Ends = Literal["open", "closed", "last"]
"""``open``: the line runs on. ``closed``: first and last spot picked. ``last``: the last one (the rest of a closed)."""


def space(stitches: int, spots: int, *, style: Style = "easy", ends: Ends = "open") -> Rhythm:
    """Spread ``stitches`` over ``spots``, one loop a spot or none, or (more stitches than spots) one or two.

    Raises:
        Impossible: no stitches or no spots, more than two a spot, or ends that cannot be picked.

    """
    _refuse(stitches, spots, ends)
    if style == "even":
        return _even(stitches, spots, ends)
    if ends == "open":
        return easy_open(stitches, spots)
    if stitches == 1 < spots:
        return Runs((Run(0, spots - 1, 1), Run(1, 1, 1)))
    return easy_closed(stitches, spots)


def least_drift(stitches: int, spots: int, ends: Ends = "open") -> Fraction:
    """Return the least drift that any rhythm of ``stitches`` over ``spots`` can have, in stitches.

    Raises:
        Impossible: as for ``space``.

    """
    _refuse(stitches, spots, ends)
    parts = spots // gcd(stitches, spots)
    least = Fraction(parts // 2, parts)
    if ends == "open" or stitches >= spots:
        return least
    return max(least, 1 - Fraction(stitches, spots))


def _even(stitches: int, spots: int, ends: Ends) -> Line:
    """Return the line with the least drift; see the head of this file."""
    common = gcd(stitches, spots)
    p, q = stitches // common, spots // common
    if ends == "open" or 2 * stitches > spots:
        return Line(p, q, q // 2, spots)
    if ends == "last":
        return Line(p, q, p - 1, spots)
    slope, wide = stitches * spots - spots - 1, spots * (spots - 2)
    return Line(slope, wide, wide - slope, spots)


def _refuse(stitches: int, spots: int, ends: Ends) -> None:
    """Raise Impossible, in one sentence, for what cannot be spread."""
    if stitches < 1:
        raise Impossible(f"there must be at least 1 stitch to spread, not {stitches}")
    if spots < 1:
        raise Impossible(f"there must be at least 1 spot to pick up from, not {spots}")
    if stitches > 2 * spots:
        raise Impossible(
            f"{plural(stitches, 'stitch')} cannot be picked up from {plural(spots, 'spot')}: "
            f"a spot takes two at most, so at most {2 * spots}"
        )
    if ends == "closed" and stitches == 1 < spots:
        raise Impossible(
            f"1 stitch cannot close both ends of {plural(spots, 'spot')}: give at least 2 stitches, or open ends"
        )
