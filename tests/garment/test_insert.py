"""A step put into a garment under way: every step keeps its identity, so undo, order, ripping back and record hold."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.commands.record import read_record
from finishing_tui.garment.commands import Finish, InsertStep, Press, Replan, TakeMeasure, TakeOut, WriteNote
from finishing_tui.garment.events import StepInserted, TakenBack
from finishing_tui.garment.evolve import DoesNotFit, Happening, evolve
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.plan import StepId
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import snapshot_of, state_of
from finishing_tui.garment.work import Standing
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.kinds.count import CountStitches
from finishing_tui.record import as_data, as_text
from tests.demos.scripts import do, end_step
from tests.garment.folders import Watch, garment_in
from tests.garment.paper import NOON, Paper, plan_for
from tests.garment.recipes import NECKBAND

COUNT = CountStitches(title="Count the shoulders once more", place="front")
LOOK = Check(title="Try it on", items=("It lies well.", "It is soft."))
JOIN, PICK_UP = 2, 6


def stands(state: State) -> tuple[object, ...]:
    """Return what undo must bring back to the last stitch."""
    return (state.plan, state.ledger, state.steps, state.current, state.order)


def to_step(index: int) -> Paper:
    """Return the neckband with the step at ``index`` just begun."""
    paper = Paper(plan_for(NECKBAND, "large"))
    while paper.state.current != index:
        if paper.do(Press()) is not None:
            paper.surely(Finish())
    return paper


def test_ids_are_the_numbers_of_the_recipe_and_an_inserted_step_has_its_own() -> None:
    """The others keep theirs; a number that was given once is not given to another step, even when it was undone."""
    paper = to_step(JOIN)
    before = paper.state.plan.ids
    assert before == tuple(str(number) for number in range(1, len(paper.state.steps) + 1))
    paper.did(InsertStep(COUNT, 0), InsertStep(LOOK, JOIN + 1))
    assert paper.state.plan.ids == ("1", "+1", "2", "3", "+2", *before[3:])
    assert (paper.state.current, paper.state.order) == (JOIN + 1, (0, 2, 3))
    assert paper.take_back() is None
    paper.did(InsertStep(LOOK, -1))
    assert paper.state.plan.ids == ("+3", "1", "+1", *before[1:])
    assert paper.state.plan.step(0) == LOOK
    assert (paper.state.current, paper.state.order) == (JOIN + 2, (1, 3, 4))


@given(at=st.integers(0, 9), presses=st.integers(0, 4), behind=st.integers(-1, 14))
def test_inserting_is_undone_and_put_back_exactly(at: int, presses: int, behind: int) -> None:
    """Wherever the work is and wherever the step goes: the ledger, the marks and every other step stay as they were."""
    paper = to_step(at)
    for _ in range(presses):
        paper.do(Press())
    behind = min(behind, len(paper.state.steps) - 1)
    before = paper.state
    paper.did(InsertStep(LOOK, behind))
    put = paper.state
    assert put.ledger == before.ledger
    assert [one for index, one in enumerate(put.steps) if index != behind + 1] == list(before.steps)
    assert put.steps[behind + 1] == Standing()
    assert put.standing == before.standing
    assert paper.take_back() is None
    assert stands(paper.state) == stands(before)
    assert paper.put_back() is None
    assert stands(paper.state) == stands(put)
    assert state_of(snapshot_of(put)) == put


def inserted_in(folder: Path) -> tuple[InHand, State]:
    """Return a garment in hand in the middle of a section, with two steps inserted, and its state two presses before.

    The one stands behind a step that is done, the other before what is next.
    """
    hand = InHand.open(garment_in(folder, NECKBAND, "large"), clock=Watch().clock())
    assert hand.pick_up() is None
    while hand.state.current != PICK_UP:
        end_step(hand, [])
    do(hand, *[Press()] * 3)
    third = hand.state
    do(hand, *[Press()] * 2)
    ledger = hand.state.ledger
    do(hand, InsertStep(COUNT, 1), InsertStep(LOOK, PICK_UP + 1))
    assert (hand.state.current, hand.state.ledger) == (PICK_UP + 1, ledger)
    return hand, third


def to_the_end(hand: InHand) -> None:
    """Work everything that is left."""
    while hand.state.current is not None:
        end_step(hand, ["58.5"])


def test_an_inserted_step_is_worked_undone_put_back_and_ripped_across(tmp_path: Path) -> None:
    """In a real folder: it comes when it is its turn, falls with what was worked before, and comes back with undo."""
    hand, third = inserted_in(tmp_path)
    end_step(hand, [])
    assert hand.state.current == PICK_UP + 2
    assert hand.state.plan.step(PICK_UP + 2) == LOOK
    do(hand, Press())
    halfway = hand.state
    do(hand, Press(), Finish())
    end_step(hand, [])
    assert third.standing is not None
    assert third.standing.work is not None
    do(hand, TakeOut(PICK_UP + 1, 0, third.standing.work.progress[0].mark.units))
    ripped = hand.state
    assert ripped.steps[PICK_UP + 2] == ripped.steps[PICK_UP + 3] == Standing()
    assert ripped.ledger == third.ledger
    while hand.state.steps != halfway.steps:
        assert hand.take_back() is None
    assert stands(hand.state) == stands(halfway)
    while hand.state.undone:
        assert hand.put_back() is None
    assert stands(hand.state) == stands(ripped)
    to_the_end(hand)
    assert hand.state.ledger.empty
    hand.put_down()


def test_a_garment_with_inserted_steps_is_undone_to_its_first_press_and_replayed(tmp_path: Path) -> None:
    """To an empty ledger, back, and forth again; the journal leads to the same state, and the record has numbers."""
    hand, _ = inserted_in(tmp_path)
    end_step(hand, [])
    do(hand, Press(), WriteNote("a little tight"), Press(), Finish(), TakeOut(PICK_UP + 1, 0, 3))
    to_the_end(hand)
    ended, groups = hand.state, 0
    while hand.state.top:
        assert hand.take_back() is None
        groups += 1
    assert hand.state.plan.ids == tuple(str(number) for number in range(1, len(ended.steps) - 1))
    assert hand.state.ledger == hand.state.plan.opening()
    for _ in range(groups):
        assert hand.put_back() is None
    assert stands(hand.state) == stands(ended)
    assert hand.put_down()
    again = InHand.open(tmp_path, look=True)
    again.close()
    assert again.state == hand.state
    record = read_record(tmp_path)
    data = as_data(record)
    assert data["finished"]
    assert [(one["step"], one["fell"]) for one in data["ripped_back"]] == [(PICK_UP + 2, [PICK_UP + 3, PICK_UP + 4])]
    assert data["notes"][0]["step"] == PICK_UP + 3
    assert "Try it on" in as_text(record)


def test_a_changed_recipe_is_taken_with_the_inserted_steps(tmp_path: Path) -> None:
    """The file knows nothing of them: they stay where they are, and every other step is the one it was."""
    hand, _ = inserted_in(tmp_path)
    (tmp_path / "recipe.toml").write_text(
        NECKBAND.replace("Right side out", "Turn it right side out"), encoding="utf-8"
    )
    changed = hand.changed_plan()
    assert changed is not None
    assert changed.ids == hand.state.plan.ids
    do(hand, Replan(changed, "other words"))
    assert hand.state.plan.step(PICK_UP - 2).title == "Turn it right side out"
    assert hand.state.plan.step(2) == COUNT
    to_the_end(hand)
    assert hand.state.ledger.empty
    hand.put_down()


NEW = StepId("+1")


@pytest.mark.parametrize(
    "event",
    [
        StepInserted(step=StepId("1"), behind=None, before=None, after=LOOK),
        StepInserted(step=NEW, behind=StepId("99"), before=None, after=LOOK),
        StepInserted(step=NEW, behind=None, before=LOOK, after=LOOK),
        StepInserted(step=NEW, behind=None, before=LOOK, after=None),
        StepInserted(step=StepId("1"), behind=None, before=LOOK, after=None),
        StepInserted(step=StepId("3"), behind=StepId("2"), before=LOOK, after=None),
        TakenBack(1, (StepInserted(step=NEW, behind=None, before=LOOK, after=None),), 0, None),
    ],
)
def test_an_insertion_that_cannot_have_been_does_not_fit(event: StepInserted | TakenBack) -> None:
    """An id that is there already or nowhere, and a step that goes out although it is begun: nobody wrote that."""
    paper = to_step(JOIN)
    with pytest.raises(DoesNotFit):
        evolve(paper.state, Happening(9, NOON, 0, event))


def test_a_place_that_is_not_there_is_refused() -> None:
    """With the numbers that would be right."""
    paper = to_step(0)
    for behind in (-2, len(paper.state.steps)):
        refusal = paper.do(InsertStep(LOOK, behind))
        assert refusal is not None
        assert f"1 to {len(paper.state.steps)}" in refusal.sentence


def test_a_garment_that_was_finished_goes_on_with_the_new_step() -> None:
    """It comes under the needles, and undo leaves the garment finished again."""
    paper = to_step(JOIN)
    while paper.state.current is not None:
        if paper.do(Press()) is not None and paper.do(TakeMeasure("58.5")) is not None:
            paper.surely(Finish())
    ended = stands(paper.state)
    paper.did(InsertStep(LOOK, len(paper.state.steps) - 1), Press(), Press())
    for _ in range(3):
        assert paper.take_back() is None
    assert stands(paper.state) == ended
