"""An edge whose spots nobody counted: what is worked at a rate, and what a fold can tell."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.judging import Verdict, judge
from finishing_tui.craft.open_edges import FOLD_OFF, at_the_fold, by_rate, rate_words, read_rate, spots_for

RATES = st.tuples(st.integers(1, 12), st.integers(1, 12)).map(lambda two: Fraction(*two)).filter(lambda rate: rate <= 2)


@given(st.integers(1, 300), RATES)
def test_a_rate_is_kept_to_within_one_stitch_until_the_count_is_there(stitches: int, rate: Fraction) -> None:
    """After any s spots the picks are within one of s times the rate; the last spot has what was still missing."""
    rhythm = by_rate(stitches, rate)
    assert rhythm.stitches == stitches
    assert rhythm.at(rhythm.spots) > 0
    assert all(abs(rhythm.up_to(spot) - spot * rate) <= 1 for spot in range(rhythm.spots))


def test_two_for_every_three_rows_is_its_own_repeat() -> None:
    """Two picked and one skipped, over and over (common practice): the 24th of them is in row 35."""
    rhythm = by_rate(24, Fraction(2, 3))
    assert rhythm.between(0, 9) == [1, 1, 0, 1, 1, 0, 1, 1, 0]
    assert (rhythm.spots, rhythm.spot_of(12)) == (35, 17)


@pytest.mark.parametrize(
    ("text", "rate", "unit", "words"),
    [
        ("2/3", Fraction(2, 3), "row", "2 of every 3 rows"),
        (" 3 / 4 ", Fraction(3, 4), "row", "3 of every 4 rows"),
        ("1", Fraction(1), "ridge", "1 in every ridge"),
        ("6/4", Fraction(3, 2), "chain", "3 in every 2 chains"),
    ],
)
def test_a_rate_is_read_and_said(text: str, rate: Fraction, unit: str, words: str) -> None:
    """Stitches, a slash, spots; said as hands keep it."""
    assert read_rate(text) == rate
    assert rate_words(rate, unit) == words


@pytest.mark.parametrize("text", ["", "2/", "/3", "2/0", "0/3", "5/2", "2 of 3", "-2/3", "2/3/4", "1000/1001", "²/3"])
def test_what_is_no_rate_is_refused_in_a_sentence(text: str) -> None:
    """With an example, or what hands can keep."""
    with pytest.raises(Impossible, match=r"a rate is|cannot be kept"):
        read_rate(text)


@given(st.integers(1, 60), st.integers(0, 90), RATES, st.integers(1, 120))
def test_a_fold_says_only_what_holds_over_its_whole_range(to_pick: int, walked: int, rate: Fraction, more: int) -> None:
    """Whatever it says of the rest is right for every length that is as many rows again, give or take three."""
    said = at_the_fold(to_pick, walked, rate, target=to_pick + more)
    for left in range(max(walked - FOLD_OFF, 0), walked + FOLD_OFF + 1):
        lies = judge(to_pick, left, rate, target=to_pick + more).verdict
        assert said is None or said is lies


def test_what_a_fold_says() -> None:
    """12 of 24 at row 18 of 2 for 3: right. 20 left after 18 rows cannot lie flat; 10 left may or may not."""
    two_thirds = Fraction(2, 3)
    assert at_the_fold(20, 18, two_thirds, target=24) is Verdict.WILL_FLARE
    assert at_the_fold(12, 18, two_thirds, target=24) is None
    assert at_the_fold(80, 120, two_thirds, target=160) is Verdict.LIES_FLAT


@given(st.lists(st.integers(0, 2), min_size=1, max_size=30), st.integers(0, 30))
def test_how_far_it_is_to_so_many_loops(ahead: list[int], loops: int) -> None:
    """The fewest spots that make them."""
    if sum(ahead) < loops:
        return
    spots = spots_for(loops, iter(ahead))
    assert sum(ahead[:spots]) >= loops
    assert not spots or sum(ahead[: spots - 1]) < loops
