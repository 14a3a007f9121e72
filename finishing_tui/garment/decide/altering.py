"""What if: another target, other spots, another rhythm, other rounds, worked out before anything is decided.

The screen lays the old plan and the new one side by side and ``decide`` carries the new one out; both read the same
``Alteration``, so what was shown is what happens.
"""

from dataclasses import replace

from finishing_tui.craft.counts import span
from finishing_tui.craft.words import plural
from finishing_tui.garment.alteration import Alteration, CannotAsk
from finishing_tui.garment.commands import Refusal, WhatIf
from finishing_tui.garment.decide.section_altered import section_altered
from finishing_tui.garment.decide.stages import begun, entered, going_on, under_way, with_stage
from finishing_tui.garment.events import AnyAct, Edited, Replanned
from finishing_tui.garment.labels import Label
from finishing_tui.garment.state import State
from finishing_tui.garment.work import StepWork
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.work import Work as WorkStep
from finishing_tui.recipe.stage import Stage, entries_between
from finishing_tui.recipe.sums import MOST


def altered(state: State, command: WhatIf) -> Alteration:
    """Return what ``command`` would change. Raises ``FinishingError`` with a sentence for what cannot be."""
    step, work = _asked(state)
    stage = work.stages[work.at]
    if stage.unit == "spot":
        if command.rounds is not None:
            raise CannotAsk("there are no rounds here; change the stitches, rows or rhythm")
        return section_altered(state, step, work, command)
    if command.rounds is None or command != WhatIf(rounds=command.rounds):
        raise CannotAsk(f"only another number of {stage.spot}s can be asked for here")
    return _rounds(state, step, work, command.rounds)


def what_if(state: State, command: WhatIf) -> tuple[AnyAct, ...] | Refusal:
    """Take what was asked for; nothing happens where it is as the plan has it already."""
    found = altered(state, command)
    _, work = under_way(state)
    if found.work == work or command == WhatIf():
        return ()
    return (
        Replanned(
            edits=(found.edit,) if found.edit is not None and found.edit.after != found.edit.before else (),
            changes=going_on(state, found.work),
            why=found.why,
            label=Label("plan-altered", names=(found.stage.title,)),
        ),
    )


def asks(state: State) -> Stage:
    """Return the stage that may be another way: one of spots, or of rounds of a band.

    Raises ``CannotAsk`` with a sentence that says why nothing can be asked here.
    """
    _, work = _asked(state)
    return work.stages[work.at]


def _asked(state: State) -> tuple[int, StepWork]:
    if not begun(state):
        raise CannotAsk("start the step first, then change its stitches, rhythm or rounds")
    step, work = under_way(state)
    if work.complete:
        raise CannotAsk("this step is complete; rip back to change it")
    stage = work.stages[work.at]
    if stage.unit == "spot" or (stage.unit == "round" and isinstance(state.plan.step(step), WorkStep)):
        return step, work
    if stage.unit in {"pair", "stitch"}:
        raise CannotAsk(
            f"{stage.title} uses the stitches you have, so nothing can change; if there are more or fewer, type the "
            "count"
        )
    raise CannotAsk("there is no spacing here and there are no rounds, so there is nothing to change")


def _rounds(state: State, step: int, work: StepWork, rounds: int) -> Alteration:
    index, old = work.at, state.plan.step(step)
    stage, units = work.stages[index], work.progress[index].mark.units
    assert isinstance(old, WorkStep)
    if not max(units, 1) <= rounds <= MOST:
        done = f"{plural(units, stage.spot)} {'is' if units == 1 else 'are'} done: " if units else ""
        raise CannotAsk(f"{done}use {span(max(units, 1), MOST, rounds)}")
    new: AnyStep = replace(old, rounds=rounds) if old.rows is None else replace(old, rows=rounds)
    before = state.ledger.leave(*entered(work))
    stages = new.stages(state.plan.here(before))
    if len(stages) != len(work.stages) or entries_between(stages[index], 0, units) != entries_between(stage, 0, units):
        raise CannotAsk(f"with {plural(rounds, stage.spot)} those that are done would have been shaped another way")
    after = with_stage(work, index, replace(stages[index], opening=stage.opening))
    named = state.plan.ids[step]
    why = Label("rounds-altered", (named,), (stage.title, stage.spot), (rounds, stage.units))
    return Alteration(index, stage, after, Edited(named, old, new), why)
