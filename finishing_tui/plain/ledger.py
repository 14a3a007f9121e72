"""The ledger, in lines: where every stitch, tail, marker and hole is, and what was entered last."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.ledger import Books, books
from finishing_tui.glance.postings import Posted, posted
from finishing_tui.plain.digits import whole

FEW = 5
"""So many acts are said where no number is typed."""

MOST = 300
"""So many of the last events are read."""


def ledger(hand: InHand, rest: str) -> list[str]:
    """Return what the ledger holds and the last acts, newest first; a number behind the word says how many of them."""
    many = whole(rest) if rest else FEW
    if many is None:
        return ['How many entries? Type it like this: "ledger 20". Nothing was done.']
    names = {name: place.text for name, place in hand.state.plan.recipe.place.items()}
    try:
        acts = [_said(one) for one in posted(hand.lately(MOST), names, hand.state.plan)[:many]]
    except FinishingError as error:
        acts = [str(error)]
    more = [] if rest else ['for more, type for example "ledger 20".']
    return [*_books(books(hand.state)), "what was entered, newest first:", *acts, *more]


def _books(held: Books) -> list[str]:
    places = [f"on the {one.name}: {one.stitches}{f', {one.words}' if one.words else ''}." for one in held.held]
    tails = [f"tail {one.name}: {one.words}." for one in held.tails]
    return [
        *places,
        f"in all: {held.balance}.",
        *(tails or ["tails: none."]),
        *(f"{sort}: {', '.join(found) or 'none'}." for sort, found in held.named),
        *([f"it lies: {held.posture.replace(' · ', ', ')}."] if held.posture else []),
    ]


def _said(one: Posted) -> str:
    step = f", step {one.step}" if one.step else ""
    entered = f": {', '.join(one.entered)}" if one.entered else ""
    return f"{one.day} {one.time}{step}, {one.text}{entered}."
