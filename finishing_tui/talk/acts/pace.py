"""A press stands for a loop, a spot, or a run."""

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


def _offered(state: State, _: int | None) -> Offer | None:
    work = state.standing.work if state.standing else None
    if work is None or not any(stage.unit == "spot" for stage in work.stages):
        return None
    pace = _NEXT[state.pace]
    what = f"a press stands for a {state.pace}; change that to a {pace}"
    return Offer("pace", f"pace: {state.pace}", what, ChoosePace(pace))


def choose(talk: Talk, pace: Pace | None = None) -> None:
    """Let a press stand for ``pace``, or for the next one where none is named."""
    offer = _offered(talk.state, None)
    if offer is None or offer.command is None:
        talk.refuse("a pace is chosen where loops are picked up along an edge")
    elif talk.do(offer.command if pace is None else ChoosePace(pace), "pace"):
        talk.say(f"a press now stands for one {talk.state.pace}")


ACT = Action("pace", "p", "a press stands for a loop, a spot, or a run", _offered, choose)
