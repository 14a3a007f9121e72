"""Published yarn lengths and weights (trade.md section 6), each with its source."""

from fractions import Fraction

import pytest

from finishing_tui.craft.figures import rounded
from finishing_tui.craft.lengths import length
from finishing_tui.craft.yarn import CLOSE_A_HOLE, WEAVE_IN, in_weight, needed, rounds_left, will_it_do


@pytest.mark.parametrize(
    ("operation", "lowest", "usual", "highest"),
    [
        ("bind-off", 3, 4, 6),
        ("three-needle", 3, 4, 5),
        ("sewn", 3, 4, 5),
        ("tubular", 3, 3, 4),
        ("graft", 2, 4, 5),
        ("mattress seam", 2, 3, 3),
        ("row", 3, 3, 3),
    ],
)
def test_times_the_width_of_the_edge(operation: str, lowest: int, usual: int, highest: int) -> None:
    """Lowest, usual and highest published (trade.md section 6); a sewn bind-off by its stretched width."""
    need = needed(operation, length(50, "cm"))
    assert [each.cm for each in (need.least, need.usual, need.most)] == [50 * lowest, 50 * usual, 50 * highest]
    assert ("stretched" in need.text) == (operation == "sewn")


def test_below_the_lowest_is_warned_of() -> None:
    """Take the usual, warn below the lowest, say the range (trade.md section 6)."""
    need = needed("bind-off", length(50, "cm"))
    assert will_it_do(need, length(149, "cm"))[0] == "too short"
    assert "3 to 6 times" in need.text


def test_tails() -> None:
    """15 cm for weaving in, 30 to 45 cm for an underarm or corner (trade.md section 6)."""
    assert WEAVE_IN.cm == 15
    assert [each.cm for each in CLOSE_A_HOLE] == [30, 45]


def test_eighty_grams_left() -> None:
    """80 g left of 113 g / 384 m are 272 m (Cottage Chick Knits 2015)."""
    assert rounded(in_weight(Fraction(80), Fraction(113), Fraction(384))) == 272


@pytest.mark.parametrize(("before", "after"), [(27, 24), (24, 21)])
def test_half_rounds_weighed(before: int, after: int) -> None:
    """27 g, half a round, 24 g, half a round, 21 g: 6 g a round, and the bind-off costs more (Turtlekeepers 2015)."""
    found = rounds_left(Fraction(before), Fraction(after), Fraction(1, 2))
    assert found.per_round == 6
    assert found.bind_off > found.per_round
