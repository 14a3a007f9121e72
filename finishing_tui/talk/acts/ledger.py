"""Where every stitch, tail, marker and hole is, and what was entered last."""

from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, ReadLedger
from finishing_tui.talk.conversation import Talk


def _offered(_: State, __: int | None) -> Offer:
    return Offer("ledger", "see ledger", "see where every stitch is, and the last entries")


def _does(talk: Talk) -> Ask:
    return ReadLedger(question="The ledger", hand=talk.hand)


ACT = Action(
    "ledger",
    "l",
    "see where every stitch, tail, marker and hole is, and the last entries",
    _offered,
    _does,
    "look something up",
    changes_nothing=True,
    digits=True,
)
