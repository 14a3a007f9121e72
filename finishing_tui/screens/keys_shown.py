"""The keys that are alive, with what they do just now: for the foot of the screen, and all of them for the help."""

from finishing_tui.glance.actions import ACTIONS
from finishing_tui.glance.rooms import KEYED
from finishing_tui.screens.at_hand import AtHand
from finishing_tui.widgets.key_line import Key


def foot(at_hand: AtHand) -> list[Key]:
    """Return the keys for the foot of the screen, what is wanted most first, help last."""

    def key(*actions: str) -> str:
        return at_hand.keys.shown(*(f"needles.{action}" for action in actions))

    if at_hand.look:
        steps = (key("look_back", "look_on"), "look at other steps")
        return [steps, (key("ledger"), "ledger"), (key("put_down"), "back"), (key("help"), "help")]
    if at_hand.typed:
        typed = ((key("finish"), "take it"), (key("take_back"), "last digit"), (key("clear"), "clear"))
        return [*typed, (key("help"), "help")]
    found = {offer.action: offer for offer in at_hand.offers()}
    shown = at_hand.keys.shown
    return [(shown(f"needles.{action}"), found[action].label) for action in ACTIONS if action in found]


def all_keys(at_hand: AtHand) -> list[Key]:
    """Return every key there is with its help, and what it would do now."""
    offered = {offer.action: offer.what for offer in at_hand.offers()}
    every = at_hand.keys.every
    keys = [
        (every(f"needles.{one.id}"), one.help + (f" (now: {offered[one.id]})" if one.id in offered else ""))
        for one in ACTIONS.values()
    ]
    take = at_hand.keys.shown("needles.finish")
    return [
        *keys,
        (f"digits, {take}", "the count is that; where a measure is asked for, it measures that"),
        (every("needles.clear"), KEYED["needles.clear"].help),
    ]
