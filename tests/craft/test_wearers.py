"""Who a size is for, and the head to allow for: every doubt goes to the larger head."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.wearers import GROWN, MAN, MEDICAL, WOMAN, is_childs, of_age, wearer_of

MONTHS = range(GROWN + 12)


def test_no_month_gets_less_than_the_next_published_age() -> None:
    """From birth to 16 years, month by month: never smaller than the next age published, and never falling.

    Ages are published up to 36 months (medical table, trade.md section 7), and heads of adults (craft charts).
    """
    heads = [of_age(month).head.cm for month in MONTHS]
    assert all(before <= after for before, after in pairwise(heads))
    for month, head in zip(MONTHS, heads, strict=True):
        assert head >= next((cm for age, cm in MEDICAL.items() if age >= month), WOMAN[0])
        assert head in {*MEDICAL.values(), *WOMAN, *MAN}


@given(st.fractions(0, 300, max_denominator=12), st.fractions(0, 12, max_denominator=12))
def test_no_part_of_a_month_makes_it_smaller(months: Fraction, more: Fraction) -> None:
    """Nor does an age between two months."""
    assert of_age(months).head.cm <= of_age(months + more).head.cm
    assert of_age(months).child == (months < GROWN)


def _sizes(months: int) -> list[str]:
    """Return how a size for that age may be written."""
    written = [
        "{0} months",
        "{0} mos",
        "{0} mo.",
        "{0}M",
        "{0}m",
        "0-{0} months",
        "0\u2013{0} mths",
        "0/{0} months (68 cm)",
    ]
    years, over = divmod(months, 12)
    if not over:
        written += [
            "{1} years",
            "{1} yrs",
            "{1}y",
            "{1}T",
            "age {1}",
            "Child {1}",
            "0-{1} years",
            "boys' {1}",
            "{1} yr old",
        ]
    if over == 6:
        written += ["{1} 1/2 years", "{1}.5 years", "{1}½ yrs"] if years else ["0.5 years"]
    return [each.format(months, years) for each in written]


def test_however_an_age_is_written() -> None:
    """Months, years, toddlers' sizes, ranges (the end counts), halves: the head of that age, and a child's."""
    for months in range(1, GROWN):
        for size in _sizes(months):
            assert wearer_of(size) == of_age(months), size
            assert is_childs(size)


@pytest.mark.parametrize(
    ("size", "cm", "child"),
    [
        ("9 months", "47.6", True), ("18-24 months", "50.1", True), ("1 1/2 years", "50.1", True),
        ("newborn", "41.7", True), ("preemie", "41.7", True), ("baby", "50.1", True), ("toddler", "51.4", True),
        ("child", "56", True), ("Kids' M", "56", True), ("child 68 cm", "56", True), ("teen", "60", True),
        ("6 months to 2 years", "50.1", True), ("woman", "60", False), ("Women\u2019s S", "60", False),
        ("men's L", "62", False), ("adult", "62", False), ("Adult S", "62", False), ("16 years", "62", False),
    ],
)  # fmt: skip
def test_what_sizes_are_called(size: str, cm: str, child: bool) -> None:  # noqa: FBT001
    """The larger of women and men where both may be meant; what children's sizes are called is common practice."""
    wearer = wearer_of(size)
    assert wearer is not None
    assert (wearer.head.cm, wearer.child) == (Fraction(cm), child)


@pytest.mark.parametrize(
    "size", ["S", "M", "2XL", "1", "large", "38", "34 in", "60 x 80 cm", "one size", "US 12", "86 cm"]
)
def test_other_sizes_tell_nobody(size: str) -> None:
    """A letter, a number, a measure: nobody knows whose it is."""
    assert wearer_of(size) is None


@given(st.text(max_size=60))
def test_whatever_a_size_is_called(size: str) -> None:
    """It is somebody's or nobody's, and never an error."""
    wearer = wearer_of(size)
    assert wearer is None or wearer.head.cm in {*MEDICAL.values(), *WOMAN, *MAN}
