"""The ledger: where every stitch, tail, marker and hole is, and what was entered last."""

from collections.abc import Iterator
from itertools import groupby

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.ledger import Books, books
from finishing_tui.glance.postings import Posted, posted
from finishing_tui.screens.page import PageScreen
from finishing_tui.widgets.pages import Entered, PagePart, Pages

MOST = 300
"""So many of the last events are read: a long journal must not hold the keys up."""


class LedgerScreen(PageScreen):
    """Everything the ledger holds, and below it the last acts, newest first."""

    def __init__(self, hand: InHand) -> None:
        super().__init__()
        self._hand = hand

    def on_mount(self) -> None:
        """Show the ledger."""
        self.show_books()

    def show_books(self) -> None:
        """Show the ledger as it stands now: where the garment is only looked at, another window goes on meanwhile."""
        held, names = books(self._hand.state), place_names(self._hand)
        try:
            acts, trouble = posted(self._hand.lately(MOST), names, self._hand.state.plan), ""
        except FinishingError as error:
            acts, trouble = (), str(error)
        self.query_one(Pages).show("The ledger", held.title, [*_parts(held), *_lately(acts, trouble)])


def place_names(hand: InHand) -> dict[str, str]:
    """Return what the places of a garment are called, by their keys."""
    return {name: place.text for name, place in hand.state.plan.recipe.place.items()}


def _parts(held: Books) -> Iterator[PagePart]:
    places = [
        Entered(str(one.stitches), one.name, one.words, alarm=one.planned not in {None, one.stitches})
        for one in held.held
    ]
    yield PagePart("on needles and holders", tuple(places))
    accounts = [Entered(str(one.stitches), one.name, one.words) for one in held.accounts]
    yield PagePart("in and out", (*accounts, Entered("", held.balance, style="$quiet")))
    if held.tails:
        yield PagePart("tails", tuple(Entered("", one.name, one.words) for one in held.tails))
    yield from (PagePart(heading, tuple(Entered("", one) for one in names)) for heading, names in held.named if names)
    if held.posture:
        yield PagePart("how it lies", (Entered("", held.posture),))


def _lately(acts: tuple[Posted, ...], trouble: str) -> Iterator[PagePart]:
    if trouble:
        yield PagePart("what was entered", (Entered("", trouble),))
    for at, (day, found) in enumerate(groupby(acts, key=lambda one: one.day)):
        heading = f"what was entered, newest first · {day}" if not at else day
        yield PagePart(heading, tuple(Entered(one.time, _said(one), style="$quiet") for one in found))


def _said(one: Posted) -> str:
    step = f"step {one.step}: " if one.step else ""
    entered = f" · {', '.join(one.entered)}" if one.entered else ""
    return f"{step}{one.text}{entered}"
