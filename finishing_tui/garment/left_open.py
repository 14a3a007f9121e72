"""Going straight to the first stitch: which step has it, and which steps are left open on the way.

A step that is left open is one like any other: it can be gone to and done at any time, and comes by itself once no
later step is left.
"""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Reached, StepWork
from finishing_tui.recipe.stage import Stage

TICKS = frozenset({"item", "value"})
"""Units of a stage that has no stitch to count."""


def first_stitch(state: State) -> int | None:
    """Return the first step with stitches to count; None where it is there already, was begun, or cannot be."""
    begun = (state.steps[step].work for step in state.order)
    if state.current is None or any(work is not None and _has_stitches(work.stages) for work in begun):
        return None
    here = state.plan.here(state.ledger)
    for step in range(state.current + 1, len(state.steps)):
        if state.steps[step].status != "to-come" or not state.plan.is_for(step):
            continue
        try:
            if _has_stitches(state.plan.step(step).stages(here)):
                return step
        except FinishingError:  # it rests on a step before it
            return None
    return None


def left_open(state: State) -> tuple[int, ...]:
    """Return the steps in which nothing is done yet, although one that comes after them was begun."""
    last = max(state.order, default=0)
    return tuple(
        step
        for step, standing in enumerate(state.steps[:last])
        if standing.status in {"to-come", "under-way"}
        and step != state.current
        and state.plan.is_for(step)
        and (standing.work is None or untouched(standing.work))
    )


def untouched(work: StepWork) -> bool:
    """Return whether nothing is done of a step that was begun."""
    return all(progress.mark == Reached() for progress in work.progress)


def _has_stitches(stages: tuple[Stage, ...]) -> bool:
    return any(stage.units and stage.unit not in TICKS for stage in stages)
