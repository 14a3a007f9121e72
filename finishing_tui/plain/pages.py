"""Pages, in lines: they are said and left at once; what stood behind the word says how much of them."""

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

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
"""What is said of each."""
