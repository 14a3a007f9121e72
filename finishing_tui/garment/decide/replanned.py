"""Planning what is left of a step again after a count, from what is really there."""

from collections.abc import Iterable
from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Entry
from finishing_tui.garment.decide.stages import entered
from finishing_tui.garment.events import Edited, Replanned
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Work, fresh
from finishing_tui.recipe.kinds.work import Shaping
from finishing_tui.recipe.kinds.work import Work as WorkStep
from finishing_tui.recipe.stage import Stage

MENDS = "evenly, after the recount"
"""Where in the first round a difference that a recount left is put right; it tells that shaping from the recipe's."""


def later_stages(state: State, work: Work, place: str, entries: Iterable[Entry]) -> Work:
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


def _which(work: Work, index: int, anew: Stage, here: int) -> Stage:
    """Return the stage that stands from here on: the new one where it is to come, the old one where it is done."""
    old = work.stages[index]
    if old.as_worked and old.units == anew.units:
        return old  # it follows the first side as that was worked, whatever is counted between the two
    if index > here or (
        index == here and old.unit not in {"spot", "value"} and anew.units > work.progress[index].mark.units
    ):
        return replace(anew, opening=old.opening) if index == here else anew
    return old


def mended_first_round(
    state: State, step: int, place: str, difference: int, *, only_mended: bool = False
) -> Replanned | None:
    """Return the change of plan by which the first round on ``place`` after ``step`` puts a difference right.

    What an earlier recount left to that round is added to it. With ``only_mended`` there must be such a recount: that
    is how ripping back takes its mending back. None when no step to come works rounds there; the difference then
    shows at the end of the step.
    """
    for index in range(step + 1, len(state.steps)):
        recipe_step = state.plan.step(index)
        if not (isinstance(recipe_step, WorkStep) and recipe_step.on == place and _to_come(state, index)):
            continue
        before = sum(one.change for one in recipe_step.shaping if one.at == MENDS)
        if only_mended and not before:
            return None
        why = f"recount of step {step + 1}: {difference:+d} in the first round of step {index + 1}"
        edit = Edited(index, recipe_step, _mending(recipe_step, before + difference))
        return Replanned(edits=(edit,), why=why)
    return None


def mending_kept(state: State, plan: Plan) -> Plan:
    """Return a changed plan with what recounts have left to first rounds to come: that is not in any file."""
    for index, old in enumerate(state.plan.recipe.step):
        new = plan.step(index)
        if isinstance(old, WorkStep) and isinstance(new, WorkStep) and old.on == new.on:
            plan = plan.with_step(index, _mending(new, sum(one.change for one in old.shaping if one.at == MENDS)))
    return plan


def _to_come(state: State, index: int) -> bool:
    return state.steps[index].status == "to come" and state.plan.is_for(index)


def _mending(step: WorkStep, change: int) -> WorkStep:
    """Return ``step`` with ``change`` stitches put right in its first round (none, where that is 0)."""
    shaping = tuple(one for one in step.shaping if one.at != MENDS)
    mend = (Shaping(change=change, round=1, at=MENDS),) if change else ()
    return replace(step, shaping=(*shaping, *mend))
