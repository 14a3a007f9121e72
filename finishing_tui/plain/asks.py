"""Every shape of question in lines: what is said for it, and what a line means as its answer.

An answer that fits none of what was asked does nothing, and the question stays.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

from finishing_tui.craft.words import sentence
from finishing_tui.glance.counting import MOST_DIGITS
from finishing_tui.plain import choices, own_numbers, plans
from finishing_tui.plain.digits import whole
from finishing_tui.talk.asks import (
    Ask,
    Choose,
    Explain,
    HowMany,
    Pick,
    SetNumber,
    Weigh,
    WeighPlans,
    WriteLine,
)
from finishing_tui.talk.conversation import Talk

BACK = ("b", "backspace")
"""What goes one question back, where there is one to go back to."""


@dataclass(frozen=True, slots=True)
class InLines:
    """What a shape of question has besides its question, and what a line leads to (``hears``).

    ``answers``: what may be typed, in lines, how last; ``told``: what is said before that, once. ``hears`` returns what
    is to be said where the line could not be taken. ``free``: any line is an answer, an empty one too.
    """

    answers: Callable[[Any], Sequence[str]]
    hears: Callable[[Talk, Any, str], list[str]]
    told: Callable[[Any], Sequence[str]] = lambda ask: [sentence(line) for line in ask.told]
    free: bool = False


def _number(ask: HowMany) -> list[str]:
    number = "the number" if ask.most is None else f"a number from 0 to {ask.most}"
    same = "" if ask.same is None else ", or as planned"
    return [*([sentence(ask.aside)] if ask.aside else []), f"Type {number}{same}, or escape."]


def _hears_number(talk: Talk, ask: HowMany, line: str) -> list[str]:
    taken = line.casefold() == talk.keys.shown("lists.take")
    number = ask.same if taken or line.casefold() == "as planned" else whole(line)
    if number is None:
        wanted = f"Type a whole number of up to {MOST_DIGITS} digits."
        return [f"{ask.missing if taken and ask.missing else wanted} Nothing was done."]
    talk.answer(number)
    return []


def _line(ask: WriteLine) -> list[str]:
    how = "Type one line, or an empty one" if ask.empty else "Type one line"
    return [sentence(ask.hint), f"{how}; escape: {ask.leave}."]


def _hears_line(talk: Talk, ask: WriteLine, line: str) -> list[str]:
    if not line and not ask.empty:
        talk.leave()
        return [sentence(ask.leave)]
    talk.answer(line)
    return []


_SOME = InLines(choices.some, choices.hears_some, choices.told)

SHAPES: Mapping[type[Ask], InLines] = MappingProxyType(
    {
        Choose: InLines(choices.answers, choices.hears, choices.told),
        Explain: InLines(choices.answers, choices.hears, choices.told),
        Pick: _SOME,
        choices.Further: _SOME,
        HowMany: InLines(_number, _hears_number),
        WriteLine: InLines(_line, _hears_line, free=True),
        Weigh: InLines(choices.weighed, choices.hears_weighed, choices.weighed_told),
        WeighPlans: InLines(plans.answers, plans.hears),
        SetNumber: InLines(own_numbers.answers, own_numbers.hears, own_numbers.told),
    }
)
"""How each is said and heard."""


def hears(talk: Talk, line: str) -> list[str]:
    """Take ``line`` as the answer to what is asked; return what is to be said where it could not be taken."""
    return SHAPES[type(talk.asked)].hears(talk, talk.asked, line) if talk.asked is not None else []
