"""Simple rhythms near a ratio."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sympy import Rational, continued_fraction, continued_fraction_convergents

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.judging import FLAT
from finishing_tui.craft.ratio import near_ratios, simplest

ratios = st.fractions(Fraction(1, 50), 3, max_denominator=200)


@given(ratios, st.integers(1, 12))
def test_the_first_is_the_nearest_there_is(wanted: Fraction, most: int) -> None:
    """No fraction of so few spots lies nearer, by trying them all."""
    best = min(abs(Fraction(pick, of) - wanted) for of in range(1, most + 1) for pick in range(1, int(wanted * of) + 2))
    assert abs(near_ratios(wanted, most)[0].ratio - wanted) == best


@given(ratios, st.integers(1, 12))
def test_exactly_the_best_on_each_side_are_listed(wanted: Fraction, most: int) -> None:
    """Those listed are, by trying all, just the ones that no fraction of as few spots beats on its own side."""
    every = {Fraction(pick, of) for of in range(1, most + 1) for pick in range(1, int(wanted + 1) * of + 1)}
    best = {
        one
        for one in every
        if abs(one - wanted) < 1
        and not any(
            other.denominator <= one.denominator
            and (min(wanted, one) < other < max(wanted, one) or (other == wanted != one))
            for other in every
        )
    }
    assert {one.ratio for one in near_ratios(wanted, most)} == best


@given(ratios)
def test_the_convergents_of_the_continued_fraction_are_among_them(wanted: Fraction) -> None:
    """Sympy's convergents (an outside reference) with few enough spots are all found."""
    terms = continued_fraction(Rational(wanted.numerator, wanted.denominator))
    convergents = {Fraction(int(one.p), int(one.q)) for one in continued_fraction_convergents(terms)}
    found = {one.ratio for one in near_ratios(wanted, 10)}
    assert {one for one in convergents if one.denominator <= 10 and one > 0} <= found


@given(ratios, st.integers(1, 12))
def test_the_errors_are_exact_and_in_order(wanted: Fraction, most: int) -> None:
    """Each error is ratio ÷ wanted - 1, the nearest stand first, and all are in lowest terms."""
    near = near_ratios(wanted, most)
    assert [one.error for one in near] == [one.ratio / wanted - 1 for one in near]
    sizes = [abs(one.error) for one in near]
    assert sizes == sorted(sizes)
    assert all(one.ratio.denominator == one.of for one in near)


@given(ratios)
def test_the_simplest_is_as_simple_as_can_be(wanted: Fraction) -> None:
    """It lies within 5 %, and no fraction of fewer spots does."""
    found = simplest(wanted)
    assert abs(found.error) <= FLAT
    for of in range(1, found.of):
        for pick in range(1, int(wanted * of) + 2):
            assert abs(Fraction(pick, of) / wanted - 1) > FLAT


def test_a_ratio_too_small_for_any_rhythm_gets_the_nearest() -> None:
    """Where nothing of up to 1,000 spots is near, the nearest is given, and the error says so."""
    found = simplest(Fraction(1, 100_000))
    assert (found.pick, found.of) == (1, 1000)
    assert found.error == 99


@pytest.mark.parametrize("wanted", [Fraction(0), Fraction(-1), Fraction(101)])
def test_absurd_ratios_are_refused(wanted: Fraction) -> None:
    """Nothing, less than nothing and over 100 stitches a spot are refused."""
    with pytest.raises(Impossible):
        near_ratios(wanted)


@pytest.mark.parametrize("most", [0, 1001])
def test_absurd_lengths_are_refused(most: int) -> None:
    """A rhythm of no spots or of thousands is refused."""
    with pytest.raises(Impossible):
        near_ratios(Fraction(1, 2), most)
