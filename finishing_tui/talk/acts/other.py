"""Something else is done than planned; at a join it may have to be asked on which needle, at a hole with which tail."""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.garment.commands import Other
from finishing_tui.garment.decide.press import other_tails
from finishing_tui.garment.labels import AgainstPlan
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import against_plan, other_at, planned
from finishing_tui.glance.yarn import length_at_hole
from finishing_tui.talk.action import Action, Offer, possible
from finishing_tui.talk.asks import Ask, Choose, Option
from finishing_tui.talk.conversation import Talk

_INSTEAD: Mapping[AgainstPlan, tuple[str, str]] = MappingProxyType(
    {
        "skipped": ("skip it", "skip {}"),
        "picked": ("pick it", "pick {}"),
        "picked-once": ("pick 1", "pick up one stitch in {}"),
        "doubled": ("pick 2", "pick up two stitches in {}"),
    }
)
"""What is done against the plan: in a word or two, and in a few more. Those of one rhythm are as wide as each other."""


def _offered(state: State, _: int | None) -> Offer | None:
    work = state.work
    if work is None or work.complete:
        return None
    stage, progress = work.stages[work.at], work.progress[work.at]
    if stage.unit == "spot":
        spot = progress.mark.units + 1
        label, what = _INSTEAD[against_plan(other_at(progress), planned(progress, spot))]
        if label == "pick it" and state.pace != "spot":  # a press skips it and picks the next
            label = "no skip"
        return Offer("other", label, f"{what.format(f'{stage.spot} {spot}')} instead", Other())
    if stage.act == "close" and (tails := other_tails(state, stage)):
        sides = tuple((tail, tail) for tail in tails)
        return Offer("other", "other tail", "close it with another tail that hangs there", Other(tails[0]), sides)
    if stage.unit != "pair":
        return None
    here = state.plan.here(state.ledger)
    sides = tuple((place, here.name(place)) for place in (stage.front, stage.back))
    label, what = "work 2", "work two together on one needle"
    if stage.bars:
        label, what = "take 2", "take two bars on one side"
    return Offer("other", label, what, Other(sides[0][0]), sides)


def _does(talk: Talk) -> Ask | None:
    talk.looking = None
    offer = _offered(talk.state, None)
    found = None if offer is None else possible(talk.state, offer)
    sides = found.sides if found is not None else ()
    if found is not None and found.label == "other tail":
        # What is known to be long enough comes first, and what is known to be tight or too short last.
        known = {side: length_at_hole(talk.state, side[0]) for side in sides}
        sides = tuple(sorted(sides, key=lambda side: (known[side][1] != "enough", not known[side][0])))

    def on(at: int) -> None:
        talk.do(Other(sides[at][0]), "other")

    if found is not None and found.label == "other tail":
        told = ("The tail gets shorter; weave in its end later.",)
        options = tuple(Option(_with_length(talk.state, tail)) for tail, _ in sides)
        return Choose(question="Close it with which tail?", told=told, options=options, then=on)
    if len(sides) > 1:
        options = tuple(Option(text) for _, text in sides)
        return Choose(question="Work two together on which needle?", options=options, then=on)
    talk.do(Other(sides[0][0] if sides else ""), "other")
    return None


def _with_length(state: State, tail: str) -> str:
    long, verdict = length_at_hole(state, tail)
    short = f", {verdict}" if verdict != "enough" else ""
    return f"{tail}: {long}{short}" if long else f"{tail}: length not known"


ACT = Action(
    "other",
    "x",
    "pick a skip, or skip a pick; at a join, work two together; at a hole, use another tail",
    _offered,
    _does,
    "right now",
    held="on",
)
