"""An edge of another length than planned: what she counts is right, for it and for the section that mirrors it."""

from dataclasses import replace
from types import MappingProxyType

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import Press, Replan, TakeCount
from finishing_tui.garment.events import WhyOff
from finishing_tui.garment.recounting import outlook
from finishing_tui.garment.walk import done_on
from finishing_tui.glance.recounts import recount_view
from tests.examples import share
from tests.garment.paper import Paper, plan_for
from tests.garment.test_mirror import side, two_sides
from tests.garment.test_open_edges import edges, work_of
from tests.recipe_texts import number, place, recipe, section, step

SAYS: tuple[WhyOff, ...] = ("rows-left", "rows-to-spare", "ends-at")


@settings(max_examples=share(60))
@given(st.data())
def test_what_is_walked_and_what_is_left_is_its_length(data: st.DataObject) -> None:
    """Whatever was printed: this side is so long, the other too, and both together are as many as was said."""
    paper = two_sides().press(data.draw(st.integers(1, 22)))
    _, before = side(paper, 0)
    left = data.draw(st.integers(0, 30))
    assume(before.mark.units + left != 32)
    command = TakeCount(before.mark.loops, answer="rows-left", left=left, repair="space-the-rest")
    refused = paper.do(command)
    assume(refused is None)  # else the stitches that are wanted do not go onto so few rows
    real = before.mark.units + left
    assert side(paper, 0)[0].units == side(paper, 2)[0].units == real
    assert side(paper, 2)[0].target == min(24, 2 * real)
    while not work_of(paper).complete:
        paper.press()
    stage, progress = side(paper, 2)
    assert progress.mark.loops == side(paper, 0)[1].mark.loops == 24
    assert done_on(progress, 0, real) == done_on(side(paper, 0)[1], 0, real)[::-1]
    assert stage.as_worked
    assert paper.replayed() == paper.state


@settings(max_examples=share(40))
@given(st.data())
def test_every_way_comes_to_what_its_row_says(data: st.DataObject) -> None:
    """Each way is taken, both sides are walked: the total is the one that stood beside it."""
    pressed = data.draw(st.integers(1, 22))
    answer, left = data.draw(st.sampled_from(SAYS)), data.draw(st.integers(0, 24))
    for way in range(9):
        paper = two_sides().press(pressed)
        loops = side(paper, 0)[1].mark.loops
        try:
            view = recount_view(paper.state, loops, answer, left)
        except FinishingError:
            return
        if way >= len(view.commands):
            return
        paper.did(view.commands[way])
        while not work_of(paper).complete:
            paper.press()
        assert paper.state.ledger.on("band") == view.answers.rows[way].total


@pytest.mark.parametrize(
    ("answer", "left", "rows"), [("rows-left", 14, 29), ("rows-to-spare", 0, 31), ("ends-at", 22, 29)]
)
def test_it_is_said_in_one_sentence(answer: WhyOff, left: int, rows: int) -> None:
    """12 pressed by row 15 of 32: what she finds out is its length, said beside that of the other side."""
    paper = two_sides().press(12)
    view = recount_view(paper.state, 12, answer, left)
    assert view.learned == f"{rows} rows, not the 32 planned; the right side gets {rows} too, still for 24 stitches"


def test_where_it_is_as_long_as_planned_nothing_is_said_and_nothing_changes() -> None:
    """17 left at row 15 of 32."""
    paper = two_sides().press(12)
    stages = work_of(paper).stages
    view = recount_view(paper.state, 12, "rows-left", 17)
    assert (view.learned, len(view.commands)) == ("", 1)
    paper.did(view.commands[0])
    assert work_of(paper).stages == stages


def test_the_rest_is_judged_by_what_suits_a_row_of_it() -> None:
    """24 for 32 rows is 3 of 4; of 26 rows that are found there 24 are too many, and the count says so."""
    paper = two_sides().press(12)
    assert outlook(paper.state, 12, "rows-left", 11).stage.rate == side(paper, 0)[0].rate
    assert outlook(paper.state, 12, "rows-left", 11).verdict is not outlook(paper.state, 12, "rows-left", 17).verdict


