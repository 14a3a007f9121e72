"""Edges nobody counted, worked on paper: what she says with a count, where the edge ends, and the second side."""

from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from finishing_tui.craft.judging import judge
from finishing_tui.craft.open_edges import by_rate
from finishing_tui.garment.commands import Finish, Press, TakeCount
from finishing_tui.garment.events import RepairChoice, WhyOff
from finishing_tui.garment.recounting import outlook
from finishing_tui.garment.walk import owed_skips, to_come
from finishing_tui.garment.ways import CannotCount
from finishing_tui.garment.work import Progress, StepWork
from finishing_tui.recipe.stage import Stage
from tests.examples import share
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import place, recipe, section, step


def edges(target: int = 24, ratio: str = "2/3", **keys: object) -> Paper:
    """Return a garment just begun: two sides that nobody counted, the second the mirror of the first, and a band."""
    first = section(along="left edge", stitches=target, **keys)
    second = section(along="right edge", stitches=target, mirrors="left edge", **keys)
    pick_up = step(
        "pick up and knit",
        "Pick up",
        first,
        section(from_="back", along="back neck"),
        second,
        onto="band",
        ratio=ratio,
        expect={"band": 2 * target + 10},
    )
    work = step("work", "Work the band", on="band", rows=2)
    places = place("band") + place("back", "holder", live=10)
    return Paper(plan_for(recipe("Two edges", places, pick_up, work, format=2)))


def work_of(paper: Paper) -> StepWork:
    """Return the work of the step under way."""
    assert paper.state.standing is not None
    assert paper.state.standing.work is not None
    return paper.state.standing.work


def at(paper: Paper, index: int = 0) -> tuple[Stage, Progress]:
    """Return a section and how it stands."""
    work = work_of(paper)
    return work.stages[index], work.progress[index]


def test_it_is_worked_at_its_rate_and_no_length_is_claimed() -> None:
    """Nobody counted the rows; 2 for every 3 make the 24 by row 35, and the step comes to what is printed."""
    stage, _ = at(edges())
    assert (stage.uncounted, stage.target, stage.units, stage.rate) == ("spots", 24, 35, Fraction(2, 3))
    assert stage.rhythm == by_rate(24, Fraction(2, 3))
    assert stage.words == "2 of every 3 rows, as the pattern says, until you have 24"


@pytest.mark.parametrize(
    ("pressed", "counted", "answer", "number", "left"),
    [
        (12, 12, "rows-left", 17, 17),
        (12, 12, "rows-to-spare", 0, 18),  # from row 17 the skip that is owed, and then twelve more
        (12, 12, "rows-to-spare", 4, 22),
        (12, 12, "ends-at", 21, 14),
        (15, 15, "rows-left", 12, 12),
        (12, 13, "rows-left", 17, 17),
    ],
)
def test_what_she_knows_makes_the_length_known(
    pressed: int, counted: int, answer: WhyOff, number: int, left: int
) -> None:
    """Walked and left together; the rest is spread over what is left, and the target stands."""
    paper = edges().press(pressed)
    walked = at(paper)[1].mark.units
    paper.did(TakeCount(counted, answer=answer, left=number))
    stage, progress = at(paper)
    assert (stage.uncounted, stage.units, stage.target) == ("", walked + left, 24)
    assert progress.mark.loops == counted
    paper.press(24 - counted)
    assert at(paper)[1].mark.loops == 24
    assert at(paper, 2)[0].units == walked + left
    assert at(paper, 2)[0].uncounted == ""


@pytest.mark.parametrize(
    ("answer", "number", "says"),
    [
        ("rows-left", None, "type how many rows are left"),
        ("rows-left", -1, "type how many rows are left"),
        ("rows-to-spare", -3, "to spare"),
        ("ends-at", 11, "the edge ends at 12 to 24"),
        ("ends-at", 25, "the edge ends at 12 to 24"),
        ("edge-ends", 3, "you are 12 short"),
    ],
)
def test_a_contradiction_is_told_with_the_number_and_changes_nothing(
    answer: WhyOff, number: int | None, says: str
) -> None:
    """One sentence, and the edge is as it was."""
    paper = edges().press(12)
    before = paper.state
    refusal = paper.do(TakeCount(12, answer=answer, left=number))
    assert refusal is not None
    assert says in refusal.sentence
    assert paper.state == before


