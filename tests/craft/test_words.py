"""Numbers and lists as sentences say them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.counts import MOST, span
from finishing_tui.craft.words import decimal, listing, number, ordinal, percent, plural, sentence, times


def test_numbers_are_words_up_to_twelve() -> None:
    """Words for small counts, figures beyond."""
    assert [number(0), number(1), number(12), number(13)] == ["no", "one", "twelve", "13"]
    assert [times(1), times(2), times(8), times(17)] == ["once", "twice", "eight times", "17 times"]


@pytest.mark.parametrize(
    ("count", "noun", "said"),
    [(1, "row", "1 row"), (0, "row", "0 rows"), (3, "stitch", "3 stitches"), (1, "stitch", "1 stitch")],
)
def test_plurals(count: int, noun: str, said: str) -> None:
    """The nouns of the trade take s or es."""
    assert plural(count, noun) == said


@pytest.mark.parametrize(
    ("place", "said"),
    [
        (1, "1st"),
        (2, "2nd"),
        (3, "3rd"),
        (4, "4th"),
        (11, "11th"),
        (12, "12th"),
        (13, "13th"),
        (22, "22nd"),
        (111, "111th"),
    ],
)
def test_ordinals(place: int, said: str) -> None:
    """The teens take th."""
    assert ordinal(place) == said


def test_lists() -> None:
    """No comma before the last."""
    assert [listing([]), listing(["a"]), listing(["a", "b"])] == ["", "a", "a and b"]
    assert listing(["a", "b", "c"]) == "a, b and c"
    assert listing(["a", "b"], "or") == "a or b"


@given(st.fractions(), st.integers(0, 4))
def test_decimals_are_within_half_a_last_place(value: Fraction, places: int) -> None:
    """The figures shown are the nearest there are, and never end in a needless nought."""
    said = decimal(value, places)
    assert abs(Fraction(said) - value) * 2 * 10**places <= 1
    assert "." not in said or said[-1] not in "0."
    assert said != "-0"


def test_percent() -> None:
    """One decimal at most."""
    assert [percent(Fraction(1, 20)), percent(Fraction(-3, 40))] == ["5%", "-7.5%"]


def test_a_sentence_begins_and_ends_as_one() -> None:
    """A capital at its head; a full stop only where it has no end yet; what was a sentence stays as it is."""
    assert [sentence("count it"), sentence("really?"), sentence("Done!")] == ["Count it.", "Really?", "Done!"]


@given(st.text(min_size=1))
def test_a_sentence_stays_a_sentence(text: str) -> None:
    """What is a sentence already is not changed, whatever it is about."""
    assert sentence(sentence(text)) == sentence(text)


@given(st.integers(0, MOST), st.integers(0, MOST), st.integers(0, 2 * MOST))
def test_a_span_names_no_bound_that_nobody_reaches(least: int, most: int, value: int) -> None:
    """The largest count there is is named only to whoever is above it; thousands have commas."""
    said = span(least, most, value)
    assert said.startswith(f"{least:,} ")
    assert said.endswith(" or more") == (most == MOST >= value)
    assert said in {f"{least:,} or more", f"{least:,} to {most:,}"}
