"""What each key does to a garment in hand, one small function an action.

An action that is not in ``DOES`` decides nothing: it opens what it is called after (``openings`` has it).
"""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import ChoosePace, Finish, LeaveOut, Other, Press, TakeUp
from finishing_tui.glance.actions import ActionId
from finishing_tui.glance.what_if import asked_here
from finishing_tui.screens.at_hand import AtHand, Opening
from finishing_tui.screens.counted import start_recount, take_typed

LOOKS: frozenset[ActionId] = frozenset({"look_back", "look_on", "technique", "ledger", "help", "put_down"})
"""The actions that change nothing: they may be asked for where a garment can only be looked at."""


TAKE_DIGITS: frozenset[ActionId] = frozenset({"finish", "recount", "take_back", "what_if"})
"""The actions that do something with digits that were typed."""


def ask(at_hand: AtHand, action: ActionId) -> Opening | None:
    """Do what the key of ``action`` asks for; return what must be opened for it, if anything."""
    at_hand.quiet()
    again, at_hand.again = at_hand.again, None
    if again is not None and again[0] == action and again[1] is at_hand.state and not at_hand.typed:
        if again[2] is None:
            at_hand.take_back()
        else:
            at_hand.do(again[2], action)
        return None
    if at_hand.look and action not in LOOKS:
        at_hand.refuse(at_hand.look)
        return None
    if at_hand.typed and action not in (LOOKS | TAKE_DIGITS) and action in DOES and not _forgets(at_hand, action):
        return None
    does = DOES.get(action)
    return action if does is None else does(at_hand)


def _forgets(at_hand: AtHand, action: ActionId) -> bool:
    """Return whether typed digits are to be forgotten for ``action``: only when it is asked for once more.

    They are a count that was not taken yet, or were typed by accident; which of the two, nobody can guess.
    """
    if at_hand.warned == (action, at_hand.typed):
        at_hand.typed, at_hand.warned = "", None
        return True
    at_hand.warned = (action, at_hand.typed)
    key, take = at_hand.keys.shown(f"needles.{action}"), at_hand.keys.shown("needles.finish")
    at_hand.refuse(f"{at_hand.typed} is typed: {take} takes it; {key} again forgets it, and does what {key} does")
    return False


def _press(at_hand: AtHand) -> None:
    at_hand.looking = None
    at_hand.do(Press(), "press")


def _other(at_hand: AtHand) -> Opening | None:
    at_hand.looking = None
    offer = at_hand.offer("other")
    sides = offer.sides if offer else ()
    if len(sides) > 1:
        return "other: which needle"
    at_hand.do(Other(sides[0][0] if sides else ""), "other")
    return None


def _take_back(at_hand: AtHand) -> None:
    if at_hand.typed:
        at_hand.typed = at_hand.typed[:-1]
        return
    at_hand.looking = None
    if at_hand.state.top and at_hand.state.top_label:
        at_hand.again = ("take_back", at_hand.state, None)
        at_hand.say(f"{at_hand.keys.begins('needles.take_back')} again takes back: {at_hand.state.top_label}")
        return
    at_hand.take_back()


def _finish(at_hand: AtHand) -> Opening | None:
    if at_hand.typed:
        return take_typed(at_hand)
    offer = at_hand.offer("finish")
    if offer is not None and offer.command is not None:
        command = offer.command
    else:  # a step that is looked at is refused as such, and the one under the needles is left alone
        command = Finish() if at_hand.looking is None else TakeUp(at_hand.looking)
    if at_hand.do(command, "finish"):
        at_hand.looking = None
    return None


def _rip_back(at_hand: AtHand) -> Opening | None:
    if not at_hand.state.order:
        at_hand.refuse("nothing was worked yet that could be taken out")
        return None
    return "rip_back"


def _what_if(at_hand: AtHand) -> Opening | None:
    at_hand.looking = None
    try:
        asked_here(at_hand.state)
    except FinishingError as error:
        at_hand.refuse(str(error))
        return None
    return "what_if"


def _put_back(at_hand: AtHand) -> None:
    at_hand.looking = None
    at_hand.done(at_hand.hand.put_back(), "put_back")


def _pace(at_hand: AtHand) -> None:
    offer = at_hand.offer("pace")
    if offer is None or not isinstance(offer.command, ChoosePace):
        at_hand.refuse("a pace is chosen where loops are picked up along an edge")
    elif at_hand.do(offer.command, "pace"):
        at_hand.say(f"a press now stands for one {at_hand.state.pace}")


def _mirror(at_hand: AtHand) -> None:
    offer = at_hand.offer("mirror")
    if offer is None or offer.command is None:
        at_hand.refuse("there is no second side about to be begun that could go another way than planned")
    elif at_hand.do(offer.command, "mirror"):
        at_hand.say(f"now {offer.label}")


def _leave_out(at_hand: AtHand) -> None:
    step = at_hand.shown_step
    if step is None:
        at_hand.refuse("every step is done; nothing is left to leave out")
    elif at_hand.do(LeaveOut(step), "leave_out"):
        at_hand.looking = None


def _technique(at_hand: AtHand) -> Opening | None:
    if at_hand.shown_step is None:
        look = at_hand.keys.shown("needles.look_back")
        at_hand.refuse(f"every step is done; look at one ({look}) for the techniques that help at it")
        return None
    return "technique"


def _turn(at_hand: AtHand, by: int) -> None:
    steps, here = len(at_hand.state.steps), at_hand.shown_step
    at = (steps if here is None else here) + by
    if not 0 <= at < steps:
        at_hand.refuse("that is the last step" if by > 0 else "that is the first step")
        return
    at_hand.looking = None if at == at_hand.state.current else at


DOES: Mapping[ActionId, Callable[[AtHand], Opening | None]] = MappingProxyType(
    {
        "press": _press,
        "other": _other,
        "take_back": _take_back,
        "finish": _finish,
        "recount": start_recount,
        "rip_back": _rip_back,
        "what_if": _what_if,
        "put_back": _put_back,
        "pace": _pace,
        "mirror": _mirror,
        "leave_out": _leave_out,
        "technique": _technique,
        "look_back": lambda at_hand: _turn(at_hand, -1),
        "look_on": lambda at_hand: _turn(at_hand, 1),
    }
)
"""What an action does before anything is opened, if anything is."""
