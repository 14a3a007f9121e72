"""What may be done next: the one place that footer, help, palette, prompt and speech read."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from finishing_tui.garment.state import State
from finishing_tui.glance.counting import asks_for_value, countables
from finishing_tui.talk.action import GROUPS, Group, Offer, possible
from finishing_tui.talk.acts import ACTS, BY_ID
from finishing_tui.talk.conversation import Talk


def offers(state: State, looking_at: int | None = None) -> tuple[Offer, ...]:
    """Return what may be done now; ``looking_at``: another step that is looked at, counted from 0."""
    found = []
    for act in ACTS:
        offer = act.offered(state, looking_at)
        if offer is not None and (one := possible(state, offer)) is not None:
            found.append(one)
    return tuple(found)


def open_to(talk: Talk) -> tuple[Offer, ...]:
    """Return what may be done as the conversation stands: with digits typed, or where nothing can be changed."""
    found = offers(talk.state, talk.looking)
    if talk.read_only:
        return tuple(_leaves(one) for one in found if BY_ID[one.action].changes_nothing)
    return tuple(_typed(talk, found)) if talk.typed else found


def grouped(given: Iterable[Offer]) -> list[tuple[Group, list[Offer]]]:
    """Return offers under the headings that have any, each in the order of the acts."""
    found = tuple(given)
    groups = [(group, [one for one in found if BY_ID[one.action].group == group]) for group in GROUPS]
    return [(group, some) for group, some in groups if some]


def _leaves(offer: Offer) -> Offer:
    """Return how an offer is told where the garment is only looked at: there is nothing to put down."""
    return replace(offer, label="go back", what="go back") if offer.action == "put_down" else offer


def _typed(talk: Talk, found: tuple[Offer, ...]) -> Iterator[Offer]:
    """Yield what may be done with digits typed: what takes them first, and nothing that they are in the way of."""
    means = "measurement" if asks_for_value(talk.state) else "count" if countables(talk.state) else ""
    for act in ACTS:
        if act.id == "finish" and means:
            yield Offer("finish", f"it's {talk.typed}", f"{talk.typed} is the {means}")
        elif act.id == "take_back":
            yield Offer("take_back", "erase", "erase the last digit")
        elif act.digits and act.id != "finish":
            yield from (one for one in found if one.action == act.id)
