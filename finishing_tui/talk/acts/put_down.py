"""The garment is put down, with a line about where; it warns if something is not saved."""

from finishing_tui.garment.state import LONGEST_NOTE, State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, Choose, Option, WriteLine
from finishing_tui.talk.conversation import Talk

PATIENCE = 5.0
"""Seconds that putting it down waits for the disk, while nothing is known to be wrong."""

PATIENCE_IN_TROUBLE = 0.2
"""The same once saving has failed: then it is asked at once what to do."""


def _offered(_: State, __: int | None) -> Offer:
    return Offer("put_down", "put down", "put the garment down")


def _does(talk: Talk) -> Ask | None:
    if talk.read_only:
        talk.ends = True
        return None
    return WriteLine(
        question="Where did you leave it?",
        hint="One line for coming back, if you like: the bag, the row, what to watch.",
        keep="put it down",
        leave="keep knitting",
        empty=True,
        then=lambda where: _down(talk, where),
    )


def _down(talk: Talk, where: str) -> Ask | None:
    hand = talk.hand
    if len(where) > LONGEST_NOTE:
        talk.refuse(f"use up to {LONGEST_NOTE} characters. It is not put down yet")
        return talk.asked
    talk.where = where  # from now on, however this ends
    if hand.flush(PATIENCE_IN_TROUBLE if hand.trouble else PATIENCE):
        talk.ends = True
        return None

    def leave(at: int) -> None:
        talk.ends = at == 1

    stay = Option("stay", "It is saved by itself as soon as it can be.")
    unsaved = Option("leave it unsaved", "It goes into a rescue file, if there is room for one.")
    question = f"{hand.unsaved} not saved yet. {hand.trouble}".rstrip()
    return Choose(question=question, options=(stay, unsaved), then=leave, unasked=True)


ACT = Action(
    "put_down",
    "q",
    "put it down; it warns if something is not saved",
    _offered,
    _does,
    "leave",
    changes_nothing=True,
    digits=True,
)
