"""The recount: what a count that differs is put down to, each way to go on, and what it enters."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.ledger import EDGE, FOUND, MISSING, Posting
from finishing_tui.garment.commands import ChoosePace, Finish, LeaveOut, Other, Press, TakeCount, TakeOut
from finishing_tui.garment.events import Recounted, Replanned
from finishing_tui.garment.recounting import outlook
from finishing_tui.garment.walk import loops_up_to, planned, to_come
from finishing_tui.garment.ways import counted_stage
from finishing_tui.garment.work import Reached
from finishing_tui.glance import recount_view
from finishing_tui.recipe.kinds.work import Work as WorkStep
from tests.garment.edges import GAUGE, along, press_to_the_end, reach, section, sections, work_of
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import EDGE as LONG_EDGE
from tests.garment.recipes import NECKBAND


def half_way() -> Paper:
    """Return 24 from 32 rows (3 of every 4), 12 of them pressed: row 15, for a skip passes with the pick after it."""
    paper = along(32, 24, gauge=GAUGE).press(12)
    assert section(paper)[1].mark == Reached(15, 0, 12)
    return paper


def recounted(paper: Paper) -> Recounted:
    """Return the recount that came last."""
    event = paper.latest[0]
    assert isinstance(event, Recounted)
    return event


@given(sections(), st.data())
def test_who_follows_the_plan_is_told_that_it_lies_flat(shape: tuple[int, int, str, str], data: st.DataObject) -> None:
    """At every spot, also in the middle of one that takes two, the count that presses say is as planned."""
    paper = along(*shape).press(data.draw(st.integers(0, shape[1])))
    loops = section(paper)[1].mark.loops
    before = paper.state.ledger
    seen = outlook(paper.state, loops)
    assert (seen.put, seen.verdict, len(seen.ways)) == ("as-planned", Verdict.LIES_FLAT, 1)
    paper.did(TakeCount(loops))
    assert paper.state.ledger == before
    assert recounted(paper).entries == ()
    assert section(press_to_the_end(paper))[1].mark.loops == shape[1]


def test_a_count_that_differs_is_not_taken_without_an_answer() -> None:
    """One question is asked, and nothing happens before it is answered."""
    refusal = half_way().do(TakeCount(11))
    assert refusal is not None
    assert refusal.sentence.startswith("you counted 11, and the count here is 12: say whether")


def test_missed_presses_move_the_spot_and_the_plan_stands() -> None:
    """13 counted, 12 pressed: the place is where the plan has 13, and no stitch was found: it was picked up."""
    paper = half_way().did(TakeCount(13, answer="presses"))
    assert section(paper)[1].mark == Reached(17, 0, 13)
    assert recounted(paper).entries == (Posting(EDGE, "band", 1),)
    assert (recounted(paper).expected, recounted(paper).answer) == (12, "presses")
    assert section(press_to_the_end(paper))[1].mark == Reached(32, 0, 24)


def test_doubled_presses_move_the_spot_back() -> None:
    """11 counted, 12 pressed: row 14 is not worked yet."""
    paper = half_way().did(TakeCount(11, answer="presses"))
    assert section(paper)[1].mark == Reached(14, 0, 11)
    assert recounted(paper).entries == (Posting("band", EDGE, 1),)
    assert paper.state.ledger.on("band") == 11
    assert section(press_to_the_end(paper))[1].mark == Reached(32, 0, 24)


@given(sections(least=2), st.data())
def test_what_presses_explain_always_ends_at_the_target(shape: tuple[int, int, str, str], data: st.DataObject) -> None:
    """Whatever was counted, strayed or pressed before, missed or doubled presses leave a plan that comes out."""
    paper = along(*shape)
    for _ in range(data.draw(st.integers(0, 6))):
        if not work_of(paper.state).complete:
            paper.did(Other() if data.draw(st.integers(0, 2)) == 2 else Press())
    counted = data.draw(st.integers(0, shape[1]))
    if counted == section(paper)[1].mark.loops:
        return
    refusal = paper.do(TakeCount(counted, answer="presses"))
    if refusal is not None:  # a stray may have jumped over that count, or the plan may no longer reach it
        assert "did you count the whole needle" in refusal.sentence
        return
    stage, progress = section(paper)
    assert progress.mark.loops == counted == paper.state.ledger.on("band")
    left = stage.target - counted
    if 0 <= left <= 2 * (stage.units - progress.mark.units):  # else nothing can reach it any more
        assert to_come(stage, progress, progress.mark.units) == left


def test_after_loops_that_differ_presses_are_reckoned_from_that_count() -> None:
    """10 counted at row 15 though 12 were pressed, then three pressed and four counted: one press was missed."""
    paper = half_way().did(TakeCount(10, answer="loops", repair="space-the-rest")).press(3)
    stage, progress = section(paper)
    assert progress.mark.loops == 13
    refusal = paper.do(TakeCount(9, answer="presses"))
    assert refusal is not None
    assert refusal.sentence.startswith("you counted 10 at row 15")
    paper.did(TakeCount(14, answer="presses"))
    stage, progress = section(paper)
    assert 14 + to_come(stage, progress, progress.mark.units) == 24


@pytest.mark.parametrize(("counted", "entry"), [(10, Posting("band", MISSING, 2)), (13, Posting(FOUND, "band", 1))])
@pytest.mark.parametrize("repair", ["space-the-rest", "first-round", "as-it-is"])
def test_loops_that_differ_are_found_or_missing(counted: int, entry: Posting, repair: str) -> None:
    """The ledger posts the difference, whichever way is taken, and the way taken is what happens."""
    paper = half_way()
    seen = recount_view(paper.state, counted, "loops")
    command, row = next(
        (command, row)
        for command, row in zip(seen.commands, seen.answers.rows, strict=True)
        if command.repair == repair
    )
    paper.did(command)
    assert recounted(paper).entries == (entry,)
    assert recounted(paper).repair == repair
    assert paper.state.ledger.on("band") == counted == seen.total
    stage, progress = section(paper)
    assert progress.mark == Reached(15, 0, counted)
    now = recount_view(paper.state, counted).answers.planned
    assert row.edge is not None
    assert now is not None
    assert [row.edge.sort(spot) for spot in range(16, 33)] == [now.sort(spot) for spot in range(16, 33)]
    end = {"space-the-rest": 24, "first-round": stage.target, "as-it-is": 24 + counted - 12}[repair]
    assert section(press_to_the_end(paper))[1].mark.loops == end


def test_the_rest_at_the_natural_ratio_is_mended_in_the_first_round() -> None:
    """10 of 12: the rest of 17 rows takes 13 by nature, so 23 are there, and the first row of the band adds one."""
    paper = half_way().did(TakeCount(10, answer="loops", repair="first-round"))
    told, planned = paper.latest
    assert isinstance(told, Recounted)
    assert isinstance(planned, Replanned)
    assert section(paper)[0].target == 23
    press_to_the_end(paper)
    paper.surely(Finish())
    assert work_of(paper.state).stages[0].said == ((1, "increase 1 evenly, after the recount: makes 24"),)
    paper.press(2)
    assert paper.state.ledger.on("band") == 24


def test_two_differences_are_mended_as_one() -> None:
    """A second recount that leaves something to the first round adds to what the first one left."""
    paper = half_way().did(TakeCount(10, answer="loops", repair="first-round")).press(4)
    stage, _ = section(paper)
    paper.did(TakeCount(13, answer="loops", repair="first-round"))
    band = paper.state.plan.step(1)
    assert isinstance(band, WorkStep)
    (mend,) = band.shaping
    assert mend.change == 24 - section(paper)[0].target
    assert section(paper)[0].target != stage.target
    press_to_the_end(paper)
    paper.surely(Finish())
    assert press_to_the_end(paper).state.ledger.on("band") == 24


def test_a_band_that_is_left_out_is_not_relied_on() -> None:
    """With no round to come on that needle there is nothing to mend the difference in: the plan stays."""
    paper = Paper(plan_for(LONG_EDGE)).press(24)
    paper.surely(LeaveOut(1))
    paper.did(TakeCount(20, answer="loops", repair="first-round"))
    assert len(paper.latest) == 1


@pytest.mark.parametrize(("left", "spot"), [(17, 15), (14, 18), (20, 12)])
def test_the_row_unknown_rows_left(left: int, spot: int) -> None:
    """A count that differs from the presses, and her row lost: the spot comes from the rows left.

    It was so of a count that is as pressed as well; that one knows its row, so the rows left tell the length instead
    (issue 13, item 3; ``test_real_length``).
    """
    paper = half_way().did(TakeCount(11, answer="rows-left", left=left, repair="space-the-rest"))
    stage, progress = section(paper)
    assert stage.units == 32
    assert progress.mark == Reached(spot, 0, 11)
    assert 11 + to_come(stage, progress, spot) == 24
    assert recounted(paper).entries == (Posting("band", MISSING, 1),)
    assert section(press_to_the_end(paper))[1].mark == Reached(32, 0, 24)


def test_the_row_unknown_at_the_fold_mark() -> None:
    """At the half mark of 32 rows the spot is 16, whatever the presses say."""
    paper = half_way().did(TakeCount(11, answer="half-way"))
    assert section(paper)[1].mark == Reached(16, 0, 11)
    assert recounted(paper).entries == (Posting("band", MISSING, 1),)
    assert section(press_to_the_end(paper))[1].mark == Reached(32, 0, 24)


@pytest.mark.parametrize(("counted", "left", "most"), [(11, None, "32"), (11, 33, "32"), (12, -1, "5,000")])
def test_rows_left_must_be_rows_there_are(counted: int, left: int | None, most: str) -> None:
    """Asked again with the range: of what was planned where her row is lost, else of what an edge can have.

    The range was that of the plan for both, while rows left told her row also where the count was as pressed.
    """
    refusal = half_way().do(TakeCount(counted, answer="rows-left", left=left))
    assert refusal is not None
    assert f"0 to {most}" in refusal.sentence


def test_ripping_back_as_a_repair_goes_where_the_recount_says() -> None:
    """4 counted where 12 should be: hopeless; rip back to where the rest lies flat, with the loops that are left."""
    paper = half_way()
    seen = outlook(paper.state, 4, "loops")
    way = next(way for way in seen.ways if way.repair == "rip-back")
    paper.did(TakeCount(4, answer="loops", repair="rip-back"))
    stage, progress = section(paper)
    assert progress == way.progress
    assert progress.mark.units < 15
    assert paper.state.ledger.on("band") == progress.mark.loops
    assert progress.mark.loops + to_come(stage, progress, progress.mark.units) == 24
    assert section(press_to_the_end(paper))[1].mark.loops == 24


def test_a_way_that_is_not_there_is_refused_with_those_that_are() -> None:
    """Nothing is chosen for her."""
    refusal = half_way().do(TakeCount(11, answer="loops", repair="rip-back"))
    assert refusal is not None
    assert refusal.sentence == "that cannot be done here; there is: space the rest, first round, as it is"


def test_going_on_by_the_plan_forgets_strays_that_did_not_happen() -> None:
    """A stray at row 3 is forgotten when one row turns out to be all that is done, and what made up for it with it.

    One stitch is counted where two were pressed: with two, as pressed, the rows left would tell the length instead
    (issue 13, item 3).
    """
    paper = along(8, 6).press(2).did(Other()).did(TakeCount(1, answer="rows-left", left=7, repair="as-it-is"))
    _, progress = section(paper)
    assert progress.mark == Reached(1, 0, 1)
    assert loops_up_to(progress, 8) == 6
    assert section(press_to_the_end(paper))[1].mark.loops == 6


def test_a_section_just_walked_may_still_be_counted_and_opened_again() -> None:
    """At its end two loops are missing: ripping back opens the section again, and the hole after it is not made yet."""
    paper = reach(Paper(plan_for(NECKBAND)), 6).press(10)
    holes = [paper.state.ledger.holes]
    assert counted_stage(work_of(paper.state)) == 0
    paper.did(TakeCount(4, answer="loops", repair="rip-back"))
    holes.append(paper.state.ledger.holes)
    holes.append(press_to_the_end(paper).state.ledger.holes)
    assert holes == [("left corner",), (), ("left corner", "right corner")]
    assert counted_stage(work_of(paper.state)) is None, "the marker was put in since"


def test_a_section_is_not_counted_by_itself_once_another_thing_was_begun() -> None:
    """With a loop of the corner picked up, a count is of the whole needle, and no section opens again."""
    paper = reach(Paper(plan_for(NECKBAND)), 6).press(11)
    assert counted_stage(work_of(paper.state)) is None
    paper.press()  # the corner is complete; the held stitches follow
    assert counted_stage(work_of(paper.state)) is None
    paper.did(Finish()).did(ChoosePace("spot")).press()
    assert counted_stage(work_of(paper.state)) == 4
    assert work_of(paper.state).progress[0].mark.loops == 10
    assert paper.do(TakeOut(6, 0, 14)) is None, "ripping back is how it is opened again"


@given(sections(least=8, most=40), st.data())
def test_what_is_to_come_is_what_is_planned(section_of: tuple[int, int, str, str], data: st.DataObject) -> None:
    """After any counts and strays, the loops to come are those planned at the spots to come, one by one."""
    spots, stitches, style, ends = section_of
    paper = along(spots, stitches, style, ends)
    for _ in range(data.draw(st.integers(1, 5))):
        stage, progress = section(paper)
        if progress.mark.units >= stage.units:
            break
        command = data.draw(
            st.one_of(
                st.just(Press()),
                st.just(Other()),
                st.builds(
                    TakeCount,
                    st.integers(0, 2 * spots),
                    answer=st.sampled_from(("loops", "rows-left", "presses")),
                    left=st.integers(0, spots),
                    repair=st.sampled_from(("space-the-rest", "as-it-is", "first-round", "rip-back")),
                ),
            )
        )
        paper.do(command)
        stage, progress = section(paper)
        here = progress.mark.units
        assert to_come(stage, progress, here) == sum(planned(progress, at) for at in range(here + 1, spots + 1))
