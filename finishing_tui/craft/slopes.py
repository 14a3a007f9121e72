"""Slopes given as shaping: how long a shaped edge is, and how many stitches that takes, without rounding a root.

"1 stitch every 2 rows, 5 times, then 18 rows straight" is five hypotenuses, each one stitch wide and two rows
high, and 18 rows of height. Such lengths are square roots, mostly irrational, so this module holds them
between two fractions and narrows these until the whole number asked for is certain. No float is used, ever.

Why the narrowing ends: a sum of square roots of fractions, all with positive factors, is itself a fraction
only if every single root is (square roots of different square-free numbers are linearly independent over the
fractions: A. S. Besicovitch, 1940). If every root is a fraction, both bounds are the sum itself at once.
Otherwise the sum is irrational, hence never exactly half way between two whole numbers, and close enough
bounds round to the same one.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import isqrt

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import rounded, unfolded
from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.words import plural

MOST = 10_000
"""The greatest number of stitches, rows or times in one leg, and of rows in one slope."""

MOST_LEGS = 20
"""The greatest number of legs in one slope."""

FINE = 64
"""Bits after the point to which ``stitches_along`` states an irrational number."""

_WORD = {"once": "1 times", "twice": "2 times", "every row": "every 1 rows", "every other row": "every 2 rows"}
_LEG = re.compile(
    r"(?:(?P<stitches>[0-9]{1,5}) ?(?:stitches|stitch|sts?)? every (?P<every>[0-9]{1,5}) ?(?:th|nd|rd)? ?rows?"
    r",? (?P<times>[0-9]{1,5}) ?times?"
    r"|(?P<rows>[0-9]{1,5}) ?rows?(?: straight)?)",
    re.IGNORECASE,
)
_BETWEEN = re.compile(r" ?(?:,|;)? ?(?:and |then |and then )? ?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Leg:
    """``stitches`` shaped away in ``rows`` rows, done ``times`` times; a straight leg shapes 0 stitches.

    Raises:
        Impossible: rows or times of less than 1, stitches of less than 0, or more than 10,000 of any.

    """

    stitches: int
    rows: int
    times: int = 1

    def __post_init__(self) -> None:
        if not (0 <= self.stitches <= MOST and 1 <= self.rows <= MOST and 1 <= self.times <= MOST):
            raise Impossible(f"a shaping needs at least 1 row and 1 time, and at most {MOST} stitches, rows and times")


def straight(rows: int) -> Leg:
    """Return the leg of ``rows`` rows without shaping."""
    return Leg(0, rows)


def rows_of(legs: Sequence[Leg]) -> int:
    """Return how many rows the slope has, that is, its spots where the unit is a row.

    Raises:
        Impossible: no leg, more than 20, or more than 10,000 rows.

    """
    rows = sum(leg.rows * leg.times for leg in legs)
    if not legs or len(legs) > MOST_LEGS or rows > MOST:
        raise Impossible(f"a slope has 1 to {MOST_LEGS} parts and at most {MOST} rows in all")
    return rows


def _squares(legs: Sequence[Leg], body: Gauge, band: Gauge) -> list[tuple[int, Fraction]]:
    """Return (times, square of the band stitches along one hypotenuse) for each leg."""
    wide, high = band.stitches_per_cm / body.stitches_per_cm, band.stitches_per_cm / body.rows_per_cm
    return [(leg.times, (leg.stitches * wide) ** 2 + (leg.rows * high) ** 2) for leg in legs]


def _bounds(squares: Sequence[tuple[int, Fraction]], bits: int) -> tuple[Fraction, Fraction]:
    """Return fractions at or below and at or above the sum of times × root, equal when every root is a fraction."""
    low = high = Fraction(0)
    for times, square in squares:
        # Root of p/q = root of p·q, over q; moved up by 2·bits binary places before the whole root is taken.
        inside = square.numerator * square.denominator << 2 * bits
        root = isqrt(inside)
        scale = square.denominator << bits
        low += Fraction(times * root, scale)
        high += Fraction(times * (root if root * root == inside else root + 1), scale)
    return low, high


def stitches_along(legs: Sequence[Leg], body: Gauge, band: Gauge | None = None) -> Fraction:
    """Return the band stitches that lie along the slope: its hypotenuses × the band's gauge.

    Exact where the number is a fraction at all, else at most 1/2**64 of a stitch below it for each
    hypotenuse. Use it to share and compare; use ``count_along`` for the whole number of stitches.

    Raises:
        Impossible: a gauge without rows, or a slope out of range.

    """
    rows_of(legs)
    return _bounds(_squares(legs, body, band or body), FINE)[0]


def count_along(legs: Sequence[Leg], body: Gauge, band: Gauge | None = None) -> int:
    """Return the whole number of band stitches nearest to the slope's length; a half (only ever exact) goes up.

    Certain, not approximate: see the module's docstring. Raises as ``stitches_along``.
    """
    rows_of(legs)
    squares = _squares(legs, body, band or body)
    bits = 16
    while True:
        low, high = _bounds(squares, bits)
        if rounded(low) == rounded(high):
            return rounded(low)
        bits *= 2


def read_slope(typed: str) -> tuple[Leg, ...]:
    """Return the legs written in ``typed``: "1 stitch every 2 rows, 5 times, then 18 rows straight".

    Legs are set apart by a comma, a semicolon or "then". "every row", "every other row", "once" and "twice"
    are taken.

    Raises:
        Impossible: another form, or numbers out of range.

    """
    text = unfolded(typed[:500])
    for word, meant in _WORD.items():
        text = re.sub(rf"\b{word}\b", meant, text, flags=re.IGNORECASE)
    legs: list[Leg] = []
    at = 0
    while at < len(text) and len(typed) <= 500:
        found = _LEG.match(text, at)
        if found is None:
            break
        if found["rows"]:
            legs.append(straight(int(found["rows"])))
        else:
            legs.append(Leg(int(found["stitches"]), int(found["every"]), int(found["times"])))
        gap = _BETWEEN.match(text, found.end())
        at = gap.end() if gap else found.end()
        if at == found.end() and at < len(text):
            break
    if at < len(text) or not legs:
        raise Impossible(
            f"{typed[:80]!r} is not a slope that can be read here: write it as "
            "'1 stitch every 2 rows, 5 times, then 18 rows straight'"
        )
    rows_of(legs)
    return tuple(legs)


def say_slope(legs: Sequence[Leg]) -> str:
    """Return the slope in the words that ``read_slope`` takes."""
    return ", then ".join(_say_leg(leg) for leg in legs)


def _say_leg(leg: Leg) -> str:
    if leg.stitches == 0:
        return f"{plural(leg.rows * leg.times, 'row')} straight"
    every = "every row" if leg.rows == 1 else f"every {leg.rows} rows"
    return f"{plural(leg.stitches, 'stitch')} {every}, {plural(leg.times, 'time')}"
