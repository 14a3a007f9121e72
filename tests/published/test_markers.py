"""Published divisions of an edge by markers: trade.md sections 1 and 2, each with its source."""

import pytest

from finishing_tui.craft.markers import APART, divide, mark, parts_for


@pytest.mark.parametrize(
    ("n", "parts", "sizes"),
    [
        (71, 4, {18: 3, 17: 1}),  # KnittingHelp 124191
        (99, 8, {12: 5, 13: 3}),  # Pepperknits, 2020
        (40, 4, {10: 4}),  # KnittingHelp 48137
        (44, 4, {11: 4}),  # Tea Cosy Folk
        (68, 2, {34: 2}),  # NobleKnits, 2007: round an armhole
        (96, 10, {10: 6, 9: 4}),  # lookeehereyall, 2007
        (100, 4, {25: 4}),  # knitgrove.com: a marker every 25 rows of 100
        (40, 10, {4: 10}),  # Knit Perfect: 4 a marked inch
        (132, 8, {16: 4, 17: 4}),  # eighths of 132 are 16.5 on average (Knitwits Yarns, 2010)
    ],
)
def test_published_divisions(n: int, parts: int, sizes: dict[int, int]) -> None:
    """The parts have the published sizes, in some order."""
    found = divide(n, parts)
    assert {size: found.count(size) for size in found} == sizes


def test_a_hundred_and_thirty_two_in_quarters() -> None:
    """That 132 in 4 spaces is 16.5 each is WRONG (Knitwits Yarns, 2010): it is 33 each."""
    assert divide(132, 4) == (33, 33, 33, 33)


def test_ten_in_each_of_ten_would_be_a_hundred() -> None:
    """96 in ten parts cannot be ten each (lookeehereyall, 2007)."""
    assert divide(100, 10) == (10,) * 10
    assert divide(96, 10) != (10,) * 10


def test_eighths_of_ten_rows() -> None:
    """80 rows in eighths for 64 stitches: 10 rows and 8 stitches in each (Knit Perfect)."""
    marked = mark(80, 64, 8)
    assert set(marked.spots) == {10}
    assert set(marked.stitches) == {8}


def test_no_more_than_fifteen_between_markers() -> None:
    """A long edge has at most about 15 stitches between markers (Pepperknits, 2020)."""
    assert APART == 15
    assert parts_for(99) == 7
    assert max(divide(99, 7)) == 15
