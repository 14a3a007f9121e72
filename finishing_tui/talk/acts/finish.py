"""The step is done, or all of a part; typed digits are taken; another step that is looked at is taken up."""

from finishing_tui.garment.commands import Finish, TakeUp
from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.counting import take_typed


def _offered(state: State, looking_at: int | None) -> Offer | None:
    if looking_at is not None and looking_at != state.current:
        return Offer("finish", "take it up", f"go on with step {looking_at + 1}", TakeUp(looking_at))
    if state.current is None:
        return None
    work = state.standing.work if state.standing else None
    if work is None:
        return Offer("finish", "begin", "begin this step", Finish())
    if not work.complete and work.stages[work.at].takes_all:
        return Offer("finish", "the lot", f"all of {work.stages[work.at].title} is done", Finish())
    return Offer("finish", "step done", "this step is done", Finish())


def _does(talk: Talk) -> Ask | None:
    if talk.typed:
        return take_typed(talk)
    offer = _offered(talk.state, talk.looking)
    talk.do(Finish() if offer is None or offer.command is None else offer.command, "finish")
    return None


ACT = Action(
    "finish",
    "enter",
    "this step is done; after digits: the count is that; on another step: take it up",
    _offered,
    _does,
    letter="f",
    digits=True,
)
