"""Numbers changed on a garment under way: what it does at once, what it leaves alone, and that it can be taken back."""

from dataclasses import replace
from pathlib import Path
from types import MappingProxyType

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import FOUND
from finishing_tui.garment.commands import Press, Replan
from finishing_tui.garment.decide.replan import keeps_old
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.work import Reached
from finishing_tui.glance.numbers import number_lines, renumbering
from tests.examples import share
from tests.garment.edges import reach, work_of
from tests.garment.folders import garment_in
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import NECKBAND
from tests.recipe_texts import place, recipe, section, step

PICK_UP = 6
"""The step of the neckband recipe that picks up along rows."""


def _with(plan: Plan, **own: int) -> Plan:
    return replace(plan, own=MappingProxyType({**plan.own, **own}))


def _at(step: int, **own: int) -> Paper:
    return reach(Paper(plan_for(NECKBAND, own=own)), step)


@given(rows=st.integers(11, 30))
def test_a_step_that_nothing_is_done_of_is_as_if_begun_with_the_new_number(rows: int) -> None:
    """The ledger and the stages are those of a garment that had the number from the start; undo is exact."""
    paper, other = _at(PICK_UP), _at(PICK_UP, rows=rows)
    before = paper.state
    changed = _with(before.plan, rows=rows)
    paper.did(Replan(changed, "counted again"))
    assert paper.state.steps[PICK_UP] == other.state.steps[PICK_UP]
    assert paper.state.ledger == other.state.ledger
    assert paper.take_back() is None
    assert (paper.state.plan, paper.state.steps, paper.state.ledger) == (before.plan, before.steps, before.ledger)


def test_a_section_that_something_is_done_of_keeps_its_numbers_and_is_named() -> None:
    """With one loop made the rows of that section stay; and its step is told of as one that keeps some of them."""
    paper = _at(PICK_UP).did(Press())
    changed = _with(paper.state.plan, rows=17)
    assert keeps_old(paper.state, changed) == (PICK_UP,)
    before = work_of(paper.state)
    paper.did(Replan(changed, "counted again"))
    work = work_of(paper.state)
    assert (work.stages[0], work.progress[0], work.before) == (before.stages[0], before.progress[0], before.before)


@settings(max_examples=share(40))
@given(rows=st.integers(20, 36), pressed=st.integers(0, 24))
def test_a_changed_number_reaches_every_section_not_begun(rows: int, pressed: int) -> None:
    """Of the step under way too: it has the rows as if begun with them; what is begun stays; undo is exact."""
    paper, other = _two_sides(24), _two_sides(rows)
    paper.press(pressed)
    before = paper.state
    work = work_of(before)
    changed = replace(before.plan, own=MappingProxyType({"rows": rows}))
    kept = keeps_old(before, changed)
    if paper.do(Replan(changed, "counted again")) is not None:
        return
    after, fresh_one = work_of(paper.state), work_of(other.state)
    assert paper.state.ledger == before.ledger
    for index, progress in enumerate(work.progress):
        if progress.mark != Reached():
            assert after.stages[index] == work.stages[index]
            assert after.progress[index] == progress
        elif after.stages[index].unit == "spot":
            assert (after.stages[index].units, after.stages[index].target) == (rows, fresh_one.stages[index].target)
    assert kept == ((0,) if pressed and rows != 24 else ())
    if paper.state != before:
        assert paper.take_back() is None
        assert (paper.state.plan, paper.state.steps) == (before.plan, before.steps)


def test_a_number_that_contradicts_is_one_sentence_and_changes_nothing() -> None:
    """With 8 rows a side cannot have its 18 stitches: said with both numbers, and nothing is another way."""
    paper = _two_sides(24).press(3)
    plan = paper.state.plan
    line = next(line for line in number_lines(plan.recipe, plan.size, plan.own) if line.name == "rows")
    with pytest.raises(FinishingError, match=r"step 1 won't work with that number: .*18.*8"):
        renumbering(paper.state, line, 8)


def _two_sides(rows: int) -> Paper:
    """Return a garment just begun: two sides of as many rows, the second the mirror of the first, 18 in each."""
    first = section(along="left front", spots="rows", stitches=18)
    second = section(along="right front", spots="rows", stitches=18, mirrors="left front")
    pick_up = step("pick up and knit", "Pick up", first, section(from_="back", along="back neck"), second, onto="band")
    numbers = '[number.rows]\ntext = "rows of a side"\nby_size = [24]\nask = true\nleast = 4\n\n'
    places = place("band") + place("back", "holder", live=6)
    text = recipe("Two sides", numbers + places, pick_up, step("work", "Work the band", on="band", rows=2))
    return Paper(plan_for(text, own={"rows": rows}))


def test_pieces_not_touched_yet_hold_what_was_counted() -> None:
    """Two more on each shoulder: before anything is worked the ledger finds them; worked off, nothing changes."""
    fresh, worked = Paper(plan_for(NECKBAND)), _at(PICK_UP)
    had = fresh.state.plan.numbers()["shoulder"]
    for paper, found in ((fresh, True), (worked, False)):
        ledger = paper.state.ledger
        paper.did(Replan(_with(paper.state.plan, shoulder=had + 2), "counted again"))
        assert (paper.state.ledger.on(FOUND) != ledger.on(FOUND)) == found
    opening = fresh.state.plan.opening()
    assert fresh.state.ledger.live == opening.live


def test_a_file_that_is_edited_afterwards_keeps_the_numbers_changed_at_the_needles(tmp_path: Path) -> None:
    """A word changed in the file takes nothing back that was said at the needles; a number changed in it counts."""
    folder = garment_in(tmp_path / "x", NECKBAND, more="[number]\nrows = 15")
    hand = InHand.open(folder)
    hand.do(Replan(_with(hand.state.plan, rows=18), "counted again"))
    file = folder / "garment.toml"
    text = file.read_text()
    file.write_text(text.replace("grey pullover", "green pullover"))
    changed = hand.changed_plan()
    assert changed is not None
    assert (changed.title, changed.own["rows"]) == ("green pullover", 18)
    file.write_text(text.replace("rows = 15", "rows = 16"))
    changed = hand.changed_plan()
    assert changed is not None
    assert changed.own["rows"] == 16
    hand.close()
