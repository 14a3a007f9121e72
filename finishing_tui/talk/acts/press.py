"""The next thing is done."""

from finishing_tui.garment.commands import Press
from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.conversation import Talk


def _offered(state: State, _: int | None) -> Offer | None:
    if state.current is None:
        return None
    work = state.standing.work if state.standing else None
    if work is None:
        return Offer("press", "begin", "begin this step", Press())
    return None if work.complete else Offer("press", "done", "the next thing is done", Press())


def _does(talk: Talk) -> None:
    talk.looking = None
    talk.do(Press(), "press")


ACT = Action("press", "space", "the next thing is done", _offered, _does, letter="d")
