"""What is there is counted, and what is left of an edge is spaced again if need be."""

from finishing_tui.garment.state import State
from finishing_tui.glance.counting import countables
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.counting import start_recount

HELP = "recount now"


def _offered(state: State, _: int | None) -> Offer | None:
    what = "count, and re-space the rest if needed"
    return Offer("recount", "recount", what) if countables(state) else None


ACT = Action("recount", "r", HELP, _offered, start_recount, digits=True)
