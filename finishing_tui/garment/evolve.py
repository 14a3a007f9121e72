"""``evolve``: the state after an event. It only applies what the event carries.

It must never call spacing, sharing, stages or the audit, so that an old journal leads to the same state for ever.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.events import (
    Act,
    AnyAct,
    Begun,
    Change,
    Event,
    Finished,
    Noted,
    PaceChosen,
    Progressed,
    PutBack,
    PutDown,
    Replanned,
    SittingBegan,
    StepInserted,
    Stood,
    Taken,
    TakenBack,
)
from finishing_tui.garment.state import LONGEST_NOTE, MOST_HELD, MOST_KEPT, RECENT, Note, Sitting, State
from finishing_tui.garment.work import Standing
from finishing_tui.recipe.kinds import AnyStep


class DoesNotFit(FinishingError):
    """What a journal says happened does not follow from what it says before: it was not written by this program."""


@dataclass(frozen=True, slots=True)
class Happening:
    """An event with the group it belongs to (the number of the group's first event) and when it was.

    ``at``: UTC, ISO 8601; ``after_ms``: milliseconds since the sitting began.
    """

    group: int
    at: str
    after_ms: int
    event: Event


def first_state(taken: Taken) -> State:
    """Return the state right after the recipe was taken."""
    return State(taken.plan, taken.ledger, tuple(Standing() for _ in range(taken.steps)))


def begun_with(happening: Happening) -> State:
    """Return the state after the first event of a journal. Raises ``DoesNotFit`` when no recipe is taken in it."""
    if not isinstance(happening.event, Taken):
        raise DoesNotFit(
            "this garment's journal does not begin with the recipe that was taken; open it with the version of "
            "finishing that wrote it"
        )
    return evolve(first_state(happening.event), happening)


def evolve(state: State, happening: Happening) -> State:
    """Return the state after ``happening``. Raises ``DoesNotFit`` only for a journal that was never ours."""
    try:
        return sound(_evolved(state, happening))
    except (FinishingError, ValueError, IndexError) as error:
        raise DoesNotFit(
            f"what happened at {happening.at} by this garment's journal does not follow from what it has before; "
            "open it with the version of finishing that wrote it"
        ) from error


def sound(state: State) -> State:
    """Return ``state``.

    Raises ``ValueError`` where its steps are not those of its plan, none is where it points, or it keeps without end.
    """
    if not len(state.steps) == len(state.plan.recipe.step) == len(state.plan.ids):
        raise ValueError("there are not as many steps as the recipe has")
    if state.current is not None and not 0 <= state.current < len(state.steps):
        raise ValueError(f"there is no step {state.current} to be under the needles")
    ledger = state.ledger
    held = (ledger.stitches, ledger.tails, ledger.markers, ledger.holes, ledger.yarns)
    kept = (state.sittings, state.notes, state.undone)
    if max(map(len, held)) > MOST_HELD or max(map(len, kept)) > MOST_KEPT:
        raise ValueError("there is more in it than any garment has")
    return state


def _evolved(state: State, happening: Happening) -> State:
    event = happening.event
    match event:
        case Act():
            return _acted(state, event, happening)
        case TakenBack(group, acts, top, top_label):
            state = applied(state, acts)
            return replace(state, top=top, top_label=top_label, undone=(*state.undone, group))
        case PutBack(group, acts):
            state = applied(state, acts)
            return replace(state, top=group, top_label=acts[0].label, undone=state.undone[:-1])
        case SittingBegan(sitting):
            return replace(state, sittings=(*state.sittings, Sitting(sitting, happening.at)), presses=())
        case PutDown(where):
            _short(where)
            ended = replace(state.sittings[-1], ended=happening.at, where=where)
            return replace(state, sittings=(*state.sittings[:-1], ended))
        case Noted(text, step):
            _short(text)
            return replace(state, notes=(*state.notes, Note(happening.at, step, text)))
        case PaceChosen(pace):
            return replace(state, pace=pace, presses=())  # from here on a press stands for something else
        case Taken():
            return first_state(event)


def _short(note: str) -> None:
    if len(note) > LONGEST_NOTE:
        raise ValueError("a note is longer than any that is written")


def _acted(state: State, act: AnyAct, happening: Happening) -> State:
    if isinstance(act, Finished) and len(act.although) > MOST_HELD:
        raise ValueError("more speaks against a step than was ever asked about")
    state = replace(applied(state, (act,)), last_act=happening.at)
    if isinstance(act, StepInserted):
        state = replace(state, inserted=state.inserted + 1)
    if isinstance(act, Begun):  # another step goes at another pace
        state = replace(state, presses=())
    if act.under is None:
        return state
    presses = (*state.presses, happening.after_ms)[-RECENT:] if not act.label else state.presses
    return replace(state, top=happening.group, top_label=act.label, undone=(), presses=presses)


def applied(state: State, acts: Iterable[AnyAct]) -> State:
    """Return the state with the ledger entries and changes of ``acts`` put in place, and nothing else.

    Raises ``Unbalanced`` or ``ValueError`` for acts that do not fit it.
    """
    for act in acts:
        if isinstance(act, StepInserted) and act.after is not None:
            state = _with_inserted(state, act, act.after)
        steps, index_of = list(state.steps), state.plan.index_of
        for change in act.changes:
            steps[index_of(change.step)] = _changed(steps[index_of(change.step)], change)
        current = state.current
        if act.turned is not None:
            current = None if act.turned.after is None else index_of(act.turned.after)
        stood = (index_of(change.step) for change in act.changes if isinstance(change, Stood))
        order = _order(state.order, stood, steps)
        state = replace(
            state,
            ledger=state.ledger.enter(*act.entries),
            steps=tuple(steps),
            current=current,
            plan=act.change(state.plan) if isinstance(act, Replanned) else state.plan,
            order=order,
            by_turns=_by_turns(state, {index_of(change.step) for change in act.changes}, order, current),
        )
        if isinstance(act, StepInserted) and act.after is None:
            state = _without(state, act)
    return state


def _with_inserted(state: State, act: StepInserted, step: AnyStep) -> State:
    if act.step in state.plan.ids or act.before is not None:
        raise ValueError(f"step {act.step} is there already")
    index = 0 if act.behind is None else state.plan.index_of(act.behind) + 1
    return replace(
        _moved(state, lambda at: at + (at >= index)),
        plan=state.plan.with_inserted(act.step, step, index),
        steps=(*state.steps[:index], Standing(), *state.steps[index:]),
    )


def _without(state: State, act: StepInserted) -> State:
    index = state.plan.index_of(act.step)
    if state.steps[index].work is not None or state.current == index:
        raise ValueError(f"step {act.step} is begun, and cannot go out of the plan")
    return replace(
        _moved(state, lambda at: at - (at > index)),
        plan=state.plan.without(index),
        steps=(*state.steps[:index], *state.steps[index + 1 :]),
    )


def _moved(state: State, to: Callable[[int], int]) -> State:
    """Return the state with each of its steps meant by where it stands now."""
    return replace(
        state,
        current=None if state.current is None else to(state.current),
        order=tuple(map(to, state.order)),
        by_turns=tuple(map(to, state.by_turns)),
    )


def _order(order: tuple[int, ...], changed: Iterable[int], steps: list[Standing]) -> tuple[int, ...]:
    """Return the steps in the order they were begun, once ``changed`` stand so; those not begun any more drop out.

    Ripping back lets the last ones fall, latest first, so taking it back brings them back in the order they had.
    """
    begun = [step for step in changed if step not in order]
    return tuple([step for step in (*order, *begun) if steps[step].work is not None])


def _changed(standing: Standing, change: Change) -> Standing:
    if isinstance(change, Stood):
        work = change.after.work
        if work is not None and len(work.stages) != len(work.progress):
            raise ValueError(f"step {change.step} has parts without progress, or progress without a part")
        return change.after
    work, stage = standing.work, change.stage
    if work is None or not 0 <= stage < len(work.progress):
        raise ValueError(f"step {change.step} has no part {stage} to change")
    progress = change.after if isinstance(change, Progressed) else replace(work.progress[stage], mark=change.after)
    return replace(standing, work=work.with_progress(stage, progress))


def _by_turns(state: State, changed: set[int], order: tuple[int, ...], current: int | None) -> tuple[int, ...]:
    """Return the steps since whose beginning one begun earlier was gone on with, by hand or elsewhere.

    Those are all that were begun after the current one, and after one that has ``changed``. Taking the turn back does
    not take a step out of them, and need not: they are the steps of which it is not sure that nothing else went on.
    """
    later = order[order.index(current) + 1 :] if current in order else ()
    first = next((at for at, step in enumerate(state.order) if step in changed), len(state.order))
    by_turns = {*state.by_turns, *later, *state.order[first + 1 :]}
    return tuple([step for step in order if step in by_turns]) if by_turns else ()
