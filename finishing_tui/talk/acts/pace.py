"""What one press counts: a stitch, a row, or a repeat."""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.garment.commands import ChoosePace
from finishing_tui.garment.events import Pace
from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.conversation import Talk

_NEXT: Mapping[Pace, Pace] = MappingProxyType({"loop": "spot", "spot": "run", "run": "loop"})

PACES: Mapping[str, Pace] = MappingProxyType({pace: pace for pace in _NEXT})
"""The paces, by their names."""

_ONE: Mapping[Pace, str] = MappingProxyType({"loop": "one stitch", "spot": "one row", "run": "one repeat"})
"""What one press counts, in words."""


def _offered(state: State, _: int | None) -> Offer | None:
    work = state.work
    if work is None or not any(stage.unit == "spot" for stage in work.stages):
        return None
    pace = _NEXT[state.pace]
    return Offer("pace", "change pace", f"one press = {_ONE[state.pace]}; change to {_ONE[pace]}", ChoosePace(pace))


def choose(talk: Talk, pace: Pace | None = None) -> None:
    """Let a press stand for ``pace``, or for the next one where none is named."""
    offer = _offered(talk.state, None)
    if offer is None or offer.command is None:
        talk.refuse("set the pace while picking up an edge")
    elif talk.do(offer.command if pace is None else ChoosePace(pace), "pace"):
        talk.say(f"one press = {_ONE[talk.state.pace]}")


ACT = Action("pace", "p", "what one press counts: a stitch, a row, a repeat", _offered, choose, "this step")
