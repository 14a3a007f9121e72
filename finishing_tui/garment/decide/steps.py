"""Deciding about whole steps: beginning, finishing, taking up another, and leaving one out."""

from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import AlreadyAt, Finish, LeaveOut, Refusal, TakeUp
from finishing_tui.garment.decide.doubts import doubts_about, doubts_words
from finishing_tui.garment.decide.stages import openings, sentence, turned, uncounted, work_on
from finishing_tui.garment.events import AnyAct, Begun, Finished, LeftOut, Stood, TakenUp
from finishing_tui.garment.labels import Deed, Label
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Standing, StepWork, fresh


def begin(state: State, step: int) -> Begun | Refusal:
    """Return the beginning of ``step`` from the ledger as it is, or why the ledger cannot bear it."""
    try:
        stages = state.plan.step(step).stages(state.plan.here(state.ledger))
        entries = openings(stages, 0)
        state.ledger.enter(*entries)
    except FinishingError as error:
        return Refusal(f"step {step + 1} cannot be begun: {sentence(error)}")
    work = StepWork(stages, tuple(fresh(stage) for stage in stages), state.ledger)
    named = state.plan.ids[step]
    change = Stood(named, state.steps[step], Standing("under-way", work))
    turn = turned(state, step) if state.current != step else None
    return Begun(step=named, entries=entries, changes=(change,), turned=turn)


def begun_as(state: State, step: int, what: Deed) -> tuple[Begun] | Refusal:
    """Return the beginning of ``step`` as what was done last."""
    begun = begin(state, step)
    return begun if isinstance(begun, Refusal) else (replace(begun, label=Label(what, (begun.step,))),)


def turn_to(state: State, step: int | None) -> tuple[AnyAct, ...]:
    """Return the events that bring ``step`` under the needles: begun, if it can be begun and was not yet."""
    if step is None:
        return ()
    if state.steps[step].work is None and isinstance(begun := begin(state, step), Begun):
        return (begun,)
    return (TakenUp(step=state.plan.ids[step], turned=turned(state, step)),)


def next_step(state: State, after: int) -> int | None:
    """Return the step that follows ``after`` in the recipe's order and is not done; an earlier one when none does."""
    others = [index for index in state.unfinished if index != after]
    return next((index for index in others if index > after), next(iter(others), None))


def finish(state: State, command: Finish) -> tuple[AnyAct, ...] | Refusal:
    """Finish the step under way, or take the lot of its stage; ask again when a count says otherwise."""
    step, standing = state.current, state.standing
    if step is None or standing is None:
        return Refusal("every step is done; nothing is left to finish")
    work = standing.work
    if work is None:
        return begun_as(state, step, "step-begun")
    if not work.complete and work.stages[work.at].takes_all and not command.sure:
        stage, mark = work.stages[work.at], work.progress[work.at].mark
        lot = replace(mark, units=stage.units, loops=stage.units)
        refusal = uncounted(state, stage, lot)
        return refusal or work_on(
            state, lot, label=Label("whole-lot", names=(stage.title,), numbers=(stage.units - mark.units,))
        )
    doubts = doubts_about(state, step, work)
    if doubts and not command.sure:
        return Refusal(doubts_words(doubts), Finish(sure=True), "ends the step anyway")
    named = state.plan.ids[step]
    change = Stood(named, standing, Standing("done", work))
    done = Finished(
        step=named,
        changes=(change,),
        turned=turned(state, None),
        label=Label("step-ended", (named,)),
        although=tuple(doubts),
    )
    return (done, *turn_to(standing_so(state, change), next_step(state, step)))


def take_up(state: State, command: TakeUp) -> tuple[AnyAct, ...] | Refusal:
    """Bring another step under the needles."""
    step = command.step
    if not 0 <= step < len(state.steps):
        return Refusal(f"there is no step {step + 1}; the steps are 1 to {len(state.steps)}")
    if step == state.current:
        return Refusal(f"you are on step {step + 1}")
    if not state.plan.is_for(step):
        return Refusal(f"step {step + 1} is not for size {state.plan.size}")
    standing = state.steps[step]
    named = state.plan.ids[step]
    if standing.status == "done":
        return Refusal(f"step {step + 1} is done; rip back to it to work it again")
    if standing.work is None:
        begun = begun_as(state, step, "step-taken-up")
        if isinstance(begun, Refusal):
            return replace(
                begun, again=AlreadyAt(step), does="starts it anyway, if you did the steps before it elsewhere"
            )
        return begun
    again = () if standing.status == "under-way" else (Stood(named, standing, replace(standing, status="under-way")),)
    return (TakenUp(step=named, changes=again, turned=turned(state, step), label=Label("step-taken-up", (named,))),)


def leave_out(state: State, command: LeaveOut) -> tuple[AnyAct, ...] | Refusal:
    """Leave a step out that is not done; asked again, since what follows may not be possible without it."""
    step = command.step
    if not 0 <= step < len(state.steps):
        return Refusal(f"there is no step {step + 1}; the steps are 1 to {len(state.steps)}")
    if not state.plan.is_for(step):
        return Refusal(f"step {step + 1} is not for size {state.plan.size}; it is skipped by itself")
    standing = state.steps[step]
    if standing.status in {"done", "left-out"}:
        return Refusal(f"step {step + 1} is {'done' if standing.status == 'done' else 'left out'} already")
    if not command.sure:
        title = state.plan.step(step).title
        return Refusal(
            f"skip step {step + 1}, {title}? Later steps may need it", replace(command, sure=True), "skips it"
        )
    named = state.plan.ids[step]
    change = Stood(named, standing, replace(standing, status="left-out"))
    turn = turned(state, None) if step == state.current else None
    left = LeftOut(step=named, changes=(change,), turned=turn, label=Label("step-left-out", (named,)))
    if turn is None:
        return (left,)
    return (left, *turn_to(standing_so(state, change), next_step(state, step)))


def standing_so(state: State, change: Stood) -> State:
    """Return the state in which a step stands another way, and none is under the needles."""
    index = state.plan.index_of(change.step)
    steps = (*state.steps[:index], change.after, *state.steps[index + 1 :])
    return replace(state, steps=steps, current=None)
