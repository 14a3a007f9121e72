"""The head that a size's neck must pass, as the audit and ``finishing head`` allow for it."""

from fractions import Fraction

import pytest

from finishing_tui.recipe.audit.looks.head import head_for


def test_the_size_or_whoever_wears_it() -> None:
    """The figure allowed for is named with its table."""
    head, whose = head_for("9 months")
    assert (head.cm, whose) == (
        Fraction("47.6"),
        "the head to allow for (the medical table's 95th percentile of girls at 12 months)",
    )
    head, whose = head_for("8 years")
    assert (head.cm, whose) == (
        Fraction(56),
        "the head to allow for (a small man's in craft charts: the medical table ends at 36 months)",
    )


@pytest.mark.parametrize("size", ["S", "2XL", "1", "large"])
def test_of_a_size_without_a_wearer_little_is_known(size: str) -> None:
    """Then only a neck that no head would pass is told: the smallest head of all is allowed for."""
    head, whose = head_for(size)
    assert (head.cm, whose) == (Fraction("41.7"), "even the smallest head")