def test_nothing_ends_or_is_halfway_before_it_is_begun() -> None:
    """Both are refused at the first row."""
    paper = edges()
    for answer in ("edge-ends", "half-way"):
        with pytest.raises(CannotCount):
            outlook(paper.state, 0, answer)


@pytest.mark.parametrize("answer", ["past-half", "before-half", "not-known"])
def test_what_gives_no_number_changes_no_plan(answer: WhyOff) -> None:
    """The count stands, and the edge goes on at its rate: sixteen rows more for the twelve that are left, at least."""
    paper = edges().press(12)
    before, _ = at(paper)
    seen = outlook(paper.state, 12, answer)
    paper.did(TakeCount(12, answer=answer, repair="as-it-is"))
    assert at(paper)[0] == before
    assert at(paper)[1].confirmed == (12, 17)
    assert seen.to_go == 18


@pytest.mark.parametrize(
    ("repair", "band", "unequal"),
    [("double-last", 24, 0), ("strand", 24, 0), ("as-it-is", 23, 0), ("next-section", 23, 0)],
)
def test_the_edge_ends_one_short(repair: RepairChoice, band: int, unequal: int) -> None:
    """A second one in a row before the corner, a strand lifted there, or fewer on purpose: each is what it says."""
    del unequal
    paper = edges().press(23)
    seen = outlook(paper.state, 23, "edge-ends")
    if repair not in [way.repair for way in seen.ways]:
        assert repair == "next-section"  # held stitches come next, and they take none
        return
    paper.did(TakeCount(23, answer="edge-ends", repair=repair))
    stage, progress = at(paper)
    assert progress.mark.units == stage.units == 34
    assert paper.state.ledger.on("band") == band
    if repair == "double-last":
        (stray,) = [stray for stretch in progress.stretches for stray in stretch.strayed]
        assert stray[1] == 2
        assert stage.units - 8 <= stray[0] < stage.units, "never in the corner row"
    assert at(paper, 2)[0].target == band, "the second side mirrors what was really done"


def test_the_next_section_may_take_what_is_missing() -> None:
    """Where one follows that can, last of all ways; it then has more than was planned."""
    first = section(along="left edge", stitches=24)
    second = section(along="right edge", stitches=20)
    pick_up = step("pick up and knit", "Pick up", first, second, onto="band", ratio="2/3")
    paper = Paper(plan_for(recipe("Two edges", place("band"), pick_up, format=2))).press(23)
    ways = [way.repair for way in outlook(paper.state, 23, "edge-ends").ways]
    assert ways == ["double-last", "strand", "rip-back", "as-it-is", "next-section"]
    paper.did(TakeCount(23, answer="edge-ends", repair="next-section")).press(21)
    assert paper.state.ledger.on("band") == 44


def test_with_all_of_them_rows_may_be_left_over() -> None:
    """None: it ends there. Some: they are skipped, or taken back so far that the rest lies flat."""
    paper = edges().press(24)
    paper.did(TakeCount(24, answer="edge-ends"))
    assert at(paper)[0].uncounted == ""
    assert at(paper)[1].mark.units == at(paper)[0].units == 35
    paper = edges().press(24)
    seen = outlook(paper.state, 24, "edge-ends", 2)
    rip = next(way for way in seen.ways if way.repair == "rip-back")
    assert rip.stage.units == 37
    assert rip.progress.mark.loops < 24


def test_the_whole_job_with_rows_nobody_knows() -> None:
    """36, 37 or 38 rows: halfway 15 counted and the rows left told, 24 a side, the second as the first really was."""
    for rows in (36, 37, 38):
        paper = edges().press(13)
        walked = at(paper)[1].mark.units
        paper.did(TakeCount(15, answer="rows-left", left=rows - walked)).press(9)
        assert at(paper)[1].mark.loops == 24
        first = at(paper)[0]
        assert first.units == rows
        paper.did(Finish()).press(1)
        second = at(paper, 2)[0]
        assert (second.units, second.target) == (rows, 24)
        paper.press(23)
        assert paper.state.ledger.on("band") == 58


