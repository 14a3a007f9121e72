"""An edge nobody counted is pinned in equal parts, each with its share, so that every pin is a count."""

from finishing_tui.garment.commands import PinEdge
from finishing_tui.garment.decide.pins import can_be_pinned
from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, Choose, HowMany, Option
from finishing_tui.talk.conversation import Talk

_PARTS = (4, 2, 8)
"""Parts that are folded and pinned at once, the likeliest first."""


def _offered(state: State, _: int | None) -> Offer | None:
    stage = can_be_pinned(state)
    return (
        None if stage is None else Offer("pins", "pin it", f"pin {stage.title} in equal parts, and count at each pin")
    )


def _does(talk: Talk) -> Ask | None:
    stage = can_be_pinned(talk.state)
    if stage is None:
        talk.refuse("an edge is pinned before its first stitch, where nobody counted its rows")
        return None
    most = stage.target // 2
    parts = [part for part in _PARTS if part <= most]

    def answered(at: int) -> Ask | None:
        if at < len(parts):
            return _pinned(talk, parts[at])
        return HowMany(
            question="Pin it every 2 in. (5 cm), the last part no shorter than half of that. How many parts are there?",
            unit="parts",
            idle="COUNT",
            most=most,
            missing="Type how many parts there are.",
            then=lambda number: _pinned(talk, number),
        )

    return Choose(
        question=f"{stage.title[:1].upper()}{stage.title[1:]}: {stage.target} stitches. Pin it in how many parts?",
        options=(
            *(Option(f"{part} equal parts", _each(stage.target, part)) for part in parts),
            Option("every 2 in. (5 cm)"),
        ),
        then=answered,
    )


def _each(target: int, parts: int) -> str:
    fewer, more = target // parts, -(-target // parts)
    return f"{fewer} in each" if fewer == more else f"{fewer} or {more} in each"


def _pinned(talk: Talk, parts: int) -> Ask | None:
    if not talk.do(PinEdge(parts)):
        return talk.asked
    talk.say(f"pinned in {parts} parts: count at every pin", aloud=True)
    return None


ACT = Action("pins", "i", "pin an edge nobody counted in equal parts", _offered, _does, "this step", also=("pin",))
