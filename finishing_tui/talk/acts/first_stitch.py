"""Straight to the first stitch: what is only ticked off before it is left open."""

from finishing_tui.garment.commands import TakeUp
from finishing_tui.garment.left_open import first_stitch
from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.conversation import Talk


def _offered(state: State, _: int | None) -> Offer | None:
    first = first_stitch(state)
    if first is None:
        return None
    title = state.plan.step(first).title.removesuffix(".")
    return Offer("first_stitch", "first stitch", f"go to step {first + 1}, {title}", TakeUp(first))


def _does(talk: Talk) -> None:
    first = first_stitch(talk.state)
    if first is None:
        talk.refuse("there is no first stitch to go to from here")
    else:
        talk.do(TakeUp(first), "first_stitch")


ACT = Action(
    "first_stitch",
    "g",
    "go to the first stitch; leave open what you tick off before it",
    _offered,
    _does,
    "this garment",
)
