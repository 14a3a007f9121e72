"""Stages: what the presses enter one by one is what the audit enters at one go."""

from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import EDGE, Ledger, Posting
from finishing_tui.glance.stored_words import ACTS
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.kinds.base import Here
from finishing_tui.recipe.stage import Flow, Stage, entries_between, loops_onto, whole
from tests.examples import share
from tests.strategies import heres, model_of, steps


def stages_of(do: str, here: Here, table: dict[str, Any]) -> tuple[Stage, ...]:
    """Return the stages of a step, or drop the example when this ledger cannot bear it."""
    try:
        return tuple(model_of(KINDS[do], table).stages(here))
    except FinishingError:
        assume(condition=False)
        raise


def units_of(stage: Stage) -> int:
    """Return how many units enter something: loops in a stage of spots, else its own units."""
    return stage.target if stage.unit == "spot" else stage.units


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("do", KINDS)
@settings(max_examples=share(25))  # a kind
@given(data=st.data(), here=heres())
def test_all_presses_are_the_whole_stage(do: str, data: st.DataObject, here: Here) -> None:
    """Press by press, cut anywhere, or at one go: the ledger is the same, and every step of the way can be borne."""
    by_press = at_once = here.ledger
    for stage in stages_of(do, here, data.draw(steps(do, work_only=True))):
        by_press = by_press.enter(*stage.opening)
        units = units_of(stage)
        for done in range(units):
            by_press = by_press.enter(*entries_between(stage, done, done + 1))
        by_press = by_press.enter(*stage.closing)
        cut = data.draw(st.integers(0, units))
        begun = at_once.enter(*stage.opening, *entries_between(stage, 0, cut))
        at_once = at_once.enter(*whole(stage))
        assert begun.enter(*entries_between(stage, cut, units), *stage.closing) == at_once
        assert by_press == at_once


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("do", KINDS)
@settings(max_examples=share(25))  # a kind
@given(data=st.data(), here=heres())
def test_a_step_keeps_the_books_and_can_be_undone(do: str, data: st.DataObject, here: Here) -> None:
    """The sum of all accounts stays zero, and leaving the stages in reverse gives the ledger back exactly."""
    ledgers = [here.ledger]
    stages = stages_of(do, here, data.draw(steps(do, work_only=True)))
    for stage in stages:
        ledgers.append(ledgers[-1].enter(*whole(stage)))
        assert sum(ledgers[-1].stitches.values()) == 0
    for stage, before, after in reversed(list(zip(stages, ledgers, ledgers[1:], strict=False))):
        assert after.leave(*whole(stage)) == before


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("do", KINDS)
@settings(max_examples=share(25))  # a kind
@given(data=st.data(), here=heres())
def test_a_stage_can_be_shown(do: str, data: st.DataObject, here: Here) -> None:
    """Every stage has a word for two metres, a title, and hints and halts that lie within it; items match units."""
    for stage in stages_of(do, here, data.draw(steps(do, work_only=True))):
        assert ACTS[stage.act] == ACTS[stage.act].upper() != ""
        assert stage.title
        assert all(1 <= unit <= stage.units and words for unit, words in stage.said)
        assert all(0 < halt < stage.units for halt in stage.halts)
        assert (stage.rhythm is not None) == (stage.unit == "spot")
        if stage.unit == "item":
            assert len(stage.items) == stage.units
        if stage.rhythm is not None:
            assert (stage.rhythm.spots, stage.rhythm.stitches) == (stage.units, stage.target)


@given(st.integers(1, 50), st.integers(1, 30), st.integers(0, 30), st.data())
def test_a_flow_is_spread_evenly_and_comes_out(stitches: int, first: int, length: int, data: st.DataObject) -> None:
    """Nothing before its first unit, all by its last, never less than before, and never in jumps."""
    flow = Flow(EDGE, "neck", stitches, first, first + length)
    assert flow.moved(first - 1) == 0
    assert flow.moved(first + length) == flow.moved(first + length + 7) == stitches
    steps_ = [flow.moved(unit) - flow.moved(unit - 1) for unit in range(first, first + length + 1)]
    assert max(steps_) - min(steps_) <= 1
    one, other = data.draw(st.tuples(st.integers(0, 70), st.integers(0, 70)))
    stage = Stage("stitch", 70, "t", "pick", flows=(flow,))
    there, back = entries_between(stage, one, other), entries_between(stage, other, one)
    ledger = Ledger().enter(Posting(EDGE, "neck", 500))
    assert ledger.enter(*there, *back) == ledger


def test_loops_may_go_on_beyond_the_plan() -> None:
    """A deviation makes more loops than were planned; each is one stitch, up to what the edge can give."""
    stage = Stage("spot", 4, "t", "pick", target=3, flows=loops_onto("neck", 8))
    assert entries_between(stage, 3, 5) == (Posting(EDGE, "neck", 2),)
    assert loops_onto("neck", 0) == ()
