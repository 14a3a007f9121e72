"""The other thing was done than the plan says; at a join it may have to be asked on which needle."""

from finishing_tui.garment.commands import Other
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import against_plan, other_at, planned
from finishing_tui.glance.stored_words import AGAINST_PLAN
from finishing_tui.talk.action import Action, Offer, possible
from finishing_tui.talk.asks import Ask, Choose, Option
from finishing_tui.talk.conversation import Talk


def _offered(state: State, _: int | None) -> Offer | None:
    work = state.standing.work if state.standing else None
    if work is None or work.complete:
        return None
    stage, progress = work.stages[work.at], work.progress[work.at]
    if stage.unit == "spot":
        spot = progress.mark.units + 1
        did = AGAINST_PLAN[against_plan(other_at(progress), planned(progress, spot))]
        return Offer("other", f"{stage.spot} {spot} {did}", f"{stage.spot} {spot} was {did} instead", Other())
    if stage.unit != "pair":
        return None
    here = state.plan.here(state.ledger)
    sides = tuple((place, here.name(place)) for place in (stage.front, stage.back))
    label, what = "two together", "two were worked together on one needle"
    if stage.bars:
        label, what = "two at once", "two bars of one side were taken at once"
    return Offer("other", label, what, Other(sides[0][0]), sides)


def _does(talk: Talk) -> Ask | None:
    talk.looking = None
    offer = _offered(talk.state, None)
    found = None if offer is None else possible(talk.state, offer)
    sides = found.sides if found is not None else ()

    def on(at: int) -> None:
        talk.do(Other(sides[at][0]), "other")

    if len(sides) > 1:
        options = tuple(Option(text) for _, text in sides)
        return Choose(question="Two were worked together on which needle?", options=options, then=on)
    talk.do(Other(sides[0][0] if sides else ""), "other")
    return None


ACT = Action("other", "x", "the other thing was done than the plan says", _offered, _does)
