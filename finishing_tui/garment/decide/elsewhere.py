"""Deciding about work done elsewhere: "I am already at this step".

The steps before it are taken as done, and the ledger as the recipe leaves it after them. What the needles really hold
may differ: a count then says so, and its consequences are named, as everywhere. Each of them has all of its work, as if
it had been done here, so that it can be ripped back to and falls with what was worked before it.
"""

from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Entry
from finishing_tui.garment.commands import AlreadyAt, Refusal
from finishing_tui.garment.decide.stages import entered, rest_of, sentence, turned
from finishing_tui.garment.decide.steps import begin, begun_as
from finishing_tui.garment.events import AnyAct, DoneElsewhere, Stood
from finishing_tui.garment.labels import Label
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import to_come
from finishing_tui.garment.work import Progress, Reached, Standing, StepWork, fresh
from finishing_tui.recipe.stage import Stage


def already_at(state: State, command: AlreadyAt) -> tuple[AnyAct, ...] | Refusal:
    """Take every step before the one named as done elsewhere, and begin that one."""
    step = command.step
    if not 0 <= step < len(state.steps) or not state.plan.is_for(step):
        return Refusal(f"there is no step {step + 1} for size {state.plan.size}")
    if state.steps[step].work is not None:
        return Refusal(f"step {step + 1} was begun here already")
    before = [at for at in state.unfinished if at < step]
    if not before:
        return begun_as(state, step, "step-taken-up")
    ledger, entries, changes = state.ledger, list[Entry](), list[Stood]()
    for at in before:
        try:
            work = state.steps[at].work
            if work is not None:
                done, work = rest_of(work), _complete(work)
            else:
                stages = state.plan.step(at).stages(state.plan.here(ledger))
                work = _complete(StepWork(stages, tuple(fresh(stage) for stage in stages), ledger))
                done = entered(work)
            ledger = ledger.enter(*done)
        except FinishingError as error:
            return Refusal(f"step {at + 1} cannot have been done as the recipe has it: {sentence(error)}")
        entries += done
        changes.append(Stood(state.plan.ids[at], state.steps[at], Standing("done", work)))
    steps = list(state.steps)
    for at, change in zip(before, changes, strict=True):
        steps[at] = change.after
    begun = begin(replace(state, ledger=ledger, steps=tuple(steps), current=None), step)
    if isinstance(begun, Refusal):
        return begun
    steps_done = tuple(change.step for change in changes)
    elsewhere = DoneElsewhere(
        steps=steps_done,
        entries=tuple(entries),
        changes=tuple(changes),
        turned=turned(state, None),
        label=Label("done-elsewhere", steps_done),
    )
    return (elsewhere, begun)


def _complete(work: StepWork) -> StepWork:
    """Return ``work`` with every stage done as it is planned from where it stands."""
    return replace(work, progress=tuple(map(_whole, work.stages, work.progress)))


def _whole(stage: Stage, progress: Progress) -> Progress:
    mark = progress.mark
    if mark.units >= stage.units:
        return progress
    loops = stage.units
    if stage.unit == "spot":
        loops = mark.loops + to_come(stage, progress, mark.units) - mark.within
    return replace(progress, mark=Reached(stage.units, 0, loops))
