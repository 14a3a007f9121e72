"""Ripping back: to a spot, a part or a step long done; the ledger as it was, and recounts that fall with it."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.craft.ledger import OUTSIDE, Ledger
from finishing_tui.garment.commands import AlreadyAt, Finish, Other, Press, PutRight, TakeCount, TakeOut, TakeUp
from finishing_tui.garment.events import RippedBack
from finishing_tui.garment.walk import to_come
from finishing_tui.garment.work import Reached, Standing
from finishing_tui.glance import rip_points
from finishing_tui.recipe.kinds.work import Work as WorkStep
from tests.examples import share
from tests.garment.edges import GAUGE, along, finish, press_to_the_end, reach, section, sections, work_of
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import NECKBAND, UNEQUAL
from tests.recipe_texts import along as edge
from tests.recipe_texts import place, recipe, step


def inside(ledger: Ledger) -> tuple[object, ...]:
    """Return all of a ledger but the accounts outside the garment, which keep the history of both."""
    live = {place: count for place, count in ledger.stitches.items() if place not in OUTSIDE}
    return live, dict(ledger.tails), ledger.markers, ledger.holes, ledger.yarns, ledger.posture


@given(sections(), st.data())
def test_to_a_spot_the_loops_that_were_there_are_left(shape: tuple[int, int, str, str], data: st.DataObject) -> None:
    """By presses and strays, what is left at a spot is what was there then, and the rest still comes out."""
    paper = along(*shape)
    seen = {0: 0}
    for _ in range(data.draw(st.integers(1, 30))):
        if not work_of(paper.state).complete:
            paper.did(Other() if data.draw(st.integers(0, 4)) == 0 else Press())
            mark = section(paper)[1].mark
            if not mark.within:
                seen[mark.units] = mark.loops
    units = data.draw(st.sampled_from(sorted(seen)))
    if units == section(paper)[1].mark.units:
        return
    paper.did(TakeOut(0, 0, units))
    stage, progress = section(paper)
    assert progress.mark == Reached(units, 0, seen[units])
    assert paper.state.ledger.on("band") == seen[units]
    if 0 <= stage.target - seen[units] <= 2 * (stage.units - units) and units < stage.units:
        assert seen[units] + to_come(stage, progress, units) == stage.target


@pytest.mark.parametrize("size", ["small", "large"])
@pytest.mark.parametrize("hand", ["right", "left"])
@settings(max_examples=share(12))
@given(data=st.data())
def test_to_any_step_of_a_finished_garment(size: str, hand: str, data: st.DataObject) -> None:
    """A step long done: all later ones are named and fall, and inside the garment everything is as it was then."""
    paper = Paper(plan_for(NECKBAND, size, hand="left" if hand == "left" else "right"))
    before: dict[int, Ledger] = {}
    while (step := paper.state.current) is not None:
        finish(paper)
        before[step] = work_of(paper.state, step).before
    assert paper.state.ledger.empty
    step = data.draw(st.sampled_from(sorted(before)))
    later = [one for one in paper.state.order if one > step]
    refusal = paper.do(TakeOut(step))
    if later:
        assert refusal is not None
        assert refusal.again == TakeOut(step, sure=True)
        assert [int(word) for word in re.findall(r"\d+", refusal.sentence)] == [one + 1 for one in later]
        paper.did(refusal.again)
    assert paper.state.current == step
    event = paper.latest[0]
    assert isinstance(event, RippedBack)
    assert [paper.state.plan.index_of(one) for one in event.fell] == later
    assert all(paper.state.steps[one] == Standing() for one in later)
    opening = work_of(paper.state).stages[0].opening
    assert inside(paper.state.ledger.leave(*opening)) == inside(before[step])
    assert to_the_end(paper).state.ledger.empty


def to_the_end(paper: Paper) -> Paper:
    """Work every step that is left."""
    while paper.state.current is not None:
        finish(paper)
    return paper


def test_to_a_part_in_the_middle_of_a_step() -> None:
    """The right front neck falls with the corner hole; the held stitches go back to their pin."""
    paper = reach(Paper(plan_for(NECKBAND)), 6)
    press_to_the_end(paper)
    paper.did(TakeOut(6, 2, 4))
    assert paper.state.ledger.live == {"neck": 16, "spare": 2}
    assert paper.state.ledger.holes == ("left corner",)
    assert paper.state.ledger.markers == ()
    assert work_of(paper.state).at == 2
    press_to_the_end(paper)
    assert paper.state.ledger.live == {"neck": 36}


def test_nothing_is_taken_out_where_the_work_is_now() -> None:
    """To where it stands, at the start or at the end of a step, is refused and changes nothing."""
    paper = along(8, 6)
    for command in (TakeOut(0), TakeOut(0, 0, 0)):
        assert paper.do(command) is not None
    press_to_the_end(paper)
    refusal = paper.do(TakeOut(0, 0, 8))
    assert refusal is not None
    assert "you are already there" in refusal.sentence


@pytest.mark.parametrize(
    "command", [TakeOut(5), TakeOut(-1), TakeOut(0, 4), TakeOut(0, -1), TakeOut(0, 0, 9), TakeOut(1)]
)
def test_what_was_not_worked_cannot_be_taken_out(command: TakeOut) -> None:
    """A step that is not begun, a part that is not there, further than it is: a sentence."""
    refusal = along(8, 6).press(3).do(command)
    assert refusal is not None
    assert refusal.sentence


def test_taking_a_rip_back_brings_the_fallen_steps_back_in_their_order() -> None:
    """Taken back, everything stands as before, and each of the steps can be ripped back to again."""
    paper = reach(Paper(plan_for(UNEQUAL)), 2)
    before = paper.state
    paper.surely(TakeOut(0))
    assert paper.state.order == (0,)
    assert paper.take_back() is None
    assert (paper.state.order, paper.state.steps, paper.state.ledger) == (before.order, before.steps, before.ledger)
    assert {point.command.step for point in rip_points(paper.state)} == {0, 1, 2}
    paper.surely(TakeOut(1))
    assert paper.state.current == 1


def test_two_together_are_known_when_a_join_is_taken_out() -> None:
    """7 and 8 are left by the partial join, x is pressed at pair 2; out to pair 3, to pair 1, and to the start."""
    paper = reach(Paper(plan_for(UNEQUAL)), 1)
    assert paper.state.ledger.live == {"front": 7, "back": 8}
    paper.press().did(Other("back")).press(2)
    seen = [paper.state.ledger.live]
    for units in (3, 1, 0):
        paper.did(TakeOut(1, 0, units))
        seen.append(paper.state.ledger.live)
    needles = [(one["front"], one["back"], one.get("working needle", 0)) for one in seen]
    assert needles == [(3, 3, 1), (4, 4, 1), (6, 7, 1), (7, 8, 0)]


def test_what_was_found_on_a_needle_stays_found() -> None:
    """Nine were on the back needle, not eight, when the join began; taken out to its start, nine are there."""
    paper = reach(Paper(plan_for(UNEQUAL)), 1).press(2)
    paper.did(TakeCount(7, "back"))
    paper.did(TakeOut(1))
    assert paper.state.ledger.live == {"front": 7, "back": 9}
    finish(paper)
    reach(paper, 3)
    paper.surely(TakeOut(1))
    assert paper.state.ledger.live == {"front": 7, "back": 9}


def test_another_step_that_went_on_meanwhile_is_left_as_it_is() -> None:
    """The marker came out between two rounds of the rib, and goes in again: what the second round took stays off."""
    paper = reach(Paper(plan_for(NECKBAND)), 8).press(1)
    paper.did(TakeUp(9)).press().did(TakeUp(8)).press(1)
    assert inside(paper.state.ledger)[0] == {"neck": 34}
    paper.did(TakeUp(9), TakeOut(9))
    assert inside(paper.state.ledger)[0] == {"neck": 34}
    assert "start of round" in paper.state.ledger.markers


@pytest.mark.parametrize("units", [0, 5])
def test_a_recount_that_falls_takes_its_mending_with_it(units: int) -> None:
    """One loop was left to the first row of the band; taken out to before that count, it is picked up after all."""
    paper = along(32, 24, gauge=GAUGE).press(12).did(TakeCount(10, answer="loops", repair="first-round"))
    plan = paper.state.plan
    assert plan != along(32, 24, gauge=GAUGE).state.plan
    paper.did(TakeOut(0, 0, units))
    band = paper.state.plan.step(1)
    assert isinstance(band, WorkStep)
    assert band.shaping == ()
    assert section(press_to_the_end(paper))[1].mark.loops == 24
    paper.take_back()


def test_a_recount_that_stands_keeps_its_mending() -> None:
    """Taken out to a row after the count, the target it left stands, and the first row of the band mends it."""
    paper = along(32, 24, gauge=GAUGE).press(12).did(TakeCount(10, answer="loops", repair="first-round")).press(5)
    paper.did(TakeOut(0, 0, 18))
    assert section(press_to_the_end(paper))[1].mark.loops == 23
    paper.surely(Finish())
    assert press_to_the_end(paper).state.ledger.on("band") == 24


def test_a_step_that_falls_takes_its_mending_with_it() -> None:
    """The band was begun with one more in its first row; taken out to the start of the pick-up, no row adds one."""
    paper = along(32, 24, gauge=GAUGE).press(12).did(TakeCount(10, answer="loops", repair="first-round"))
    reach(paper, 2)
    assert paper.state.ledger.on("band") == 24
    before = paper.state
    paper.surely(TakeOut(0))
    assert paper.state.plan == along(32, 24, gauge=GAUGE).state.plan
    press_to_the_end(paper)
    paper.surely(Finish())
    assert press_to_the_end(paper).state.ledger.on("band") == 24
    while paper.state.order != before.order:
        paper.take_back()
    assert (paper.state.plan, paper.state.steps) == (before.plan, before.steps)


def test_between_counts_that_presses_do_not_explain_the_loops_are_taken_as_evenly_spread() -> None:
    """Eight counted at row 16 though twelve were pressed: at row 8 half of them are taken to be there."""
    paper = along(32, 24).press(12).did(TakeCount(8, answer="half-way", repair="as-it-is"))
    paper.did(TakeOut(0, 0, 8))
    assert section(paper)[1].mark.loops == 4
    assert section(press_to_the_end(paper))[1].mark.loops == 24


@pytest.mark.parametrize("more", [1, -2])
def test_what_was_put_right_on_a_needle_this_step_fills_falls_with_it(more: int) -> None:
    """Five loops on an empty needle, one made or two worked off there: out to the start, nothing is left on it."""
    paper = along(8, 6).press(5).did(PutRight("here", "band", more), TakeOut(0))
    assert paper.state.ledger.live == {}
    assert press_to_the_end(paper).state.ledger.live == {"band": 6}


def test_what_was_put_right_there_falls_with_a_step_that_falls() -> None:
    """One was made while the band was worked: out to the pick-up's fourth row, four loops are on the needle."""
    paper = reach(along(8, 8), 1).press(1).did(PutRight("here", "band", 1))
    paper.surely(TakeOut(0, 0, 4))
    assert paper.state.ledger.live == {"band": 4}


