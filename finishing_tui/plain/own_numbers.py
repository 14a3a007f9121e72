"""The numbers of a garment, in lines: all of them are said, and one is changed by its name and a new value."""

from typing import TYPE_CHECKING

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.talk.asks import SetNumber
from finishing_tui.talk.conversation import Talk

if TYPE_CHECKING:
    from finishing_tui.glance.numbers import NumberLine

GIVEN_UP = "recipe"
"""What is typed for a number of one's own that is given up again."""


def told(ask: SetNumber) -> list[str]:
    """Return all numbers with what they are."""
    return [*map(sentence, ask.told), *map(_said, ask.lines)]


def answers(ask: SetNumber) -> list[str]:
    """Return how one of them is changed."""
    one = next((line for line in ask.lines if line.name == ask.at), ask.lines[0])
    value = one.least if one.value is None else one.value
    return [
        f'To change one, type for example "{one.name} {value}"; '
        f'"{one.name} {GIVEN_UP}" takes the recipe\'s; "{one.name}" alone says how to count it; or escape.'
    ]


def hears(talk: Talk, ask: SetNumber, line: str) -> list[str]:
    """Take the name of a number with its new value; the name alone says how it is counted and how far it reaches."""
    from finishing_tui.glance.numbers import (  # noqa: PLC0415  (the audit: few lines need it)
        allowed,
        named,
        read_number,
    )

    name, _, typed = line.partition(" ")
    try:
        one = named(ask.lines, name)
        if not typed.strip():
            how = [f"count: {one.how}"] if one.how else []
            return [_said(one), *how, *filter(None, (allowed(one.least, one.most),))]
        value = None if typed.strip().casefold() == GIVEN_UP else read_number(one, typed)
    except FinishingError as error:
        return [sentence(str(error)), "Nothing was done."]
    talk.answer(one, value)
    return []


def _said(line: "NumberLine") -> str:
    value = "not known" if line.value is None else line.value
    return f"{line.name}, {line.text}: {value}{f', {line.aside}' if line.aside else ''}."
