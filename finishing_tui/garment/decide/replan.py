"""Deciding to take a changed plan, or one step more, and what that does at once.

Pieces not touched yet hold what it says, and a step that no hand has begun begins anew. A step comes under the needles
by itself when the one before it is done, and often only then is its edge counted. So one of which nothing is done yet
takes the changed numbers too; of one that is under way the sections that are not begun take them, and what is begun
keeps those it was begun with.
"""

from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Entry, Ledger, brought, inverses
from finishing_tui.craft.words import listing
from finishing_tui.garment.commands import InsertStep, Refusal, Replan
from finishing_tui.garment.decide.first_round import mending_kept
from finishing_tui.garment.decide.mirror import followed
from finishing_tui.garment.decide.stages import openings, with_stage
from finishing_tui.garment.edge_length import as_long
from finishing_tui.garment.events import AnyAct, Change, Replanned, StepInserted, Stood, Turned
from finishing_tui.garment.labels import Label
from finishing_tui.garment.plan import Plan, StepId
from finishing_tui.garment.state import MOST_KEPT, State
from finishing_tui.garment.work import Reached, Standing, StepWork, fresh
from finishing_tui.recipe.stage import Stage


def replan(state: State, command: Replan) -> tuple[AnyAct, ...] | Refusal:
    """Take a changed plan; what something was done of keeps the stages it was begun with."""
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
    """Return what taking ``plan`` enters in the ledger, and the steps under way that go on another way.

    One that could not be begun by the changed plan stays as it was begun.
    """
    try:
        entries, changes = anew(state, plan)
    except FinishingError:
        entries, changes = _held(state.ledger, state.plan, plan), ()
    named = [one.step for one in changes if isinstance(one, Stood)]
    others: list[Stood] = []
    for index, standing in enumerate(state.steps):
        work = None if state.plan.ids[index] in named else _rest_anew(state, index, plan)
        if work is not None and work != standing.work:
            others.append(Stood(state.plan.ids[index], standing, replace(standing, work=work)))
    return entries, (*changes, *others)


def _rest_anew(state: State, step: int, plan: Plan) -> StepWork | None:
    """Return the work of a step under way with its sections that are not begun as ``plan`` has them.

    None where the step is not under way, or by the changed plan is made of other parts.
    """
    standing = state.steps[step]
    work = standing.work
    if standing.status != "under-way" or work is None:
        return None
    try:
        was, planned = (each.step(step).stages(each.here(work.before)) for each in (state.plan, plan))
    except FinishingError:
        return None  # the audit of what is to come tells of it
    titles = [stage.title for stage in work.stages]
    if not all([stage.title for stage in stages] == titles for stages in (was, planned)):
        return None
    for index, (old, before, new) in enumerate(zip(work.stages, was, planned, strict=True)):
        section = old.unit == new.unit == "spot" and old.units and new.units
        if section and before != new and work.progress[index].mark == Reached():
            stage = replace(as_long(new, old.units) if _was_counted(old, before, new) else new, opening=old.opening)
            work = with_stage(work, index, stage).with_progress(index, fresh(stage))
    return work if work == standing.work else followed(state, work)


def _was_counted(old: Stage, before: Stage, new: Stage) -> bool:
    """Return whether a section that is to come got its spots from what its first side turned out to have."""
    return bool(old.mirrors) and old.units != before.units == new.units and not new.uncounted


def anew(state: State, plan: Plan) -> tuple[tuple[Entry, ...], tuple[Change, ...]]:
    """Return the same; raises ``FinishingError`` where the step at hand could not be begun by the changed plan."""
    step, standing = state.current, state.standing
    work = None if standing is None else standing.work
    if step is None or work is None:
        return _held(state.ledger, state.plan, plan), ()
    if not _untouched(work):
        _refuse(state, step, work, plan)
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


def _refuse(state: State, step: int, work: StepWork, plan: Plan) -> None:
    """Raise ``FinishingError`` where what is not begun of a step could be planned until now, and no longer can."""
    try:
        state.plan.step(step).stages(state.plan.here(work.before))
    except FinishingError:
        return
    plan.step(step).stages(plan.here(work.before))


def keeps_old(state: State, plan: Plan) -> tuple[int, ...]:
    """Return the steps under way of which a part keeps the numbers it was begun with, where ``plan`` has others."""
    found = []
    for index, standing in enumerate(state.steps):
        work = standing.work
        if standing.status != "under-way" or work is None or (index == state.current and _untouched(work)):
            continue
        rest = _rest_anew(state, index, plan) or work
        try:
            old, new = (each.step(index).stages(each.here(work.before)) for each in (state.plan, plan))
        except FinishingError:
            continue  # what cannot be planned any more is told of by the audit of what is to come
        differ = len(old) != len(new) or any(
            was != now and rest.stages[part] == work.stages[part]
            for part, (was, now) in enumerate(zip(old, new, strict=True))
        )
        if differ:
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


def insert_step(state: State, command: InsertStep) -> tuple[AnyAct, ...] | Refusal:
    """Put the step behind the one named; where every step was done already it comes under the needles."""
    at = command.behind + 1
    if not 0 <= at <= len(state.steps):
        return Refusal(f"there is no step {at}; the steps are 1 to {len(state.steps)}")
    if state.inserted >= MOST_KEPT:
        return Refusal(f"{MOST_KEPT:,} steps were put into this garment's plan, and no more can be kept")
    new = StepId(f"+{state.inserted + 1}")
    return (
        StepInserted(
            step=new,
            behind=state.plan.ids[command.behind] if at else None,
            before=None,
            after=command.step,
            turned=Turned(None, new) if state.current is None else None,
            label=Label("step-inserted", (new,), numbers=(at + 1,)),
        ),
    )
