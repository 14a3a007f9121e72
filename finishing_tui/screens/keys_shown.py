"""The keys that are alive, with what they do just now: for the foot of the screen, and all of them for the help."""

from finishing_tui.talk.acts import ACTS
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.keys import Keys
from finishing_tui.talk.offers import offers
from finishing_tui.talk.rooms import KEYED
from finishing_tui.widgets.key_line import ShownKey


def foot(talk: Talk) -> list[ShownKey]:
    """Return the keys for the foot of the screen, what is wanted most first, help last."""

    def key(*actions: str) -> str:
        return talk.keys.shown(*(f"needles.{action}" for action in actions))

    if talk.read_only:
        steps = (key("look_back", "look_on"), "look at other steps")
        return [steps, (key("ledger"), "ledger"), (key("put_down"), "back"), (key("help"), "help")]
    if talk.typed:
        typed = ((key("finish"), "take it"), (key("take_back"), "last digit"), (key("clear"), "clear"))
        return [*typed, (key("help"), "help")]
    shown = talk.keys.shown
    return [(shown(f"needles.{one.action}"), one.label) for one in offers(talk.state, talk.looking)]


def all_keys(talk: Talk, in_force: Keys) -> list[ShownKey]:
    """Return every key there is with its help, and what it would do now."""
    offered = {offer.action: offer.what for offer in offers(talk.state, talk.looking)}
    every = in_force.every
    keys = [
        (every(f"needles.{one.id}"), one.help + (f" (now: {offered[one.id]})" if one.id in offered else ""))
        for one in ACTS
    ]
    take = talk.keys.shown("needles.finish")
    return [
        *keys,
        (f"digits, {take}", "the count is that; where a measure is asked for, it measures that"),
        (every("needles.clear"), KEYED["needles.clear"].help),
    ]
