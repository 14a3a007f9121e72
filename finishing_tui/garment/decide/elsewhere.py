"""Deciding about work done elsewhere: "I am already at this step".

The steps before it are taken as done, and the ledger as the recipe leaves it after them. What the needles really hold
may differ: a count then says so, and its consequences are named, as everywhere.
"""

from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Entry
from finishing_tui.craft.words import listing
from finishing_tui.garment.commands import AlreadyAt, Refusal
from finishing_tui.garment.decide.stages import rest_of, sentence
from finishing_tui.garment.decide.steps import begin
from finishing_tui.garment.events import AnyAct, DoneElsewhere, Stood, Turned
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Standing
from finishing_tui.recipe.stage import whole


def already_at(state: State, command: AlreadyAt) -> tuple[AnyAct, ...] | Refusal:
    """Take every step before the one named as done elsewhere, and begin that one."""
    step = command.step
    if not 0 <= step < len(state.steps) or not state.plan.is_for(step):
        return Refusal(f"there is no step {step + 1} for size {state.plan.size}")
    if state.steps[step].work is not None:
        return Refusal(f"step {step + 1} was begun here already")
    before = [at for at in range(step) if state.steps[at].status in {"to come", "under way"} and state.plan.is_for(at)]
    if not before:
        taken = begin(state, step)
        label = f"taking up step {step + 1}"
        return taken if isinstance(taken, Refusal) else (replace(taken, label=label, under=state.top),)
    ledger, entries = state.ledger, list[Entry]()
    for at in before:
        try:
            work = state.steps[at].work
            if work is not None:
                done = rest_of(work)
            else:
                stages = state.plan.step(at).stages(state.plan.here(ledger))
                done = tuple(entry for stage in stages for entry in whole(stage))
            ledger = ledger.enter(*done)
        except FinishingError as error:
            return Refusal(f"step {at + 1} cannot have been done as the recipe has it: {sentence(error)}")
        entries += done
    changes = tuple(Stood(at, state.steps[at], Standing("done", state.steps[at].work)) for at in before)
    steps = list(state.steps)
    for change in changes:
        steps[change.step] = change.after
    begun = begin(replace(state, ledger=ledger, steps=tuple(steps), current=None), step)
    if isinstance(begun, Refusal):
        return begun
    numbers = listing([str(at + 1) for at in before]) if len(before) < 4 else f"{before[0] + 1} to {before[-1] + 1}"
    elsewhere = DoneElsewhere(
        steps=tuple(before),
        entries=tuple(entries),
        changes=changes,
        turned=Turned(state.current, None),
        label=f"step{'s' if len(before) > 1 else ''} {numbers}, done elsewhere",
        under=state.top,
    )
    return (elsewhere, begun)
