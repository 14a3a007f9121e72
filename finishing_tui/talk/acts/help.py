"""All keys, and how the step in the middle is done."""

from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, ReadHelp
from finishing_tui.talk.conversation import Talk


def _offered(_: State, __: int | None) -> Offer:
    return Offer("help", "help", "see every key, and how to do this step")


def _does(_: Talk) -> Ask:
    return ReadHelp(question="Help")


ACT = Action(
    "help", "question_mark", "this help", _offered, _does, "look something up", changes_nothing=True, digits=True
)
