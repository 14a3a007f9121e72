"""One of a few, or of many, in lines: the choices by number, and the answer is a number."""

from collections.abc import Sequence
from dataclasses import dataclass

from finishing_tui.craft.words import sentence
from finishing_tui.plain.digits import whole
from finishing_tui.talk.asks import Choose, Explain, Pick, WeighWays
from finishing_tui.talk.conversation import Talk

AT_A_TIME = 9
"""So many of a long list are said at a time."""

MOST_LINES = 12
"""So many lines are said before a question that comes by itself; of more, only how many there are."""


@dataclass(frozen=True, eq=False, kw_only=True)
class Further(Pick):
    """A list of which the ``first`` ones were said already."""

    first: int


def told(ask: Choose) -> list[str]:
    """Return what a choice is about."""
    lines = ask.told[:MOST_LINES] if ask.unasked else ask.told
    more = len(ask.told) - len(lines)
    return [*map(sentence, lines), *([f"And {more} more."] if more else [])]


def difference_told(ask: Explain) -> list[str]:
    """Return what was counted, and what the presses say."""
    return [*told(ask), sentence(f"{ask.counted} {ask.aside}")]


def ways_told(ask: WeighWays) -> list[str]:
    """Return what a count that differs leads to, and how it was planned."""
    planned = f"the plan so far: {ask.view.rhythm}.", f"in all: {ask.view.total} on the needle."
    return [*map(sentence, ask.told), *planned]


def answers(ask: Choose) -> list[str]:
    """Return the choices by number."""
    options = [f"{sentence(one.text)} {sentence(one.aside) if one.aside else ''}".strip() for one in ask.options]
    return [*_numbered(options), _which(len(options))]


def ways(ask: WeighWays) -> list[str]:
    """Return the ways to go on by number, each with its rhythm."""
    said = [f"{sentence(way.label)} {sentence(way.text)} It goes: {sentence(way.rhythm)}" for way in ask.view.ways]
    return [*_numbered(said), _which(len(said))]


def some(ask: Pick) -> list[str]:
    """Return some of a list by number, the first ones or those that follow."""
    first, more = _first(ask), len(ask.options) > _first(ask) + AT_A_TIME
    shown = [sentence(one.text) for one in ask.options[first : first + AT_A_TIME]]
    return [*_numbered(shown, first), f"Type a number, {'more, ' if more else ''}or escape."]


def hears(talk: Talk, ask: Choose, line: str) -> list[str]:
    """Take the number of a choice."""
    return _hears(talk, line, len(ask.options))


def hears_way(talk: Talk, ask: WeighWays, line: str) -> list[str]:
    """Take the number of a way to go on."""
    return _hears(talk, line, len(ask.view.ways))


def hears_some(talk: Talk, ask: Pick, line: str) -> list[str]:
    """Take a number of those said, or go on to further ones."""
    further = _first(ask) + AT_A_TIME
    if line.casefold() == "more" and further < len(ask.options):
        told, options, then = ask.told, ask.options, ask.then
        rest = Further(question=ask.question, told=told, options=options, then=then, left=ask.left, first=further)
        talk.asks(rest)
        return []
    return _hears(talk, line, min(further, len(ask.options)))


def _first(ask: Pick) -> int:
    return ask.first if isinstance(ask, Further) else 0


def _numbered(texts: Sequence[str], first: int = 0) -> list[str]:
    return [f"{number}: {text}" for number, text in enumerate(texts, first + 1)]


def _which(many: int) -> str:
    return f"Type {f'1 to {many}' if many > 1 else '1'}, or escape."


def _hears(talk: Talk, line: str, many: int) -> list[str]:
    number = whole(line)
    if number is None or not 1 <= number <= many:
        return ["That is none of the choices. Nothing was done."]
    talk.answer(number - 1)
    return []
