"""The help of this mode: what may be done now, and the whole page."""

from collections.abc import Iterable

from finishing_tui.plain.words import ASKS, ORDERS
from finishing_tui.talk.action import Offer
from finishing_tui.talk.acts import BY_ID
from finishing_tui.talk.offers import grouped

PAGE = (
    "how this mode works: type one thing a line. The answer ends with what comes next, or with a question.",
    "to count one, type d, done or space.",
    "an empty line changes nothing: it says again where you are and what comes next.",
    'full hands: type "hands". From then on an empty line is the next thing done, until you type it again. '
    "An empty line that comes too soon to have heard the last answer is not counted, so a held key or pasted text does "
    "no harm.",
    "a number is a count, or a measurement where one is asked for. At a question it is your choice or your answer.",
    "where a sentence names a key, type its name: space, enter, backspace, x.",
    "to confirm, type the same again at once.",
    "an unknown word does nothing, and neither do two things on one line.",
    "saved: an answer waits until the disk has what you did. If it cannot, the answer says what is not saved.",
    "the end of the input, a hang-up or an interrupt puts the garment down. What cannot be saved even then goes into a "
    "rescue file where there is room for one, and the next sitting asks whether to take it in.",
)
"""How the mode works, a line each."""


def offered(offers: Iterable[Offer]) -> list[str]:
    """Return what may be done now under its headings, each with all that may be typed for it."""
    lines = []
    for heading, some in grouped(offers):
        lines.append(f"{heading}:")
        lines += [f"{' or '.join(_typed(offer))}: {offer.what}." for offer in some]
    return lines


def _typed(offer: Offer) -> Iterable[str]:
    act = BY_ID[offer.action]
    return dict.fromkeys(word for word in (act.letter, offer.label, act.shown) if word)


def page(offers: Iterable[Offer]) -> list[str]:
    """Return the whole help."""
    return [
        *offered(offers),
        *PAGE,
        "you can ask for:",
        *(f"{word}: {what}." for word, what in ASKS.items()),
        "you can also type:",
        *(f"{word}: {what}." for word, what in ORDERS.items()),
    ]
