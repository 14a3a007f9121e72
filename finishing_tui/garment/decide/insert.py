"""Deciding to put one step more into the plan of a garment under way."""

from finishing_tui.garment.commands import InsertStep, Refusal
from finishing_tui.garment.events import AnyAct, StepInserted, Turned
from finishing_tui.garment.labels import Label
from finishing_tui.garment.plan import StepId
from finishing_tui.garment.state import MOST_KEPT, State


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
