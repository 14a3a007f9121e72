"""What is asked in a box over a screen: one of a few, or a line of text."""

from collections.abc import Callable
from typing import Any

from textual.screen import Screen

from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.one_line import OneLine
from finishing_tui.talk.asks import Ask, Choose, Explain, Option, Pick, WriteLine
from finishing_tui.talk.conversation import Talk
from finishing_tui.widgets.choices import Choice


def boxed(over: Screen[Any], talk: Talk, ask: Ask, then: Callable[[], None]) -> bool:
    """Draw ``ask``, what is asked in ``talk``, in a box over a screen, and call ``then`` once it was answered or left.

    Return False, with nothing drawn, for what needs a screen of its own.
    """
    match ask:
        case WriteLine():
            line = OneLine(ask.question, ask.hint, enter=ask.keep, escape=ask.leave)
            over.app.push_screen(line, lambda text: _answered(talk, text, then))
        case Choose() if not isinstance(ask, Pick | Explain):
            box = ChoiceBox(ask.question, [choice(one) for one in ask.options], ask.told, unasked=ask.unasked)
            over.app.push_screen(box, lambda at: _answered(talk, at, then))
        case _:
            return False
    return True


def choice(option: Option) -> Choice:
    """Return how an answer is drawn."""
    return Choice(option.text, (option.aside,) if option.aside else ())


def _answered(talk: Talk, answer: object, then: Callable[[], None]) -> None:
    """Hand on what a box was left with; None: without an answer."""
    if answer is None:
        talk.leave()
    else:
        talk.answer(answer)
    then()
