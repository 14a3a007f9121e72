"""What is left of an edge goes on from what lies behind it: rows of picks, the last spot, and the runs of a mirror."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.going_on import go_on, go_on_at, picks_in_a_row
from finishing_tui.craft.spacing import Ends, Style, space


@pytest.mark.parametrize("skips_first", [False, True])
@pytest.mark.parametrize("ends", ["open", "last"])
@pytest.mark.parametrize("style", ["easy", "even"])
def test_it_is_what_is_left_and_its_last_spot_is_picked(style: Style, ends: Ends, *, skips_first: bool) -> None:
    """By brute force to 24 spots: so many over so many, no longer row across the joint than its own and one more."""
    for spots in range(1, 25):
        for stitches in range(1, 2 * spots + 1):
            for behind in range(5):
                rest = go_on(stitches, spots, style=style, ends=ends, behind=behind, skips_first=skips_first)
                assert (rest.stitches, rest.spots) == (stitches, spots)
                assert ends == "open" or rest.at(spots)
                first, longest = picks_in_a_row(rest)
                if stitches < spots:
                    assert not first or behind + first <= longest + 1, (stitches, spots, behind)


@given(st.integers(1, 40), st.integers(1, 40))
def test_nothing_behind_changes_nothing(stitches: int, spots: int) -> None:
    """It is then spaced as at the start, and the other way round along a mirrored side."""
    if stitches > 2 * spots:
        return
    assert go_on(stitches, spots) == space(stitches, spots)
    turned = go_on(stitches, spots, skips_first=True)
    wanted = space(stitches, spots).mirrored() if stitches != spots else space(stitches, spots)
    assert turned.between(0, spots) == wanted.between(0, spots)


@given(st.sampled_from(["1/2", "2/3", "3/4", "5/8", "5/7"]), st.integers(1, 40), st.integers(0, 6))
def test_at_a_rate_no_more_stand_in_a_row_than_its_own_and_one(rate: str, stitches: int, behind: int) -> None:
    """Never four where 2 of 3 are wanted, whatever lies behind; the stitches are all there."""
    rest = go_on_at(Fraction(rate), stitches, behind)
    assert rest.stitches == stitches
    assert rest.at(rest.spots) == 1
    first, longest = picks_in_a_row(rest)
    if rest.stitches < rest.spots:
        assert not first or behind + first <= longest + 1
