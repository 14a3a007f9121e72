"""What is there is counted, and the rest of an edge is re-spaced if needed; once counted, where that is is said."""

from finishing_tui.garment.state import State
from finishing_tui.glance.counting import countables
from finishing_tui.glance.recounts import may_say_where
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.counting import start_recount


def _offered(state: State, _: int | None) -> Offer | None:
    if may_say_where(state):
        return Offer("recount", "say where", "say where on the edge you counted: ahead, or the rows left")
    if not countables(state):
        return None
    work = state.work
    picking = work is not None and work.at < len(work.stages) and work.stages[work.at].unit == "spot"
    return Offer("recount", "count", "count, and re-space the rest if needed" if picking else "count what is there")


ACT = Action("recount", "r", "count now", _offered, start_recount, "right now", digits=True)
