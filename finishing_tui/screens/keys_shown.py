"""The keys that are alive, with what they do just now: for the foot of the screen, and all of them for the help."""

from finishing_tui.glance.actions import ACTIONS
from finishing_tui.screens.at_hand import AtHand
from finishing_tui.widgets.key_line import Key


def foot(at_hand: AtHand) -> list[Key]:
    """Return the keys for the foot of the screen, what is wanted most first, help last."""
    if at_hand.look:
        return [("left right", "look at other steps"), ("l", "ledger"), ("q", "back"), ("?", "help")]
    if at_hand.typed:
        return [("enter", "take it"), ("backspace", "last digit"), ("escape", "clear"), ("?", "help")]
    found = {offer.action: offer for offer in at_hand.offers()}
    return [(action.shown, found[action.id].label) for action in ACTIONS.values() if action.id in found]


def all_keys(at_hand: AtHand) -> list[Key]:
    """Return every key there is with its help, and what it would do now."""
    offered = {offer.action: offer.what for offer in at_hand.offers()}
    keys = [
        (action.shown, action.help + (f" (now: {offered[action.id]})" if action.id in offered else ""))
        for action in ACTIONS.values()
    ]
    return [
        *keys,
        ("digits, enter", "the count is that; where a measure is asked for, it measures that"),
        ("escape", "forget what was typed or asked"),
    ]
