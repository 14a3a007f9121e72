"""The step in the middle is left out."""

from finishing_tui.garment.commands import LeaveOut
from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.conversation import Talk


def _offered(state: State, looking_at: int | None) -> Offer | None:
    here = state.current if looking_at is None else looking_at
    if here is None or not state.plan.is_for(here):
        return None
    return Offer("leave_out", "skip step", f"skip step {here + 1}", LeaveOut(here))


def _does(talk: Talk) -> None:
    step = talk.shown_step
    if step is None:
        talk.refuse("every step is done; there is none to skip")
    else:
        talk.do(LeaveOut(step), "leave_out")


ACT = Action("leave_out", "o", "skip this step", _offered, _does, "this step", held="once")
