"""The head that a size's neck must pass, as the audit and ``finishing head`` allow for it."""

from fractions import Fraction
from itertools import pairwise

import pytest

from finishing_tui.recipe.audit.looks.head import head_for


@pytest.mark.parametrize(
    ("size", "cm"),
    [
        ("3 months", "41.7"), ("12 months", "47.6"), ("18 months", "47.6"), ("24 months", "50.1"), ("2 years", "50.1"),
        ("3 years", "51.4"), ("4 years", "53"), ("6 years", "53"), ("9 years", "53"), ("10 years", "56"),
        ("woman", "60"), ("man", "62"),
    ],
)  # fmt: skip
def test_the_head_of_a_size(size: str, cm: str) -> None:
    """Girls' 95th percentile to 36 months (medical table), then the smallest adult heads of the craft charts.

    Trade.md section 7 has no value for children beyond 36 months; that the smallest woman's head does for them, and the
    smallest man's from ten years on, is a choice on the safe side, with no source.
    """
    assert head_for(size)[0].cm == Fraction(cm)


def test_heads_never_shrink_with_age() -> None:
    """An older child is never allowed a smaller head, whatever the months."""
    heads = [head_for(f"{months} months")[0].cm for months in range(240)]
    assert all(before <= after for before, after in pairwise(heads))


@pytest.mark.parametrize("size", ["S", "2XL", "1", "large"])
def test_of_a_size_without_a_wearer_little_is_known(size: str) -> None:
    """Then only a neck that no head would pass is told: the smallest head of all is allowed for."""
    head, whose = head_for(size)
    assert (head.cm, whose) == (Fraction("41.7"), "even the smallest head")