BY_TURNS = recipe(
    "By turns",
    place("band"),
    place("held", "holder", "holder", live=6),
    step("pick up and knit", "Pick up", edge("edge", 10, 10, unit="row"), onto="band"),
    step("move", "Move them", from_="held", to="band"),
    step("mark", "Mark it", marker="it"),
)


def by_turns() -> Paper:
    """Return a garment with four loops picked up, three stitches moved beside them, and six more loops picked up."""
    return Paper(plan_for(BY_TURNS)).press(4).did(TakeUp(1)).press(3).did(TakeUp(0)).press(6)


def loops(paper: Paper) -> int:
    """Return the loops of the pick-up by its own progress."""
    return work_of(paper.state, 0).progress[0].mark.loops


@pytest.mark.parametrize("units", [0, 1, 2])
def test_a_step_taken_out_leaves_what_another_made_by_turns_with_it(units: int) -> None:
    """The moved stitches go back to their holder, and all ten loops stay."""
    paper = by_turns().did(TakeOut(1, 0, units))
    assert paper.state.ledger.live == {"band": 10 + units, "held": 6 - units}
    assert loops(paper) == 10


@pytest.mark.parametrize("more", [2, -2])
def test_so_does_one_that_falls_with_a_third(more: int) -> None:
    """The marker falls too; what was put right meanwhile is still there, since nobody knows by which step it went."""
    paper = by_turns().did(PutRight("here", "band", more), TakeUp(2)).press()
    paper.surely(TakeOut(1))
    assert paper.state.ledger.live == {"band": 10 + more, "held": 6}
    assert loops(paper) == 10
    assert paper.state.ledger.markers == ()


def test_one_that_would_take_out_more_than_is_there_is_refused() -> None:
    """Twelve of thirteen were worked off: three cannot be moved back. Counted as they are, they can."""
    paper = by_turns().did(PutRight("here", "band", -12))
    refusal = paper.do(TakeOut(1))
    assert refusal is not None
    assert refusal.sentence.startswith("the band needle has 1 stitch")
    paper.did(TakeCount(13, "band"), TakeOut(1))
    assert paper.state.ledger.live == {"band": 10, "held": 6}


def test_the_first_step_can_always_be_taken_out() -> None:
    """What is there then is what there was before anything was begun, whatever was put right."""
    paper = by_turns().did(PutRight("here", "band", -12))
    paper.surely(TakeOut(0))
    assert paper.state.ledger.live == {"held": 6}


def test_a_step_that_went_on_elsewhere_went_on_too() -> None:
    """Four loops here, three moved, the other six loops elsewhere: taking the move out leaves ten."""
    paper = Paper(plan_for(BY_TURNS)).press(4).did(TakeUp(1)).press(3).did(AlreadyAt(2))
    paper.surely(TakeOut(1))
    assert paper.state.ledger.live == {"band": 10, "held": 6}
    assert loops(paper) == 10
