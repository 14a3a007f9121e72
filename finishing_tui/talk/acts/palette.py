"""Everything that can be done now, to find by its words."""

from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, FindAction
from finishing_tui.talk.conversation import Talk


def _offered(_: State, __: int | None) -> Offer:
    return Offer("palette", "find", "find anything you can do now by its words")


def _does(_: Talk) -> Ask:
    return FindAction(question="What do you want to do?")


ACT = Action(
    "palette",
    "ctrl+p",
    "find anything you can do now by its words",
    _offered,
    _does,
    "look something up",
    also=("find",),
    changes_nothing=True,
    digits=True,
)
