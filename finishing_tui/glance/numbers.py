"""The numbers of a garment in words: which are the knitter's own, what is printed beside them, and what a change does.

Nothing here changes anything: a changed number is a changed plan, and it is taken by a command.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from finishing_tui.craft.counts import MOST, span
from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.words import listing, sentence
from finishing_tui.garment.commands import Refusal, Replan
from finishing_tui.garment.consequences import consequences
from finishing_tui.garment.decide import decide
from finishing_tui.garment.decide.replan import anew, keeps_old
from finishing_tui.garment.events import Act
from finishing_tui.garment.evolve import applied
from finishing_tui.garment.labels import Label
from finishing_tui.garment.starting import UNCOUNTED, with_number, without
from finishing_tui.garment.state import State
from finishing_tui.glance.label_words import label_words
from finishing_tui.glance.later import later_lines
from finishing_tui.recipe.audit.printing import numbers_under
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.numbers import NOT_COUNTED, numbers_for, printed_in, size_index
from finishing_tui.recipe.only_spots import only_spots
from finishing_tui.recipe.reader.near import near

MOST_DIGITS = 6
"""Digits that a number may have."""


def allowed(least: int, most: int) -> str:
    """Return in a sentence which numbers are taken; nothing where every count is."""
    return "" if not least and most >= MOST else f"Use {span(least, most)}."


@dataclass(frozen=True, slots=True)
class NumberLine:
    """One number: its ``name`` in the recipe and what it is in words; ``value`` None where nothing tells it yet.

    ``own``: it is the knitter's; ``otherwise``: what it would be if it were not. ``asked``: the recipe asks for it;
    ``needless``: nobody need count it.
    """

    name: str
    text: str
    how: str
    value: int | None
    own: bool
    otherwise: int | None
    least: int
    most: int
    asked: bool
    needless: bool = False

    @property
    def aside(self) -> str:
        """Where the value comes from, in a few words."""
        if self.own and self.value is None:
            return UNCOUNTED
        if not self.own:
            return "not printed" if self.value is None else ""
        return "yours" if self.otherwise in {None, self.value} else f"yours (recipe: {self.otherwise})"


def number_lines(recipe: Recipe, size: str, own: Mapping[str, int]) -> tuple[NumberLine, ...]:
    """Return every number of a recipe in one size: first those a knitter is asked for, then the rest as they come."""
    index = size_index(recipe, size)
    try:
        known: Mapping[str, int | None] = numbers_for(recipe, index, own)
    except FinishingError:
        known = {name: own.get(name, printed_in(number, index)) for name, number in recipe.number.items()}
    needless = only_spots(recipe)
    lines = [
        NumberLine(
            name,
            number.text,
            number.how,
            None if own.get(name) == NOT_COUNTED else known.get(name),
            name in own,
            without(recipe, size, own, name),
            number.least,
            number.most,
            number.ask,
            name in needless,
        )
        for name, number in recipe.number.items()
    ]
    return tuple(sorted(lines, key=lambda line: not line.asked))


def of_step(state: State, step: int | None) -> str:
    """Return the name of the first number that a step rests on, those asked for first; empty where it rests on none."""
    if step is None:
        return ""
    plan, under = state.plan, numbers_under(state.plan.recipe, ("step", step))
    return next((line.name for line in number_lines(plan.recipe, plan.size, plan.own) if line.name in under), "")


def read_number(line: NumberLine, typed: str) -> int:
    """Return the count ``typed`` for a number; nothing, for one that nobody need count, is that nobody did.

    Raises ``Impossible`` with what would be right.
    """
    typed = typed.strip()
    if line.needless and typed.casefold() in {"", UNCOUNTED}:
        return NOT_COUNTED
    if not (typed.isascii() and typed.isdecimal() and len(typed) <= MOST_DIGITS):
        raise Impossible(f"{typed[:40]!r} is not a whole number; use {span(line.least, line.most)}")
    value = int(typed)
    if not line.least <= value <= line.most:
        few = "few" if value < line.least else "many"
        raise Impossible(f"{line.text}: {value:,} is too {few}; use {span(line.least, line.most, value)}")
    return value


def named(lines: tuple[NumberLine, ...], typed: str) -> NumberLine:
    """Return the number called ``typed``, by its name in the recipe or its place in the list, counted from 1.

    Raises ``Impossible`` with near names.
    """
    for at, line in enumerate(lines, 1):
        if typed in {line.name, str(at)}:
            return line
    raise Impossible(f"there is no number {typed[:40]!r}; {near(typed, [line.name for line in lines], 'there is')}")


@dataclass(frozen=True, slots=True)
class Renumbering:
    """A change of one number: ``said`` in a sentence, what it changes later in ``lines``, and how to ask for it."""

    said: str
    lines: tuple[str, ...]
    command: Replan

    def because(self, why: str) -> Replan:
        """Return the command with the knitter's own reason in it."""
        return replace(self.command, note=why)


def renumbering(state: State, line: NumberLine, value: int | None) -> Renumbering:
    """Return what giving a number another ``value`` would do; None: it is no longer the knitter's own.

    Raises ``FinishingError`` with a sentence where the recipe cannot be worked out with it.
    """
    plan = state.plan
    own = with_number(plan.recipe, plan.size, plan.own, line.name, value)
    if own == plan.own:
        raise Impossible(f"{line.text}: already {line.value}")
    changed = replace(plan, own=own)
    before, after = plan.numbers(), changed.numbers()
    for place in plan.recipe.place.values():
        count_of(place.live, after, plan.size_index)
    try:
        anew(state, changed)
    except FinishingError as error:
        raise Impossible(
            f"step {(state.current or 0) + 1} won't work with that number: {sentence(str(error))}"
        ) from error
    now = after[line.name]
    reason = (
        Label("number-not-counted", names=(line.text,))
        if value == NOT_COUNTED
        else Label("number-first-given", names=(line.text,), numbers=(now,))
        if line.value is None
        else Label("number-changed", names=(line.text,), numbers=(now, line.value))
    )
    said = label_words(plan, reason)
    lines = [
        f"{number.text}: {after[name]}, not {before[name]}"
        for name, number in plan.recipe.number.items()
        if name != line.name and after[name] != before[name]
    ]
    lines += _used(state, line.name)
    lines += [
        f"what you have begun of step {step + 1} keeps its numbers: recount it, or rip back to its start"
        for step in keeps_old(state, changed)
    ]
    command = Replan(changed, why=reason)
    decided = decide(state, command)
    if isinstance(decided, Refusal):
        raise Impossible(decided.sentence)
    changed_state = applied(state, (event for event in decided if isinstance(event, Act)))
    lines += later_lines(consequences(state, changed_state), changed_state)
    return Renumbering(said, tuple(lines), command)


def _used(state: State, name: str) -> list[str]:
    """Return the steps to come that rest on a number, in a sentence; nothing where none does."""
    steps = [
        str(index + 1)
        for index, standing in enumerate(state.steps)
        if standing.status in {"to-come", "under-way"}
        and state.plan.is_for(index)
        and name in numbers_under(state.plan.recipe, ("step", index))
    ]
    return [f"used in step{'' if len(steps) == 1 else 's'} {listing(steps)}"] if steps else []
