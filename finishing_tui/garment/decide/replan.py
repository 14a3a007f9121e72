"""Deciding to take a changed plan, and what that does at once.

Pieces not touched yet hold what it says, and a step that no hand has begun begins anew. A step comes under the needles
by itself when the one before it is done, and often only then is its edge counted. So one of which nothing is done yet
takes the changed numbers too; one that is under way keeps those it was begun with.
"""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Entry, Ledger, brought, inverses
from finishing_tui.craft.words import listing
from finishing_tui.garment.commands import Refusal, Replan
from finishing_tui.garment.decide.first_round import mending_kept
from finishing_tui.garment.decide.stages import openings
from finishing_tui.garment.events import AnyAct, Change, Replanned, Stood
from finishing_tui.garment.labels import Label
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Standing, StepWork, fresh


def replan(state: State, command: Replan) -> tuple[AnyAct, ...] | Refusal:
    """Take a changed plan; steps that something was done of keep the stages they were begun with."""
    if len(command.plan.recipe.step) != len(state.steps) or command.plan.ids != state.plan.ids:
        return Refusal("the changed recipe has a different number of steps; start a new garment to use it")
    if gone := state.plan.recipe.place.keys() - command.plan.recipe.place.keys():
        return Refusal(f"the changed recipe has no place named {listing(sorted(gone))}; start a new garment to use it")
    for index, standing in enumerate(state.steps):
        if standing.work is not None and command.plan.step(index).do != state.plan.step(index).do:
            return Refusal(f"the changed recipe makes step {index + 1}, which is begun, another kind of step")
    plan = mending_kept(state, command.plan)
    entries, changes = _at_once(state, plan)
    return (
        Replanned(
            entries=entries,
            changes=changes,
            plan_before=state.plan,
            plan_after=plan,
            why=command.why,
            note=command.note,
            label=Label("plan-taken"),
        ),
    )


def _at_once(state: State, plan: Plan) -> tuple[tuple[Entry, ...], tuple[Change, ...]]:
    """Return what taking ``plan`` enters in the ledger, and the step that begins anew, if one does.

    One that could not be begun by the changed plan stays as it was begun.
    """
    try:
        return anew(state, plan)
    except FinishingError:
        return _held(state.ledger, state.plan, plan), ()


def anew(state: State, plan: Plan) -> tuple[tuple[Entry, ...], tuple[Change, ...]]:
    """Return the same; raises ``FinishingError`` where the step at hand could not be begun by the changed plan."""
    step, standing = state.current, state.standing
    work = None if standing is None else standing.work
    if step is None or work is None or not _untouched(work):
        return _held(state.ledger, state.plan, plan), ()
    opened = openings(work.stages, 0)
    try:
        before = state.ledger.leave(*opened)
    except FinishingError:  # another step went on meanwhile with what this one had opened
        return _held(state.ledger, state.plan, plan), ()
    held = _held(before, state.plan, plan)
    before = before.enter(*held)
    stages = plan.step(step).stages(plan.here(before))
    if stages == work.stages:
        return held, ()
    again = openings(stages, 0)
    before.enter(*again)  # refused here, and not when it is entered
    after = Standing("under-way", StepWork(stages, tuple(fresh(stage) for stage in stages), before))
    return (*inverses(opened), *held, *again), (Stood(plan.ids[step], state.steps[step], after),)


def keeps_old(state: State, plan: Plan) -> tuple[int, ...]:
    """Return the steps under way that keep the numbers they were begun with, where ``plan`` has others for them."""
    found = []
    for index, standing in enumerate(state.steps):
        work = standing.work
        if standing.status != "under-way" or work is None or (index == state.current and _untouched(work)):
            continue
        try:
            old, new = (each.step(index).stages(each.here(work.before)) for each in (state.plan, plan))
        except FinishingError:
            continue  # what cannot be planned any more is told of by the audit of what is to come
        if old != new:
            found.append(index)
    return tuple(found)


def _untouched(work: StepWork) -> bool:
    return all(progress == fresh(stage) for stage, progress in zip(work.stages, work.progress, strict=True))


def _held(ledger: Ledger, old: Plan, new: Plan) -> tuple[Entry, ...]:
    """Return what puts on each place what the pieces hold by the new plan, where it still holds all it did by the old.

    Nothing, where one of the plans cannot tell what the pieces hold.
    """
    try:
        was, now = old.opening(), new.opening()
    except FinishingError:
        return ()
    places = (place for place in dict.fromkeys((*was.live, *now.live)) if ledger.on(place) == was.on(place))
    return tuple(entry for place in places for entry in brought(place, was.on(place), now.on(place)))
