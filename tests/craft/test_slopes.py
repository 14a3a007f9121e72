"""Slopes given as shaping: exact although their lengths are square roots."""

from contextlib import suppress
from fractions import Fraction
from math import isqrt

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from sympy import Rational, floor, sqrt

from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.lengths import length
from finishing_tui.craft.slopes import Leg, count_along, read_slope, rows_of, say_slope, stitches_along, straight

legs = st.builds(Leg, st.integers(0, 6), st.integers(1, 8), st.integers(1, 12))
slopes = st.lists(legs, min_size=1, max_size=4).map(tuple)
gauges = st.builds(
    lambda s, r: Gauge(Fraction(s), Fraction(r), length(10, "cm")), st.integers(8, 40), st.integers(8, 60)
)
SQUARE = Gauge(Fraction(20), Fraction(20), length(10, "cm"))
"""A fabric whose stitches are as wide as high: whole-number triangles come out whole."""


@given(slopes, gauges, gauges)
def test_the_count_is_right_to_the_stitch(slope: tuple[Leg, ...], body: Gauge, band: Gauge) -> None:
    """The rounded count is the one that sympy (an outside reference) finds from the exact square roots."""
    wide, high = band.stitches / body.stitches, band.stitches / (body.rows or 1)
    exact = sum(
        leg.times * sqrt(Rational(*((leg.stitches * wide) ** 2 + (leg.rows * high) ** 2).as_integer_ratio()))
        for leg in slope
    )
    assert count_along(slope, body, band) == int(floor(exact + Rational(1, 2)))


@given(slopes, gauges)
def test_the_fraction_lies_just_below_the_true_length(slope: tuple[Leg, ...], body: Gauge) -> None:
    """Squared, for a single hypotenuse, it is at most the true square and misses it by next to nothing."""
    leg = slope[0]
    found = stitches_along((Leg(leg.stitches, leg.rows),), body)
    square = leg.stitches**2 + (leg.rows * body.stitches / (body.rows or 1)) ** 2
    assert found**2 <= square < (found + Fraction(1, 2**64)) ** 2
    assert rounded(stitches_along(slope, body)) in {count_along(slope, body), count_along(slope, body) - 1}


@given(slopes, gauges)
def test_a_slope_takes_more_than_its_rows(slope: tuple[Leg, ...], body: Gauge) -> None:
    """A slope is never shorter than its rows without shaping, and as long only if nothing is shaped."""
    rows = rows_of(slope)
    flat = stitches_along((straight(rows),), body)
    assert flat == rows * body.stitches_per_cm / body.rows_per_cm
    if any(leg.stitches for leg in slope):
        assert stitches_along(slope, body) > flat
    else:
        assert stitches_along(slope, body) == flat


@given(slopes, gauges)
def test_the_order_of_the_legs_does_not_matter(slope: tuple[Leg, ...], body: Gauge) -> None:
    """Walked from the other end, a slope takes the same stitches."""
    assert stitches_along(slope[::-1], body) == stitches_along(slope, body)


@given(st.integers(0, 5), st.integers(1, 8), st.integers(1, 12), gauges)
def test_steeper_shaping_is_longer(stitches: int, rows: int, times: int, body: Gauge) -> None:
    """One stitch more shaped away in the same rows never makes the edge shorter."""
    assert stitches_along((Leg(stitches, rows, times),), body) < stitches_along((Leg(stitches + 1, rows, times),), body)


@pytest.mark.parametrize(("stitches", "rows", "side"), [(3, 4, 5), (4, 3, 5), (5, 12, 13), (8, 15, 17), (20, 21, 29)])
def test_whole_triangles_are_whole(stitches: int, rows: int, side: int) -> None:
    """Where the hypotenuse is a whole number (Pythagoras) the answer is exactly that number."""
    assert stitches_along((Leg(stitches, rows, 7),), SQUARE) == 7 * side
    assert count_along((Leg(stitches, rows, 7),), SQUARE) == 7 * side


def test_long_slopes_are_right_to_the_stitch_too() -> None:
    """1 stitch every row, n times, in a square fabric is n·√2, whose rounding whole numbers alone decide."""
    for times in range(1, 10_000, 9):
        assert count_along((Leg(1, 1, times),), SQUARE) == (isqrt(8 * times * times) + 1) // 2


def test_an_exact_half_goes_up() -> None:
    """3 and 4 at half the band's gauge are 2 1/2 stitches exactly, and 3 in whole ones."""
    band = Gauge(Fraction(10), None, length(10, "cm"))
    assert stitches_along((Leg(3, 4),), SQUARE, band) == Fraction(5, 2)
    assert count_along((Leg(3, 4),), SQUARE, band) == 3


@given(st.lists(legs, min_size=1, max_size=6).map(tuple))
def test_what_is_said_is_read_back(slope: tuple[Leg, ...]) -> None:
    """A slope said in words reads back as a slope of the same legs."""
    assume(sum(leg.rows * leg.times for leg in slope) <= 10_000)
    meant = tuple(straight(leg.rows * leg.times) if leg.stitches == 0 else leg for leg in slope)
    assert read_slope(say_slope(slope)) == meant


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("1 stitch every 2 rows, 5 times, then 18 rows straight", (Leg(1, 2, 5), straight(18))),
        ("1 st every other row 5 times; 18 rows", (Leg(1, 2, 5), straight(18))),
        ("2 sts every row twice, 1 stitch every 4th row 3 times and 6 rows straight",
         (Leg(2, 1, 2), Leg(1, 4, 3), straight(6))),
        ("1 stitch every 2 rows, 1 time", (Leg(1, 2, 1),)),
    ],
)  # fmt: skip
def test_the_ways_of_writing(typed: str, meant: tuple[Leg, ...]) -> None:
    """The ways a pattern writes shaping are understood."""
    assert read_slope(typed) == meant


@pytest.mark.parametrize(
    "typed",
    ["", "1", "rows", "0 rows", "1 stitch every 0 rows, 5 times", "1 stitch every 2 rows", "5 times",
     "1 stitch every 99999 rows, 99999 times", "18 rows straight and a bit", "1 row, " * 60, "x" * 9000],
)  # fmt: skip
def test_what_is_no_slope_is_refused(typed: str) -> None:
    """Half a shaping, nothing, and absurd sizes are refused in one sentence."""
    with pytest.raises(Impossible):
        read_slope(typed)


@given(st.text(max_size=80))
def test_any_text_is_a_slope_or_one_sentence(typed: str) -> None:
    """Whatever is typed is read, or refused by the project's own error."""
    with suppress(FinishingError):
        assert rows_of(read_slope(typed)) > 0