def test_a_side_of_another_planned_length_keeps_its_own() -> None:
    """30 rows are printed for the second: what she counts on the first is not said of it."""
    paper = two_sides(right=30).press(12)
    assert recount_view(paper.state, 12, "rows-left", 14).learned == "29 rows, not the 32 planned"
    paper.did(TakeCount(12, answer="rows-left", left=14, repair="space-the-rest"))
    assert (side(paper, 0)[0].units, side(paper, 2)[0].units) == (29, 30)


def test_it_outlives_a_count_of_the_needle_and_goes_with_the_count_that_said_it() -> None:
    """The needle counted between the sides leaves the other's length; taking the count back takes it back."""
    paper = two_sides().press(12)
    was = side(paper, 2)[0]
    paper.did(TakeCount(12, answer="rows-left", left=14, repair="space-the-rest"))
    assert side(paper, 2)[0].units == 29
    assert paper.take_back() is None
    assert side(paper, 2)[0] == was
    assert paper.put_back() is None
    while work_of(paper).at < 1:
        paper.press()
    paper.press()  # the loop in the corner
    worked = side(paper, 2)[0]
    paper.did(TakeCount(26, place="band"))
    assert side(paper, 2)[0] == worked


def test_another_number_of_stitches_taken_later_keeps_the_length_that_was_found() -> None:
    """With ``e`` 26 for each side: the one that is to come takes them, over the 29 rows there really are."""
    first = section(along="left side", spots=32, stitches="each")
    second = section(along="right side", spots=32, stitches="each", mirrors="left side")
    picked = step("pick up and knit", "Pick up", first, section(gap="corner", extra=1), second, onto="band")
    text = recipe("Two sides", number("each", "stitches of a side", by_size=24), place("band"), picked)
    paper = Paper(plan_for(text)).press(12)
    paper.did(TakeCount(12, answer="rows-left", left=14, repair="space-the-rest"))
    plan = replace(paper.state.plan, own=MappingProxyType({"each": 26}))
    paper.did(Replan(plan, "counted again"))
    stage, _ = side(paper, 2)
    assert (stage.units, stage.target) == (29, 26)


def test_the_edge_that_ends_early_ends_early_on_the_other_side() -> None:
    """Two rows before the printed end: the other side is two rows shorter too, and is the first one turned round."""
    paper = two_sides()
    while side(paper, 0)[1].mark.units < 30:
        paper.did(Press())
    loops, rows = side(paper, 0)[1].mark.loops, side(paper, 0)[1].mark.units
    view = recount_view(paper.state, loops, "edge-ends", 0)
    paper.did(view.commands[0])
    assert side(paper, 0)[0].units == side(paper, 2)[0].units == rows


@pytest.mark.parametrize("pressed", [12, 13, 14, 15, 16])
@pytest.mark.parametrize("spare", [1, 2, 3])
def test_a_little_past_half_with_a_few_rows_to_spare_is_not_told_to_rip_back(pressed: int, spare: int) -> None:
    """15 of 24, whatever was pressed: no rip back, and the rest re-spaced before anything that changes the sum."""
    view = recount_view(edges().press(pressed).state, 15, "rows-to-spare", spare)
    assert all(command.repair != "rip-back" for command in view.commands)
    ways = [command.repair for command in view.commands]
    assert ways.index("space-the-rest") < ways.index("as-it-is")


def test_with_many_rows_to_spare_ripping_back_is_one_of_the_ways() -> None:
    """15 of 24 where 13 were pressed, and 5 rows over: that many will be seen."""
    view = recount_view(edges().press(13).state, 15, "rows-to-spare", 5)
    assert "rip-back" in [command.repair for command in view.commands]
