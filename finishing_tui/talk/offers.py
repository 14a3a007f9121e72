"""What may be done next: the one place that footer, help, prompt and speech read."""

from finishing_tui.garment.state import State
from finishing_tui.talk.action import Offer, possible
from finishing_tui.talk.acts import ACTS


def offers(state: State, looking_at: int | None = None) -> tuple[Offer, ...]:
    """Return what may be done now; ``looking_at``: another step that is looked at, counted from 0."""
    found = []
    for act in ACTS:
        offer = act.offered(state, looking_at)
        if offer is not None and (one := possible(state, offer)) is not None:
            found.append(one)
    return tuple(found)
