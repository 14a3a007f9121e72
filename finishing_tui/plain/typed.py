"""What a line at no question leads to: a number, or a word with what stands behind it.

Every function returns what is to be said of a line that could not be taken; what was done, the conversation says.
"""

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType

from finishing_tui.garment.commands import TakeUp
from finishing_tui.glance.counting import MOST_DIGITS, asks_for_value
from finishing_tui.plain.asks import SHAPES, hears
from finishing_tui.plain.digits import whole
from finishing_tui.talk.acts.pace import PACES, choose
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.turning import turn_to

_VALUE = re.compile(r"[0-9]+(\.[0-9]*)?|\.[0-9]+")


def number(talk: Talk, typed: str) -> list[str]:
    """Take a number: the measure where one is asked for, else a count."""
    if asks_for_value(talk.state):
        if not _VALUE.fullmatch(typed) or len(typed) > MOST_DIGITS:
            return [f"A measurement is a number like 42 or 42.5, up to {MOST_DIGITS} characters. Nothing was done."]
    elif whole(typed) is None:
        return [f"A count is a whole number of up to {MOST_DIGITS} digits. Nothing was done."]
    talk.looking = None
    talk.typed = typed
    ask_for(talk, "finish")
    return []


def word(talk: Talk, what: str, rest: str) -> list[str]:
    """Do what a word stands for; what stands behind it answers what the word asks."""
    return WORDS[what](talk, rest) if what in WORDS else _act(talk, what, rest)


def _act(talk: Talk, action: str, rest: str) -> list[str]:
    ask_for(talk, action)
    return hears(talk, rest) if rest and type(talk.asked) in SHAPES else []


def _recount(talk: Talk, rest: str) -> list[str]:
    if not rest:
        return _act(talk, "recount", "")
    if whole(rest) is None or asks_for_value(talk.state):
        return ['Type a count like this: "count 24". Nothing was done.']
    return number(talk, rest)


def _pace(talk: Talk, rest: str) -> list[str]:
    if not rest:
        return _act(talk, "pace", "")
    pace = PACES.get(rest.casefold())
    if pace is None:
        return ["The paces are loop, spot and run. Nothing was done."]
    talk.again = None
    choose(talk, pace)
    return []


def _step(talk: Talk, rest: str) -> list[str]:
    if not rest:
        talk.clear()
        return []
    step = _numbered(talk, rest)
    if step is None:
        return _which(talk)
    turn_to(talk, step)
    return []


def _take_up(talk: Talk, rest: str) -> list[str]:
    if not rest and talk.looking is not None:
        return _act(talk, "finish", "")
    step = _numbered(talk, rest)
    if step is None:
        return _which(talk)
    if step == talk.state.current:  # there the same action would finish it
        talk.do(TakeUp(step))
        return []
    return _at(talk, step, "finish")


def _leave_out(talk: Talk, rest: str) -> list[str]:
    if not rest:
        return _act(talk, "leave_out", "")
    step = _numbered(talk, rest)
    return _which(talk) if step is None else _at(talk, step, "leave_out")


def _at(talk: Talk, step: int, action: str) -> list[str]:
    """Do ``action`` at a step; it is looked at from then on only while the same may be asked for once more."""
    was = talk.looking
    if talk.shown_step != step:
        talk.again = None
    turn_to(talk, step)
    ask_for(talk, action)
    if talk.again is None:
        talk.looking = was
    return []


def _numbered(talk: Talk, rest: str) -> int | None:
    step = whole(rest)
    return step - 1 if step is not None and 1 <= step <= len(talk.state.steps) else None


def _which(talk: Talk) -> list[str]:
    return [f"The steps are 1 to {len(talk.state.steps)}. Nothing was done."]


WORDS: Mapping[str, Callable[[Talk, str], list[str]]] = MappingProxyType(
    {
        "step": _step,
        "escape": _step,
        "take up": _take_up,
        "leave_out": _leave_out,
        "count": _recount,
        "recount": _recount,
        "pace": _pace,
    }
)
"""The words that are more than their action with an answer behind it."""

TURNS = frozenset({"step", "escape", "look_back", "look_on"})
"""The words after which it is said what is looked at."""