@st.composite
def jobs(draw: st.DrawFn) -> tuple[int, Fraction, int]:
    """Return a true edge: its rows, the pattern's rate, and a count within a fifth of what that rate gives."""
    rows = draw(st.integers(12, 120))
    rate = draw(st.sampled_from([Fraction(1, 2), Fraction(2, 3), Fraction(3, 4), Fraction(5, 8), Fraction(5, 7)]))
    target = max(6, round(rows * rate * draw(st.integers(80, 120)) / 100))
    assume(target <= rows)
    return rows, rate, target


@settings(max_examples=share(60))
@given(jobs(), st.sampled_from(["rows-left", "ahead"]), st.integers(-1, 1), st.integers(30, 70))
def test_a_true_answer_ends_within_a_stitch_of_perfect_knowledge(
    job: tuple[int, Fraction, int], how: str, slip: int, part: int
) -> None:
    """Whatever the true edge: rows left or counted ahead, truly said, leave no more than a stitch to wish for.

    ``slip``: a press too many or too few before the count; what was counted is what is on the needle. She counts ahead
    by the rate's own repeat, begun anew where her hands are.
    """
    rows, rate, target = job
    paper = edges(target, f"{rate.numerator}/{rate.denominator}")
    while at(paper)[1].mark.loops < target * part // 100 and at(paper)[1].mark.units < rows - 6:
        paper.press(1)
    walked, pressed = at(paper)[1].mark.units, at(paper)[1].mark.loops
    assume(0 < walked <= rows - 4 and 0 < pressed + slip < target and pressed + slip <= walked)
    counted, left = pressed + slip, rows - walked
    perfect = min(target, counted + 2 * left)
    if how == "rows-left":
        said = TakeCount(counted, answer="rows-left", left=left)
    else:
        needed = by_rate(target - counted, rate).spots
        by_hand = by_rate(2 * left, rate).up_to(left)
        spare = left - needed
        said = TakeCount(counted, answer="rows-to-spare", left=spare)
        if spare < 0:
            said = TakeCount(counted, answer="ends-at", left=counted + by_hand)
    paper.did(said)
    assert at(paper)[0].uncounted == ""
    assert abs(at(paper)[0].units - rows) <= 2
    while at(paper)[1].mark.loops < target:
        before = at(paper)[1].mark
        paper.press(1)
        if at(paper)[1].mark.units > rows:  # there is no such row on her edge
            final = before.loops
            break
    else:
        final = target
    assert abs(final - perfect) <= 1


@settings(max_examples=share(60))
@given(jobs(), st.integers(-2, 2))
def test_what_is_said_at_a_fold_holds_where_the_fold_is_up_to_two_rows_off(
    job: tuple[int, Fraction, int], off: int
) -> None:
    """Either nothing is said, or what is said is so on the true edge."""
    rows, rate, target = job
    paper = edges(target, f"{rate.numerator}/{rate.denominator}")
    fold = (rows + off) // 2
    while at(paper)[1].mark.units < fold and at(paper)[1].mark.loops < target - 1:
        paper.press(1)
    stage, progress = at(paper)
    mark = progress.mark
    assume(abs(2 * mark.units - rows) <= 2)
    said = outlook(paper.state, mark.loops, "half-way").verdict
    true = judge(target - mark.loops, rows - mark.units, stage.rate, target=target).verdict
    assert said is None or said is true


@settings(max_examples=share(60))
@given(jobs(), st.integers(30, 80))
def test_a_shortfall_is_said_long_before_the_end(job: tuple[int, Fraction, int], part: int) -> None:
    """Who can't tell is told how many rows the rest takes: where her edge has fewer, that is said at every row."""
    rows, rate, target = job
    paper = edges(target, f"{rate.numerator}/{rate.denominator}")
    while at(paper)[1].mark.loops < target * part // 100 and at(paper)[1].mark.units < rows - 8:
        paper.press(1)
    mark = at(paper)[1].mark
    assume(0 < mark.loops < target and mark.units <= rows - 5)
    seen = outlook(paper.state, mark.loops, "not-known")
    assert seen.to_go is not None
    reached = Fraction(mark.loops) + (rows - mark.units) * rate
    if reached < target - 1:
        assert seen.to_go > rows - mark.units
    elif reached > target + 1:
        assert seen.to_go <= rows - mark.units


