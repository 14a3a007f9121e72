"""What was taken back is there again."""

from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.conversation import Talk


def _offered(state: State, _: int | None) -> Offer | None:
    return Offer("put_back", "redo", "redo what you took back") if state.undone else None


def _does(talk: Talk) -> None:
    talk.looking = None
    talk.refused(talk.hand.put_back(), "put_back")


ACT = Action("put_back", "u", "redo what you took back", _offered, _does, "right now", also=("redo",))
