"""Pages, in lines: they are said and left at once; what stood behind the word says how much of them."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from finishing_tui.plain import help as helping
from finishing_tui.plain.ledger import ledger
from finishing_tui.plain.techniques import technique
from finishing_tui.talk.asks import Ask, ReadHelp, ReadLedger, ReadTechniques
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.offers import offers

PAGES: Mapping[type[Ask], Callable[[Talk, Any, str], list[str]]] = MappingProxyType(
    {
        ReadHelp: lambda talk, _, __: helping.page(offers(talk.state, talk.looking)),
        ReadTechniques: lambda _, ask, rest: technique(ask, rest),
        ReadLedger: lambda _, ask, rest: ledger(ask.hand, rest),
    }
)
"""What is said of each."""
