"""A note is written at this step."""

from finishing_tui.garment.commands import WriteNote
from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, WriteLine
from finishing_tui.talk.conversation import Talk


def _offered(_: State, __: int | None) -> Offer:
    return Offer("note", "add note", "add a note at this step")


def _does(talk: Talk) -> Ask:
    return WriteLine(
        question="A note at this step",
        hint="For when you come back to it.",
        keep="keep it",
        leave="no note",
        then=lambda text: _written(talk, text),
    )


def _written(talk: Talk, text: str) -> None:
    if text and talk.do(WriteNote(text)):
        talk.say("the note is kept")


ACT = Action("note", "n", "add a note", _offered, _does, "this step", digits=True)
