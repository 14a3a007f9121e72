"""What typed digits and the key of the recount lead to: a count, a measure, or the conversation of a recount."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import Count, Measure
from finishing_tui.glance.counting import asks_for_value
from finishing_tui.glance.measured import beside_wanted
from finishing_tui.glance.recounts import recount_view
from finishing_tui.screens.at_hand import AtHand, Opening

NOTHING = "there is nothing to count here"


def take_typed(at_hand: AtHand) -> Opening | None:
    """Take the typed digits for what they mean here: a measure, or the count of the one thing to count."""
    if asks_for_value(at_hand.state):
        value, at_hand.typed = at_hand.typed, ""
        off = beside_wanted(at_hand.state, value)
        if at_hand.do(Measure(value)):
            if off:
                at_hand.refuse(f"{value} written down: {off}; measure again, or note what is done about it")
            else:
                at_hand.say(f"{value} written down", aloud=True)
        return None
    found = at_hand.countables()
    if not found:
        at_hand.typed = ""
        at_hand.refuse(NOTHING)
        return None
    return "count: which needle" if len(found) > 1 else count(at_hand, found[0].place)


def count(at_hand: AtHand, place: str) -> Opening | None:
    """Take the typed digits as the count of ``place`` (a section of an edge, or what is under way, when empty)."""
    counted, at_hand.typed = int(at_hand.typed), ""
    found = at_hand.countables()
    if not place and found and found[0].section:
        return _recount(at_hand, counted)
    text = next((one.text for one in found if one.place == place), "")
    if at_hand.do(Count(counted, place)):
        at_hand.say(f"{counted} counted: {text}" if text else f"{counted} counted", aloud=True)
    return None


def start_recount(at_hand: AtHand) -> Opening | None:
    """Begin a recount, or say what is to be counted and typed."""
    if at_hand.typed:
        return take_typed(at_hand)
    at_hand.looking = None
    found = at_hand.countables()
    if not found:
        at_hand.refuse(NOTHING)
        return None
    if found[0].section:
        return "recount"
    take = at_hand.keys.shown("needles.finish")
    at_hand.say(f"count {' or '.join(one.text for one in found)}, type the number, then {take}", aloud=True)
    return None


def _recount(at_hand: AtHand, counted: int) -> Opening | None:
    try:
        view = recount_view(at_hand.state, counted)
    except FinishingError as error:
        at_hand.refuse(str(error))
        return None
    if not view.matches:
        at_hand.typed = str(counted)
        return "recount"
    if at_hand.do(Count(counted)):
        at_hand.say(f"{counted} counted, as planned; {view.total} on the needle in all", aloud=True)
    return None
