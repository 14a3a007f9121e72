"""Planning what is left of a step again after a count, from what is really there."""

from collections.abc import Iterable
from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Entry
from finishing_tui.garment.decide.stages import entered
from finishing_tui.garment.state import State
from finishing_tui.garment.work import StepWork, fresh
from finishing_tui.recipe.stage import Stage


def later_stages(state: State, work: StepWork, place: str, entries: Iterable[Entry]) -> StepWork:
    """Return ``work`` with the stages that are not begun planned from what was counted on ``place``.

    ``entries``: what the count enters. The stage under way is planned again too, unless it walks an edge: a recount
    does that. Where the step could not be planned from there, it is left as it was; what cannot be done is then
    refused when it is tried.
    """
    step, here = state.current or 0, work.at
    try:
        before = state.ledger.enter(*entries).leave(*entered(work))
        stages = state.plan.step(step).stages(state.plan.here(before))
    except FinishingError:
        return work
    if len(stages) != len(work.stages):
        return work
    kept = [_which(work, index, stages[index], here) for index in range(len(stages))]
    progress = tuple(fresh(stage) if index > here else work.progress[index] for index, stage in enumerate(kept))
    # What is found on a needle that held stitches before the step was there then: ripping back must know of it.
    counted = before if work.before.on(place) else work.before
    return replace(work, stages=tuple(kept), progress=progress, before=counted)


def _which(work: StepWork, index: int, anew: Stage, here: int) -> Stage:
    """Return the stage that stands from here on: the new one where it is to come, the old one where it is done."""
    old = work.stages[index]
    if index > here and old.unit == "spot" and old.mirrors and old.mirrors == anew.mirrors:
        return old  # it follows the first side as that was worked, whatever is counted between the two
    if index > here or (
        index == here and old.unit not in {"spot", "value"} and anew.units > work.progress[index].mark.units
    ):
        return replace(anew, opening=old.opening) if index == here else anew
    return old
