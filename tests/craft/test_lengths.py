"""Lengths in centimetres and inches."""

from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.lengths import LengthUnit, length, read_length, say_length

amounts = st.fractions(Fraction(1, 64), 3000, max_denominator=64)


@given(amounts)
def test_an_inch_is_exactly_two_point_five_four_centimetres(amount: Fraction) -> None:
    """An amount of inches is 127/50 of it in cm, and comes back as it was (the international inch, 1959)."""
    inches = length(amount, "in")
    assert inches.cm == amount * Fraction(127, 50)
    assert inches.amount == amount
    assert inches == length(inches.cm, "cm")


@given(amounts, amounts)
def test_lengths_compare_by_how_long_they_are(one: Fraction, other: Fraction) -> None:
    """The unit a length is said in does not matter to what is longer."""
    assert (length(one, "in") < length(other, "cm")) == (one * Fraction(127, 50) < other)


@given(st.integers(1, 3000), st.integers(0, 7), st.sampled_from(["in", "inches", '"', "″", " ins", "''"]))
def test_what_is_said_in_inches_is_read_back(whole: int, eighths: int, unit: str) -> None:
    """A length on a ruler's eighth of an inch is said exactly and read back as the same length."""
    meant = length(whole + Fraction(eighths, 8), "in")
    said = say_length(meant)
    assert not said.startswith("about")
    assert read_length(said) == meant
    assert read_length(said.removesuffix(" in") + unit) == meant


@given(st.integers(1, 99_999))
def test_what_is_said_in_centimetres_is_read_back(tenths: int) -> None:
    """A length of whole millimetres is said exactly and read back as the same length."""
    meant = length(Fraction(tenths, 10), "cm")
    assert read_length(say_length(meant)) == meant


@given(st.text(max_size=50))
def test_any_text_is_a_length_or_one_sentence(typed: str) -> None:
    """Whatever is typed is read, or refused by the project's own error."""
    with suppress(FinishingError):
        assert read_length(typed).cm > 0


@pytest.mark.parametrize(
    ("typed", "amount", "unit"),
    [
        ("10 cm", Fraction(10), "cm"),
        ("10cm", Fraction(10), "cm"),
        ("4 in", Fraction(4), "in"),
        ('4"', Fraction(4), "in"),
        ("9 1/2 in", Fraction(19, 2), "in"),
        ("9½ inches", Fraction(19, 2), "in"),
        ("24,5 cm", Fraction(49, 2), "cm"),
        ("24.5 centimetres", Fraction(49, 2), "cm"),
        ("inch", Fraction(1), "in"),
    ],
)
def test_the_ways_of_writing(typed: str, amount: Fraction, unit: LengthUnit) -> None:
    """Every usual way of writing a length is understood, with the unit it was given in."""
    read = read_length(typed)
    assert (read.amount, read.unit) == (amount, unit)


@pytest.mark.parametrize(
    ("typed", "hint"),
    [
        ("10", "10 cm or 4 in"),
        ("10 m", "10 cm or 4 in"),
        ("10 mm", "10 cm or 4 in"),
        ("1,000 cm", "two things"),
        ("0 cm", "more than 0"),
        ("999999 in", "up to"),
        ("-4 in", "10 cm or 4 in"),
    ],
)
def test_what_is_missing_or_ambiguous_is_said(typed: str, hint: str) -> None:
    """No unit, another unit, a thousand's comma and absurd sizes are refused with what would be right."""
    with pytest.raises(Impossible, match=hint):
        read_length(typed)


def test_what_had_to_be_rounded_is_said_to_be_about() -> None:
    """A length between the marks of a ruler is given as about the nearest mark, and never as nothing."""
    assert say_length(length(Fraction(312, 35), "in")) == "about 8 7/8 in"
    assert say_length(length(Fraction(25, 4), "cm")) == "about 6.3 cm"
    assert say_length(length(Fraction(1, 100), "in")) == "less than 1/8 in"
    assert say_length(length(Fraction(1, 100), "cm")) == "less than 0.1 cm"
    assert say_length(length(Fraction(1, 2), "in")) == "1/2 in"
