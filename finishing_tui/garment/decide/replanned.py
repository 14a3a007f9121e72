"""Planning what is left of a step again after a count, from what is really there."""

from collections.abc import Iterable
from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Entry, Ledger
from finishing_tui.garment.events import Replanned
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Work, fresh
from finishing_tui.recipe.kinds.work import Shaping
from finishing_tui.recipe.kinds.work import Work as WorkStep
from finishing_tui.recipe.stage import Stage, entries_between


def later_stages(state: State, work: Work, entries: Iterable[Entry]) -> Work:
    """Return ``work`` with the stages that are not begun planned from the ledger with ``entries`` entered.

    The stage under way is planned again too, unless it walks an edge: a recount does that. Where the step could not
    be planned from there, it is left as it was; what cannot be done is then refused when it is tried.
    """
    step, here = state.current or 0, work.at
    try:
        before = _as_not_begun(work, state.ledger.enter(*entries))
        stages = state.plan.step(step).stages(state.plan.here(before))
    except FinishingError:
        return work
    if len(stages) != len(work.stages):
        return work
    kept = [_which(work, index, stages[index], here) for index in range(len(stages))]
    progress = tuple(fresh(stage) if index > here else work.progress[index] for index, stage in enumerate(kept))
    return replace(work, stages=tuple(kept), progress=progress)


def _which(work: Work, index: int, anew: Stage, here: int) -> Stage:
    """Return the stage that stands from here on: the new one where it is to come, the old one where it is done."""
    old = work.stages[index]
    if index > here or (
        index == here and old.unit not in {"spot", "value"} and anew.units > work.progress[index].mark.units
    ):
        return replace(anew, opening=old.opening) if index == here else anew
    return old


def _as_not_begun(work: Work, ledger: Ledger) -> Ledger:
    """Return ``ledger`` with everything this step entered taken out again, so that the step can be planned anew."""
    entered: list[Entry] = []
    for index, (stage, progress) in enumerate(zip(work.stages, work.progress, strict=True)):
        if index > work.at:
            break
        done = progress.mark.loops if stage.unit == "spot" else progress.mark.units
        entered += [*stage.opening, *entries_between(stage, 0, done)]
        if index < work.at:
            entered += stage.closing
    return ledger.leave(*entered)


def mended_first_round(state: State, step: int, place: str, difference: int) -> Replanned | None:
    """Return the change of plan by which the first round on ``place`` puts a difference right.

    None when no step after this one works rounds there; the difference then shows at the end of the step.
    """
    for index in range(step + 1, len(state.steps)):
        recipe_step = state.plan.step(index)
        if isinstance(recipe_step, WorkStep) and recipe_step.on == place and state.steps[index].work is None:
            mend = Shaping(change=difference, round=1, at="evenly, after the recount")
            changed = replace(recipe_step, shaping=(*recipe_step.shaping, mend))
            steps = (*state.plan.recipe.step[:index], changed, *state.plan.recipe.step[index + 1 :])
            plan = replace(state.plan, recipe=replace(state.plan.recipe, step=steps))
            why = f"recount of step {step + 1}: {difference:+d} in the first round of step {index + 1}"
            return Replanned(plan_before=state.plan, plan_after=plan, why=why)
    return None
