"""How what is asked is drawn: in a box, or by a screen for its shape. None of them decides anything."""

from collections.abc import Callable
from typing import Any

from textual.screen import Screen

from finishing_tui.glance.all_words import all_lines
from finishing_tui.glance.values import Glance
from finishing_tui.screens.asked_large import LargeAsk
from finishing_tui.screens.boxes import boxed
from finishing_tui.screens.help import HelpScreen
from finishing_tui.screens.keys_shown import now
from finishing_tui.screens.ledger import LedgerScreen
from finishing_tui.screens.numbers_at_hand import numbers_of
from finishing_tui.screens.palettes import put_palette
from finishing_tui.screens.program import program
from finishing_tui.screens.technique import TechniqueScreen
from finishing_tui.screens.what_if import WhatIfScreen
from finishing_tui.talk.asks import Ask, FindAction, ReadHelp, ReadLedger, ReadTechniques, SetNumber, WeighPlans
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import Keys
from finishing_tui.widgets.faces import VIEWS


def put(over: Screen[Any], talk: Talk, ask: Ask, seen: Callable[[], Glance], then: Callable[[], None]) -> None:
    """Draw ``ask``, what is asked in ``talk``, over a screen; call ``then`` once it was answered or left.

    ``seen``: what there is to see at the needles.
    """

    def left(_: None) -> None:
        if type(talk.asked) is type(ask):  # a page that was read, or left by a way of its own
            talk.leave()
        then()

    def found(action: str | None) -> None:
        talk.leave()
        if action is not None:
            ask_for(talk, action)
        then()

    if isinstance(ask, FindAction):
        put_palette(over, talk, ask, found)
    elif not boxed(over, talk, ask, then):
        over.app.push_screen(_screen(talk, ask, seen, program(over).keys), left)


def _screen(talk: Talk, ask: Ask, seen: Callable[[], Glance], keys: Keys) -> Screen[None]:
    match ask:
        case SetNumber():
            return numbers_of(talk, ask)
        case WeighPlans():
            return WhatIfScreen(talk, ask)
        case ReadHelp():
            here = seen()
            legend = VIEWS[type(here.face)].LEGEND
            return HelpScreen(here.heading, all_lines(here), now(talk, keys), legend=legend, picture=here.lying)
        case ReadTechniques():
            return TechniqueScreen(ask.helping, ask.others, left_handed=ask.left_handed)
        case ReadLedger():
            return LedgerScreen(ask.hand)
        case _:
            return LargeAsk(talk, seen)
