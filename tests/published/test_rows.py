"""Rhythms and exact numbers over known rows, against what knitters and teachers have published (trade.md 1 and 2).

The source stands beside each value. Where a published figure is wrong, the test says what is right.
"""

from collections import Counter
from fractions import Fraction

import pytest

from finishing_tui.craft.recount import Verdict, judge, recount
from finishing_tui.craft.saying import say
from finishing_tui.craft.spacing import Run, Runs, draw, space


def groups(drawing: str) -> Counter[int]:
    """Return how many groups of how many picks stand between the skips."""
    return Counter(len(part) for part in drawing.split(".") if part)


@pytest.mark.parametrize(
    ("stitches", "rows", "words"),
    [
        (5, 7, "5 of 7"),  # 20 sts and 28 rows in 4 in: Espace Tricot, "A little Pick-Me-Up", 2013
        (1, 2, "1 of 2"),  # 3 sts and 6 rows an inch: Annie Modesitt, modeknit.com, 2003
        (2, 3, "2 of 3"),  # 6 sts and 9 rows an inch: comment, Creeping Thyme, 2015
        (3, 4, "3 of 4"),  # straight edge: Studio Knits, Expert Knitter ch. 23
        (4, 5, "4 of 5"),  # slight slope, and a V edge: the same
        (5, 6, "5 of 6"),  # strong slope: the same
    ],
)
def test_a_natural_ratio_over_one_run_picks_that_many(stitches: int, rows: int, words: str) -> None:
    """One round of a published ratio is one run of it, or the two neighbouring runs that make it up."""
    rhythm = space(stitches, rows)
    assert (rhythm.stitches, rhythm.spots) == (stitches, rows)
    if rows - stitches == 1:
        assert say(rhythm) == words


def test_5_of_8_is_the_published_rhythm_or_its_mirror() -> None:
    """Both ends picked, never two skips together: Stitches of Violet, "Picking Up Stitches", 2009 (5 and 8 an inch)."""
    published = "x.x.xx.x"
    even = draw(space(5, 8, style="even", ends="closed"))
    assert even in {published, published[::-1]}
    assert draw(space(5, 8, style="even")) == even


@pytest.mark.parametrize(
    ("stitches", "rows", "once"),
    [
        (80, 120, Run(2, 3, 40)),  # 16 sts and 24 rows in 4 in, edge of 20 in: Men Who Knit forum, node 5359
        (75, 100, Run(3, 4, 25)),  # knitgrove.com, picking up along an edge
        (196, 294, Run(2, 3, 98)),  # what "2 of 3" really gives over 294 rows: KnittingHelp 52473 expected 218
        (10, 10, Run(1, 1, 10)),  # a garter edge, one a ridge: Knit Yourself Happy; illi tilli
    ],
)
def test_one_ratio_all_the_way_is_one_run(stitches: int, rows: int, once: Run) -> None:
    """Where the ratio goes into the rows, the answer is that ratio and nothing else."""
    assert space(stitches, rows) == Runs((once,))


def test_218_from_294_rows_is_nearly_3_of_4() -> None:
    """KnittingHelp 52473 took "2 of 3" for 218 from 294: it gives 196, and 3 of 4 gives 220 or 221."""
    assert space(196, 294) != space(218, 294)
    made: Counter[tuple[int, int]] = Counter()
    for run in space(218, 294).as_runs():
        made[run.pick, run.of] += run.times
    assert made == {(2, 3): 10, (3, 4): 66}
    assert Fraction(294) * Fraction(3, 4) == Fraction(441, 2)


def test_71_of_88_with_both_ends_picked() -> None:
    """17 skips, (pick 4, skip 1) 17 times and pick 3: KnittingHelp 124191."""
    rhythm = space(71, 88, ends="closed")
    drawing = draw(rhythm)
    assert drawing == "xxxx." * 17 + "xxx"
    assert drawing.count(".") == 17
    assert say(rhythm, "row") == "4 of every 5, 17 times, then each of the last three rows"
    assert groups(drawing) == {4: 17, 3: 1}
    assert draw(space(71, 88, style="even", ends="closed")).count(".") == 17


