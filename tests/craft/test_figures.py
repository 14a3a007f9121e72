"""Numbers as people write them."""

from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.figures import read_number, rounded, unfolded


@given(st.integers(0, 999_999), st.integers(1, 999_999))
def test_a_fraction_is_read_exactly(top: int, under: int) -> None:
    """What is written as a/b is a/b, never a float near it."""
    assert read_number(f"{top}/{under}") == Fraction(top, under)


@given(st.integers(0, 999_999), st.integers(0, 99))
def test_point_and_comma_are_read_alike(whole: int, hundredths: int) -> None:
    """A decimal of two places is the same number with a point and with a comma."""
    meant = whole + Fraction(hundredths, 100)
    assert read_number(f"{whole}.{hundredths:02d}") == read_number(f"{whole},{hundredths:02d}") == meant


@given(st.text(max_size=50))
def test_any_text_is_a_number_or_one_sentence(typed: str) -> None:
    """Whatever is typed is read, or refused by the project's own error; never anything else."""
    with suppress(FinishingError):
        assert read_number(typed) >= 0


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("24", Fraction(24)),
        ("24.5", Fraction(49, 2)),
        ("24,5", Fraction(49, 2)),
        ("24½", Fraction(49, 2)),
        ("24 ½", Fraction(49, 2)),
        ("24 1/2", Fraction(49, 2)),
        ("24-1/2", Fraction(49, 2)),
        ("⅜", Fraction(3, 8)),
        ("2.125", Fraction(17, 8)),
    ],
)
def test_the_ways_of_writing(typed: str, meant: Fraction) -> None:
    """Every way of writing a number that a tape measure or a pattern uses is understood."""
    assert read_number(typed) == meant


@pytest.mark.parametrize(
    "typed", ["", "-3", "1e3", "1_0", "٣", "0x1f", "1,000", "1/0", "nan", "9" * 41, "1.2.3", "1 000"]
)
def test_what_is_no_number_or_two_is_refused(typed: str) -> None:
    """Signs, exponents, other scripts, a thousand's comma and division by nothing are refused."""
    with pytest.raises(Impossible):
        read_number(typed)


@given(st.fractions(0, 1000, max_denominator=50))
def test_rounding_is_to_the_nearest_and_halves_go_up(number: Fraction) -> None:
    """The rounded number is at most a half away, and above when it is exactly a half."""
    assert -Fraction(1, 2) < rounded(number) - number <= Fraction(1, 2)
    assert rounded(number) - number != -Fraction(1, 2)


def test_spaces_are_tidied() -> None:
    """Runs of spaces and fraction signs become plain text."""
    assert unfolded("  9½   in ") == "9 1/2 in"
