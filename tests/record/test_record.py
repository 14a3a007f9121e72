"""The record: where a garment stands, and what was really done, with what was taken back left out."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.garment.commands import (
    AlreadyAt,
    Finish,
    LeaveOut,
    Other,
    PickUpGarment,
    PutGarmentDown,
    TakeCount,
    TakeOut,
    WriteNote,
)
from finishing_tui.garment.stored import happenings
from finishing_tui.record import Record, as_data, as_text, not_begun, record_of
from finishing_tui.record.gather import NothingRecorded
from finishing_tui.record.text import WIDTH
from tests.garment.edges import along, finish, press_to_the_end, reach
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import NECKBAND, UNEQUAL
from tests.recipe_texts import place, recipe, step


def recorded(paper: Paper) -> Record:
    """Return the record of a garment on paper."""
    return record_of(happenings(paper.rows))


@given(st.lists(st.integers(0, 9), max_size=30))
def test_it_stands_where_the_garment_stands(acts: list[int]) -> None:
    """Presses, strays, taking back, counts: the record's state is the garment's, and its count is what is shown."""
    paper = along(20, 15).did(PickUpGarment())
    for act in acts:
        if act == 0:
            paper.take_back()
        elif act == 1:
            paper.put_back()
        else:
            paper.do(Other() if act == 2 else TakeCount(3, answer="loops") if act == 3 else Finish())
            if act > 4 and paper.state.current == 0 and not complete(paper):
                paper.press()
    record = recorded(paper)
    assert record.state == paper.state
    data = json.loads(json.dumps(as_data(record)))
    assert data["places"] == paper.state.ledger.live
    if paper.state.current == 0:
        assert (data["count"], data["target"]) == (paper.state.ledger.on("band"), 15)
    assert as_text(record)


def complete(paper: Paper) -> bool:
    """Return whether the step under the needles is complete."""
    work = paper.state.standing.work if paper.state.standing else None
    return work is None or work.complete


def test_the_keys_that_programs_read() -> None:
    """Fourteen of fifteen loops, row nineteen of twenty: every promised key, with steps counted from 1."""
    data = as_data(recorded(along(20, 15).did(PickUpGarment()).press(14)))
    assert {key: data[key] for key in ("title", "size", "step", "steps", "count", "target", "places", "tails")} == {
        "title": "grey pullover",
        "size": "one",
        "step": 1,
        "steps": 4,
        "count": 14,
        "target": 15,
        "places": {"band": 14},
        "tails": ["start of pick up"],
    }
    assert (data["markers"], data["holes"], data["counts"], data["finished"], data["begun"]) == (
        [],
        [],
        [],
        False,
        True,
    )
    assert (data["part"], data["unit"], data["spot"], data["spots"]) == ("edge", "row", 18, 20)
    assert [(one["number"], one["acts"], one["ended"]) for one in data["sittings"]] == [(1, 14, None)]


def test_counts_stand_in_order_and_those_taken_back_are_left_out() -> None:
    """Three counts, the second taken back and put back again, the third taken back for good."""
    paper = along(32, 24).press(12).did(TakeCount(12)).did(TakeCount(11, answer="presses"))
    paper.take_back()
    paper.put_back()
    paper.did(TakeCount(10, answer="loops", repair="as-it-is"))
    paper.take_back()
    counts = as_data(recorded(paper))["counts"]
    assert [(one["step"], one["place"], one["counted"], one["expected"], one["answer"]) for one in counts] == [
        (1, "band", 12, 12, "as planned"),
        (1, "band", 11, 12, "presses"),
    ]
    assert counts[1]["repair"] == "space the rest"
    assert counts[1]["verdict"] == "lies flat"
    assert counts[0]["at"] == "2024-05-01T12:00:00.000Z"


def test_what_departed_from_the_recipe_is_told() -> None:
    """A stray, a step left out, one finished against a doubt, a first round that mends; a stray taken back is not."""
    paper = along(32, 24).press(3).did(Other()).press(7).did(TakeCount(8, answer="half-way", repair="first-round"))
    paper.did(Other())
    paper.take_back()
    paper.surely(Finish())
    paper.surely(LeaveOut(2))
    data = as_data(recorded(paper))
    told = [(one["step"], one["text"]) for one in data["deviations"]]
    assert told == [
        (1, "row 4, picked against the plan"),
        (1, "finished although edge: 8 of 20 so far"),
        (3, "left out"),
    ]
    assert [one["why"] for one in data["changes"]] == ["recount of step 1: +4 in the first round of step 2"]
    text = as_text(recorded(paper))
    for words in ("row 4, picked against the plan", "Changes of the plan", "(left out)", "halfway"):
        assert words in text


def test_what_was_ripped_back_stays_in_the_record() -> None:
    """To row 8, and later from the third step to the start of the first: the steps that fell are named."""
    paper = along(32, 24).press(12).did(TakeOut(0, 0, 8))
    reach(paper, 2)
    paper.surely(TakeOut(0))
    ripped = as_data(recorded(paper))["ripped_back"]
    assert [(one["step"], one["text"], one["fell"]) for one in ripped] == [
        (1, "row 8", []),
        (1, "the start of edge", [2, 3]),
    ]
    assert "taken out to the start of edge; steps 2 and 3 fell with it" in " ".join(as_text(recorded(paper)).split())


def test_sittings_count_their_acts() -> None:
    """Two sittings, the second cut off: what was done in each, and where the first was left."""
    paper = along(20, 15).did(PickUpGarment()).press(3).did(PutGarmentDown("by the window"))
    paper.did(PickUpGarment()).press(2).did(WriteNote("tight"))
    paper.take_back()
    data = as_data(recorded(paper))
    assert [(one["number"], one["acts"], one["where"], one["ended"] is None) for one in data["sittings"]] == [
        (1, 3, "by the window", False),
        (2, 2, "", True),
    ]
    assert data["notes"] == [{"step": 1, "at": "2024-05-01T12:00:00.000Z", "text": "tight"}]


@pytest.mark.parametrize(("recipe", "size"), [(NECKBAND, "large"), (UNEQUAL, "one")])
def test_a_finished_garment(recipe: str, size: str) -> None:
    """Worked to its end: nothing is held, every step that was worked is told, and no line is longer than a page."""
    paper = Paper(plan_for(recipe, size)).did(PickUpGarment())
    while paper.state.current is not None:
        finish(paper)
    data, text = as_data(recorded(paper)), as_text(recorded(paper))
    assert (data["finished"], data["step"], data["places"], data["tails"]) == (True, data["steps"], {}, [])
    assert data["count"] is None
    assert f"Finished: all {data['steps']} steps done." in text
    assert all(step.title in text for step in paper.state.plan.recipe.step)
    assert all(len(line) <= WIDTH for line in text.splitlines())
    if recipe == UNEQUAL:
        assert "pairs: 7, two together at pair 7" in text


def test_what_a_step_is_counted_in() -> None:
    """A join in pairs, a checklist in items; a step that is complete keeps its last count."""
    paper = reach(Paper(plan_for(NECKBAND)), 2).press(2)
    data = as_data(recorded(paper))
    assert (data["part"], data["unit"], data["count"], data["target"]) == ("pairs", "pair", 2, 5)
    data = as_data(recorded(press_to_the_end(reach(paper, 6))))
    assert (data["part"], data["count"], data["target"]) == ("slipped edge", 8, 8)


def test_a_garment_that_was_never_picked_up() -> None:
    """Its plan and what its holders have; nothing is done, and nothing is made up."""
    record = not_begun(plan_for(NECKBAND))
    data = as_data(record)
    assert (data["begun"], data["step"], data["count"], data["sittings"]) == (False, 1, None, [])
    assert data["places"] == {"front": 5, "back": 5, "centre": 6}
    assert "Not begun yet." in as_text(record)
    assert "nothing yet" in as_text(record)


def test_text_of_a_garment_is_inert() -> None:
    """Brackets and anything that looks like markup stand as they are."""
    paper = along(20, 15).did(WriteNote("[bold red]not[/] <b>markup</b> %s {x}"))
    assert "[bold red]not[/] <b>markup</b> %s {x}" in as_text(recorded(paper))


def test_there_is_no_record_of_nothing() -> None:
    """Said in a sentence."""
    with pytest.raises(NothingRecorded):
        record_of(())


def test_a_measure_that_was_taken_elsewhere_is_said_not_to_be_written_down() -> None:
    """It was done as the recipe has it, and what it measured nobody typed."""
    steps = (
        step("measure", "Measure it", what="chest"),
        step("check", "Look at it", items=["It lies flat."]),
    )
    paper = Paper(plan_for(recipe("A measure", *steps)))
    paper.did(AlreadyAt(1))
    assert "chest: not written down" in as_text(recorded(paper))


def test_a_count_step_says_what_was_counted() -> None:
    """16 should be there and 15 were counted: the count is 15, of 16, and so is what the place holds."""
    front = place("front", "holder", live=16)
    text = recipe("A holder to count", front, step("count", "Count the front", place="front"))
    paper = Paper(plan_for(text)).did(TakeCount(15))
    data = as_data(record_of(happenings(paper.rows)))
    assert (data["count"], data["places"]) == (15, {"front": 15})
