"""One of a few, or of many, in lines: the choices by number, and the answer is a number."""

from collections.abc import Sequence
from dataclasses import dataclass

from finishing_tui.craft.words import listing, sentence
from finishing_tui.glance.answers import Answers
from finishing_tui.plain.digits import whole
from finishing_tui.talk.asks import Choose, Pick, Weigh
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
    return _some_of(ask.told) if ask.unasked else [sentence(line) for line in ask.told]


def _some_of(told: Sequence[str]) -> list[str]:
    more = len(told) - MOST_LINES
    return [*map(sentence, told[:MOST_LINES]), *([f"And {more} more."] if more > 0 else [])]


def weighed_told(ask: Weigh) -> list[str]:
    """Return what ways to go on are about."""
    return [sentence(ask.title), *_some_of(ask.told)]


def answers(ask: Choose) -> list[str]:
    """Return the choices by number."""
    options = [f"{sentence(one.text)} {sentence(one.aside) if one.aside else ''}".strip() for one in ask.options]
    return [*_numbered(options), _which(len(options))]


def weighed(ask: Weigh) -> list[str]:
    """Return the ways to go on by number, each with all that the table on the screen says of it."""
    said = [" ".join(answered(ask.answers, at)) for at in range(len(ask.answers.rows))]
    return [*_numbered(said), _which(len(said))]


def answered(answers: Answers, at: int) -> list[str]:
    """Return one way to go on in sentences: what to do, the total, how it lies, the work, and where it changes."""
    row, changed = answers.rows[at], answers.changed(at)
    total = f"total {row.comes_to}" if row.comes_to else ""
    facts = "; ".join(part for part in (total, answers.lies(row), f"work: {row.work}") if part)
    where = f"Changed at {listing([str(spot) for spot in changed[:MOST_LINES]])}" if changed else ""
    more = f" and {len(changed) - MOST_LINES} more" if len(changed) > MOST_LINES else ""
    return [sentence(part) for part in (row.text, facts, row.more, f"{where}{more}") if part]


def some(ask: Pick) -> list[str]:
    """Return some of a list by number, the first ones or those that follow."""
    first, more = _first(ask), len(ask.options) > _first(ask) + AT_A_TIME
    shown = [sentence(one.text) for one in ask.options[first : first + AT_A_TIME]]
    return [*_numbered(shown, first), f"Type a number, {'more, ' if more else ''}or escape."]


def hears(talk: Talk, ask: Choose, line: str) -> list[str]:
    """Take the number of a choice."""
    return _hears(talk, line, len(ask.options))


def hears_weighed(talk: Talk, ask: Weigh, line: str) -> list[str]:
    """Take the number of a way to go on."""
    return _hears(talk, line, len(ask.answers.rows))


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
        return ["That isn't one of the choices. Nothing was done."]
    talk.answer(number - 1)
    return []
