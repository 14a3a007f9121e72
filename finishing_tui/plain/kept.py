"""What is kept of a garment, in lines: its notes, and whether everything is on the disk."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from finishing_tui.garment.hand import InHand


def _notes(hand: InHand) -> list[str]:
    numbered = ((hand.state.plan.number_of(one.step), one.text) for one in hand.state.notes)
    notes = [f"note{'' if number is None else f' at step {number}'}: {text}" for number, text in numbered]
    return notes or ["no note was written."]


def _saved(hand: InHand) -> list[str]:
    return [f"not saved yet: {hand.unsaved}. {hand.trouble}" if hand.unsaved else "everything is on the disk."]


KEPT: Mapping[str, Callable[[InHand], list[str]]] = MappingProxyType({"notes": _notes, "saved": _saved})
"""What is said for each word that asks about it."""
