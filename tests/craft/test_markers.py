"""Marking off an edge, and working where nobody counted the rows."""

from fractions import Fraction
from itertools import accumulate

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.judging import FLAT
from finishing_tui.craft.markers import APART, by_fold, divide, mark, parts_for

counts = st.integers(1, 100_000)


@given(counts, st.integers(1, 500))
def test_the_parts_add_up_and_differ_by_one_at_most(n: int, parts: int) -> None:
    """The sum is exact, each part is the floor or the ceiling of n/parts."""
    assume(parts <= n)
    sizes = divide(n, parts)
    assert (len(sizes), sum(sizes)) == (parts, n)
    assert set(sizes) <= {n // parts, -(-n // parts)}


@given(counts, st.integers(1, 500))
def test_no_boundary_strays_more_than_half_a_spot(n: int, parts: int) -> None:
    """Every boundary lies as near the true place as a whole number can: within a half."""
    assume(parts <= n)
    for number, end in enumerate(accumulate(divide(n, parts)), 1):
        assert abs(end - Fraction(number * n, parts)) <= Fraction(1, 2)


@given(counts, st.integers(1, 500))
def test_the_parts_read_the_same_from_both_ends(n: int, parts: int) -> None:
    """They are symmetric wherever that is possible: unless n is odd and the parts are even in number."""
    assume(parts <= n)
    sizes = divide(n, parts)
    assert (sizes == sizes[::-1]) == (n % 2 == 0 or parts % 2 == 1)


@given(counts)
def test_no_marker_is_far_away(stitches: int) -> None:
    """At most 15 stitches lie between two markers, and no fewer parts would do."""
    parts = parts_for(stitches)
    assert max(divide(stitches, parts)) <= APART
    assert parts == 1 or max(divide(stitches, parts - 1)) > APART


@given(st.integers(1, 2000), st.integers(1, 4000))
def test_spots_and_stitches_are_marked_at_the_same_places(spots: int, stitches: int) -> None:
    """Both are in equally many parts, and every part of the edge gets within one of its share."""
    marked = mark(spots, stitches)
    assert len(marked.spots) == len(marked.stitches)
    assert (sum(marked.spots), sum(marked.stitches)) == (spots, stitches)


@given(counts, st.fractions(Fraction(1, 5), 2, max_denominator=60))
def test_the_fold_needs_half_the_stitches(stitches: int, natural: Fraction) -> None:
    """At the fold half the stitches are wanted (of an odd number the greater half), by a ratio that lies flat."""
    fold = by_fold(stitches, natural)
    assert fold.half == -(-stitches // 2)
    assert abs(fold.rhythm.ratio / natural - 1) <= FLAT
    assert fold.known


def test_without_a_gauge_three_of_four_are_picked() -> None:
    """The usual 3 of 4 is worked along rows where no gauge is known, and said to be that."""
    fold = by_fold(71, None)
    assert (fold.rhythm.pick, fold.rhythm.of, fold.half, fold.known) == (3, 4, 36, False)


@pytest.mark.parametrize(("n", "parts"), [(0, 1), (5, 6), (5, 0), (100_001, 2), (-4, 2), (4, -2)])
def test_what_cannot_be_divided_is_refused(n: int, parts: int) -> None:
    """More parts than spots, none at all, and absurd numbers are refused."""
    with pytest.raises(Impossible):
        divide(n, parts)


def test_other_absurd_numbers_are_refused() -> None:
    """No stitches, and a ratio of nothing."""
    with pytest.raises(Impossible):
        parts_for(0)
    with pytest.raises(Impossible):
        by_fold(0, None)
    with pytest.raises(Impossible):
        by_fold(10, Fraction(0))