def test_88_of_108() -> None:
    """20 skips: every 5th twelve times, every 6th eight times: howtoknitasweater.com, part 11."""
    rhythm = space(88, 108)
    assert rhythm == Runs((Run(4, 5, 12), Run(5, 6, 8)))
    assert draw(rhythm).count(".") == 20


def test_80_of_102_lies_flat_where_3_of_4_is_natural() -> None:
    """22 skips; inside the normal range, not an error: Men Who Knit 5359."""
    assert draw(space(80, 102)).count(".") == 22
    assert judge(80, 102, Fraction(3, 4), target=80).verdict is Verdict.LIES_FLAT


def test_eighths_of_ten_rows_with_eight_stitches_each() -> None:
    """Pick 4, miss 1, pick 4, miss 1; the last ends on a pick: 2, miss, 2, miss, 4 (Knit Perfect, handbook).

    That last eighth has both ends picked and two skips; so has ours, in groups of 3, 3 and 2.
    """
    assert draw(space(8, 10)) == "xxxx.xxxx."
    last = draw(space(8, 10, ends="closed"))
    assert (last[0], last[-1], last.count(".")) == ("x", "x", 2)
    assert groups(last) == {3: 2, 2: 1}
    assert space(8, 10, ends="closed").drift <= Fraction(1)


def test_chains_are_two_rows() -> None:
    """A published "4 for every 3 chains" is 3 chains = 6 rows, so 2 of every 3 rows: KnittingHelp 154288."""
    chains = space(4 * 20, 3 * 20)
    assert chains == Runs((Run(4, 3, 20),))
    assert space(4 * 20, 6 * 20) == Runs((Run(2, 3, 40),))


def test_5_of_6_counted_on_bumps_gives_half() -> None:
    """Six garter bumps are 12 rows and want 10; 5 of 6 on the bumps gave 5: KnittingHelp 158788. 10 is 5 in every 3."""
    wrong = recount(10, 6, at=6, counted=5)
    assert wrong.verdict is Verdict.CANNOT_BE
    assert space(10, 6) == Runs((Run(5, 3, 2),))


def test_too_few_pucker_and_too_many_flare() -> None:
    """Interweave Knits July 2019 and B. Breiter for Lion Brand; one page (knitgrove) states it the wrong way round."""
    assert judge(60, 100, Fraction(3, 4), target=75).verdict is Verdict.WILL_PUCKER
    assert judge(90, 100, Fraction(3, 4), target=75).verdict is Verdict.WILL_FLARE


def test_a_band_a_tenth_short_shows() -> None:
    """About 10 % short is visibly curled (purlwise.com, 2008): up to 10 % we say that it just shows, beyond puckers."""
    assert judge(90, 100, Fraction(1), target=100).verdict is Verdict.JUST_SHOWS
    assert judge(89, 100, Fraction(1), target=100).verdict is Verdict.WILL_PUCKER


def test_3_of_4_everywhere_is_5_and_14_per_cent_off() -> None:
    """In place of a ratio many use 3 of 4 always: 5 % off at 20 x 28, 14 % at 29 x 44 (Studio Knits; arithmetic)."""
    near = judge(75, 100, Fraction(20, 28), target=75)
    far = judge(75, 100, Fraction(29, 44), target=75)
    assert (near.change, far.change) == (Fraction(1, 20), Fraction(4, 29))
    assert (near.verdict, far.verdict) == (Verdict.LIES_FLAT, Verdict.WILL_FLARE)


def test_2_of_3_checked_at_half_way() -> None:
    """Pick 2 of every 3, check at half way, alter the rest: common practice, no source."""
    done = recount(75, 108, at=54, counted=36, natural=Fraction(2, 3))
    assert (done.stitches_left, done.spots_left) == (39, 54)
    assert done.rhythm == Runs((Run(2, 3, 6), Run(3, 4, 9)))


def test_a_count_that_is_off_is_put_right_in_the_first_round() -> None:
    """Put right section by section in the first round after picking up: Interweave Knits July 2019."""
    done = recount(40, 50, at=50, counted=38)
    assert [way.difference for way in done.repairs if way.mend == "first round"] == [2]
