"""Deciding to let what is under way go another way from here: a change of the plan, and of how this step stands."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import Refusal, WhatIf
from finishing_tui.garment.decide.altering import altered
from finishing_tui.garment.decide.stages import going_on, sentence, under_way
from finishing_tui.garment.events import AnyAct, Replanned
from finishing_tui.garment.state import State


def what_if(state: State, command: WhatIf) -> tuple[AnyAct, ...] | Refusal:
    """Take what was asked for; nothing happens where it is as the plan has it already."""
    try:
        found = altered(state, command)
    except FinishingError as error:
        return Refusal(sentence(error))
    step, work = under_way(state)
    if found.work == work or command == WhatIf():
        return ()
    return (
        Replanned(
            edits=(found.edit,) if found.edit is not None and found.edit.after != found.edit.before else (),
            changes=going_on(state, found.work),
            why=f"step {step + 1}, {found.stage.title}: {found.now}; before: {found.was}",
            label=f"another plan for {found.stage.title}",
            under=state.top,
        ),
    )
