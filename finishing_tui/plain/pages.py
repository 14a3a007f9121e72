"""What is only read, in lines: pages, which are said and left at once, and what is kept of a garment."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from finishing_tui.garment.hand import InHand
from finishing_tui.plain import help as helping
from finishing_tui.plain.ledger import ledger
from finishing_tui.plain.techniques import technique
from finishing_tui.talk.asks import Ask, FindAction, ReadHelp, ReadLedger, ReadTechniques
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.offers import open_to

PAGES: Mapping[type[Ask], Callable[[Talk, Any, str], list[str]]] = MappingProxyType(
    {
        ReadHelp: lambda talk, _, __: helping.page(open_to(talk)),
        FindAction: lambda talk, _, __: helping.offered(open_to(talk)),
        ReadTechniques: lambda _, ask, rest: technique(ask, rest),
        ReadLedger: lambda _, ask, rest: ledger(ask.hand, rest),
    }
)
"""What is said of each; what stood behind the word says how much."""


def _notes(hand: InHand) -> list[str]:
    numbered = ((hand.state.plan.number_of(one.step), one.text) for one in hand.state.notes)
    notes = [f"note{'' if number is None else f' at step {number}'}: {text}" for number, text in numbered]
    return notes or ["no note was written."]


def _saved(hand: InHand) -> list[str]:
    return [f"not saved yet: {hand.unsaved}. {hand.trouble}" if hand.unsaved else "everything is on the disk."]


KEPT: Mapping[str, Callable[[InHand], list[str]]] = MappingProxyType({"notes": _notes, "saved": _saved})
"""What is said for each word that asks about it."""
