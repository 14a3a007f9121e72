"""The step before is looked at."""

from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.turning import turn


def _offered(state: State, looking_at: int | None) -> Offer | None:
    here = state.current if looking_at is None else looking_at
    at = len(state.steps) if here is None else here
    return Offer("look_back", "look back", f"look at step {at}") if at > 0 else None


def _does(talk: Talk) -> None:
    turn(talk, -1)


ACT = Action(
    "look_back",
    "left",
    "look at the step before",
    _offered,
    _does,
    "look something up",
    changes_nothing=True,
    digits=True,
)
