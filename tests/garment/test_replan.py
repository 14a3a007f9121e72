"""Numbers changed on a garment under way: what it does at once, what it leaves alone, and that it can be taken back."""

from dataclasses import replace
from pathlib import Path
from types import MappingProxyType

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.ledger import FOUND
from finishing_tui.garment.commands import Press, Replan
from finishing_tui.garment.decide.replan import keeps_old
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.plan import Plan
from tests.garment.edges import reach
from tests.garment.folders import garment_in
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import NECKBAND

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


def test_a_step_that_something_is_done_of_keeps_its_numbers_and_is_named() -> None:
    """With one loop made the rows stay; and it is told of as one that keeps what it was begun with."""
    paper = _at(PICK_UP).did(Press())
    changed = _with(paper.state.plan, rows=17)
    assert keeps_old(paper.state, changed) == (PICK_UP,)
    before = paper.state.steps[PICK_UP]
    paper.did(Replan(changed, "counted again"))
    assert paper.state.steps[PICK_UP] == before


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
