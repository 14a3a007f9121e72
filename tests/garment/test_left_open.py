"""Going straight to the first stitch, and the steps that are left open for it."""

import pytest

from finishing_tui import shipped
from finishing_tui.garment.commands import Press, TakeUp
from finishing_tui.garment.left_open import TICKS, first_stitch, left_open
from tests.garment.edges import along, finish
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import NECKBAND

RECIPES = sorted(shipped.recipes())


def units(paper: Paper, step: int) -> set[str]:
    """Return what a press stands for in a step that is begun from here."""
    state = paper.state
    return {stage.unit for stage in state.plan.step(step).stages(state.plan.here(state.ledger)) if stage.units}


@pytest.mark.parametrize("name", RECIPES)
def test_the_first_stitch_of_every_recipe(name: str) -> None:
    """It has stitches, all that is passed over has none and is left open, and one undo has it all as it was."""
    paper = Paper(plan_for(shipped.recipe(name).read_text()))
    before = paper.state
    assert before.current is not None
    first = first_stitch(before)
    assert first is not None
    passed = [step for step in range(first) if before.plan.is_for(step)]
    assert units(paper, first) - TICKS
    assert all(units(paper, step) <= TICKS for step in passed)
    assert left_open(before) == ()
    paper.did(TakeUp(first))
    assert paper.state.current == first
    assert list(left_open(paper.state)) == passed
    assert first_stitch(paper.state) is None
    assert paper.take_back() is None
    assert (paper.state.current, paper.state.steps, paper.state.ledger) == (
        before.current,
        before.steps,
        before.ledger,
    )
    assert left_open(paper.state) == ()


def test_what_was_left_open_comes_at_the_end() -> None:
    """Once no later step is left the ticks come by themselves, in order; done, none is open any more."""
    paper = Paper(plan_for(NECKBAND))
    first = first_stitch(paper.state)
    assert first == 2
    paper.did(TakeUp(first))
    assert left_open(paper.state) == (0, 1)
    came: list[int] = []
    while (current := paper.state.current) is not None:
        if current == 0:
            assert left_open(paper.state) == (1,), "the one under the needles waits no longer"
        came.append(current)
        finish(paper)
    assert came[-2:] == [0, 1]
    assert left_open(paper.state) == ()


def test_what_was_left_open_can_be_done_at_any_time() -> None:
    """Taken up again and ticked off it is open no longer, though it is not finished yet."""
    paper = Paper(plan_for(NECKBAND))
    paper.did(TakeUp(2), Press(), TakeUp(0), Press(), TakeUp(2))
    assert left_open(paper.state) == (1,)


def test_past_the_start_there_is_no_first_stitch() -> None:
    """Neither where the first step has it, nor once one was begun."""
    assert first_stitch(along(8, 6).state) is None
    paper = Paper(plan_for(NECKBAND)).did(TakeUp(2), TakeUp(0))
    assert first_stitch(paper.state) is None