@settings(max_examples=share(60))
@given(jobs(), st.integers(20, 90), st.booleans())
def test_a_row_the_rhythm_skips_may_end_the_edge(job: tuple[int, Fraction, int], part: int, there: bool) -> None:  # noqa: FBT001
    """Whether it lies there is hers to say: then it is walked, and the second side begins with it; one more cannot be.

    Every way has the edge as long as that, and what a rest spaced anew picks it picks in those rows.
    """
    _, rate, target = job
    paper = edges(target, f"{rate.numerator}/{rate.denominator}")
    while at(paper)[1].mark.loops < max(2, target * part // 100) or not owed_skips(*at(paper)):
        assume(at(paper)[1].mark.loops < target - 1)
        paper.press(1)
    mark = at(paper)[1].mark
    owed = owed_skips(*at(paper)) if there else 0
    with pytest.raises(
        CannotCount, match=r"more than the [0-9]+ to skip here, and you are [0-9]+ short: keep picking up"
    ):
        outlook(paper.state, mark.loops, "edge-ends", owed_skips(*at(paper)) + 1)
    seen = outlook(paper.state, mark.loops, "edge-ends", owed)
    repairs = [way.repair for way in seen.ways]
    assert ("space-the-rest" in repairs) == (0 < target - mark.loops <= 2 * owed)
    assert {way.stage.units for way in seen.ways} == {mark.units + owed}
    paper.did(TakeCount(mark.loops, answer="edge-ends", left=owed, repair="as-it-is"))
    stage, progress = at(paper)
    assert (stage.units, progress.mark.units, progress.mark.loops) == (mark.units + owed, mark.units + owed, mark.loops)
    second = at(paper, 2)[0]
    assert second.rhythm is not None
    assert (second.units, second.target) == (stage.units, mark.loops)
    assert [second.rhythm.at(spot) for spot in range(1, owed + 1)] == [0] * owed


@settings(max_examples=share(60))
@given(jobs(), st.integers(-4, 4), st.integers(30, 70))
def test_the_second_side_truly_told_ends_within_a_stitch_too(
    job: tuple[int, Fraction, int], off: int, part: int
) -> None:
    """It is as long as the first by guess only: a count as expected and a true answer leave no more than a stitch."""
    rows, rate, target = job
    paper = edges(target, f"{rate.numerator}/{rate.denominator}").press(target // 2)
    left = rows - at(paper)[1].mark.units
    assume(left >= 4)
    paper.did(TakeCount(target // 2, answer="rows-left", left=left))
    assume(at(paper)[1].mark.loops + to_come(*at(paper), at(paper)[1].mark.units) == target)
    paper.press(target - at(paper)[1].mark.loops).did(Finish())
    rows = at(paper)[0].units + off
    while at(paper, 2)[1].mark.loops < target * part // 100:
        paper.press(1)
    mark = at(paper, 2)[1].mark
    left = rows - mark.units
    assume(mark.units and left >= 4 and mark.loops < target)
    perfect = min(target, mark.loops + 2 * left)
    paper.did(TakeCount(mark.loops, answer="rows-left", left=left))
    assert at(paper, 2)[0].units == rows
    while at(paper, 2)[1].mark.loops < target:
        before = at(paper, 2)[1].mark
        paper.press(1)
        if at(paper, 2)[1].mark.units > rows:
            assert abs(before.loops - perfect) <= 1
            return
    assert abs(target - perfect) <= 1
    assert at(paper)[0].units == rows - off, "the first side stays as it was worked"


def test_presses_alone_make_no_length() -> None:
    """Pressed to its end, an edge nobody counted has its stitches, and what was walked is what it is taken to have."""
    paper = edges()
    for _ in range(24):
        paper.did(Press())
    assert at(paper)[0].units == 35
    assert at(paper, 2)[0].uncounted == ""
