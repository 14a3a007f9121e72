from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.pairing import pair, rows_to_rows


@st.composite
def needles(draw: st.DrawFn) -> tuple[int, int]:
    """Return two counts of which neither is more than twice the other."""
    few = draw(st.integers(1, 300))
    more = draw(st.integers(few, 2 * few))
    return draw(st.sampled_from([(few, more), (more, few)]))


@given(needles())
def test_both_needles_are_empty_at_the_end(counts: tuple[int, int]) -> None:
    """One loop a pair from the emptier needle, one more at each doubled pair from the fuller: all are used up."""
    front, back = counts
    found = pair(front, back)
    assert found.pairs == min(front, back)
    assert found.pairs + len(found.double_at) == max(front, back)
    assert found.extra_on == ("front" if front > back else "back" if back > front else None)


@given(needles())
def test_doubled_pairs_are_there_in_order_and_off_the_ends(counts: tuple[int, int]) -> None:
    """Each doubled pair is one of the pairs, once, and neither the first nor the last where two can stay single."""
    found = pair(*counts)
    assert list(found.double_at) == sorted(set(found.double_at))
    assert all(1 <= place <= found.pairs for place in found.double_at)
    if found.double_at and found.pairs - len(found.double_at) >= 2:
        assert found.double_at[0] > 1
        assert found.double_at[-1] < found.pairs


@given(needles())
def test_doubled_pairs_are_spread_evenly(counts: tuple[int, int]) -> None:
    """The single pairs between doubled ones differ by at most one, and those before and after by at most one."""
    found = pair(*counts)
    places = (0, *found.double_at, found.pairs + 1)
    singles = [right - left - 1 for left, right in pairwise(places)]
    if len(singles) > 2:
        assert max(singles[1:-1]) - min(singles[1:-1]) <= 1
        assert abs(singles[0] - singles[-1]) <= 1


@given(needles())
def test_which_needle_is_nearer_changes_no_place(counts: tuple[int, int]) -> None:
    """Symmetry: turning the work round moves no doubled pair, only the needle's name."""
    here, there = pair(*counts), pair(*counts[::-1])
    assert here.double_at == there.double_at
    assert here.make_after == there.make_after
    if here.extra_on:
        assert here.extra_on != there.extra_on


@given(needles())
def test_making_them_first_gives_the_longer_count(counts: tuple[int, int]) -> None:
    """The other way makes as many as are missing, each from a bar of its own between two stitches."""
    found = pair(*counts)
    few, more = sorted(counts)
    if found.make_after:
        assert few + len(set(found.make_after)) == more
        assert all(1 <= place < few for place in found.make_after)
    else:
        assert more - few in {0, *range(few, more + 1)}
    assert ("make" in found.text) == (few != more)


@pytest.mark.parametrize(("front", "back"), [(4, 9), (9, 4), (0, 3), (3, 0), (1, 100_000), (100_001, 100_001)])
def test_what_cannot_be_paired_is_refused(front: int, back: int) -> None:
    """More than two loops of one needle in a pair, an empty needle, or a count nobody holds."""
    with pytest.raises(Impossible):
        pair(front, back)


def test_many_doubled_pairs_are_said_as_a_rhythm() -> None:
    """A long list of numbers cannot be followed: beyond twelve it is a rhythm."""
    text = pair(60, 100).text
    assert "2 double, 1 single" in text
    assert text.count(",") < 40


@given(needles())
def test_bars_are_shared_like_pairs(counts: tuple[int, int]) -> None:
    """Rows to rows: one bar a stitch from the shorter side, one or two from the longer, and both are used up."""
    found = rows_to_rows(*counts)
    assert (found.short, found.long) == tuple(sorted(counts))
    assert found.short + len(found.double_at) == found.long
    assert found.double_at == pair(*counts).double_at


def test_edges_too_unequal_are_not_sewn_bar_to_bar() -> None:
    """Three bars at once would pucker."""
    with pytest.raises(Impossible, match="10 meet 20 at most"):
        rows_to_rows(10, 21)
