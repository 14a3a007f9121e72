"""The second of two sides goes as the first was worked, or as planned."""

from finishing_tui.garment.commands import ChooseMirror
from finishing_tui.garment.decide.mirror import choice
from finishing_tui.garment.state import State
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.conversation import Talk


def _offered(state: State, _: int | None) -> Offer | None:
    two_ways = choice(state)
    if two_ways is None:
        return None
    worked = two_ways[1].as_worked
    what = f"work {two_ways[1].title} {'as planned' if worked else 'like the first side'}"
    return Offer("mirror", "use the plan" if worked else "mirror it", what, ChooseMirror(not worked))


def _does(talk: Talk) -> None:
    offer = _offered(talk.state, None)
    if offer is None or offer.command is None:
        talk.refuse("there is no second side to change here")
    elif talk.do(offer.command, "mirror"):
        talk.say(offer.what)


ACT = Action("mirror", "m", "work the second side like the first, or as planned", _offered, _does, "this step")
