"""The numbers of a garment, in lines: all of them are said, and one is changed once it was said what that changes."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.glance.numbers import NumberLine, Renumbering, named, number_lines, read_number, renumbering
from finishing_tui.plain.held import Held
from finishing_tui.plain.questions import Hands, Reply, YesOrNo

GIVEN_UP = "recipe"
"""What is typed for a number of one's own that is given up again."""


def numbers(held: Held, rest: str) -> Reply:
    """Say the numbers; with one of them and a new value behind the word, ask whether the change is to be taken."""
    plan = held.state.plan
    lines = number_lines(plan.recipe, plan.size, plan.own)
    if not lines:
        return ["This recipe has no numbers."], None
    if not rest:
        first = lines[0]
        how = f'to change one, type for example "numbers {first.name} {first.value or first.least}"; '
        return [*_told(lines), f'{how}"numbers {first.name} {GIVEN_UP}" gives yours up again.'], None
    name, _, typed = rest.partition(" ")
    try:
        line = named(lines, name)
        if not typed.strip():
            return [*_told((line,)), *([f"count: {line.how}"] if line.how else []), f"{_reach(line)}."], None
        value = None if typed.strip().casefold() == GIVEN_UP else read_number(line, typed)
        found = renumbering(held.state, line, value)
    except FinishingError as error:
        return [sentence(str(error)), "Nothing was done."], None
    later = ["this changes what comes later.", *map(sentence, found.lines)] if found.lines else []
    told = [sentence(found.said), *(later or ["no count that comes later differs."]), "Is it to be taken?"]
    return [], YesOrNo(told, lambda hands: _taken(hands, found))


def _told(lines: tuple[NumberLine, ...]) -> list[str]:
    return [
        f"{line.name}, {line.text}: {'not known' if line.value is None else line.value}"
        f"{f', {line.aside}' if line.aside else ''}."
        for line in lines
    ]


def _reach(line: NumberLine) -> str:
    return f"from {line.least} to {line.most}"


def _taken(hands: Hands, found: Renumbering) -> Reply:
    refusal = hands.attempt(found.command)
    return [sentence(refusal.sentence) if refusal else f"taken: {found.said}."], None
