"""Walks a recipe for what is printed in it: its counts and the names of its places, wherever they stand.

It goes by the marks beside the types of the model, so that it need not know any kind of step.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from typing import Any, get_args, get_type_hints

from finishing_tui.recipe.audit.finding import Where
from finishing_tui.recipe.keys import Count
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.sums import names_in

_MARKS = frozenset({"count", "place", "tail", "marker", "hole"})


def printed_counts(recipe: Recipe) -> Iterator[tuple[Where, Count]]:
    """Yield where every count stands and what it is: of numbers, of places, and of steps, in the order of the file."""
    for name, number in recipe.number.items():
        if number.by_size is not None:
            yield ("number", name, "by_size"), number.by_size
    for where, mark, value in _walked(recipe, ()):
        if mark == "count":
            yield where, value


def numbers_under(recipe: Recipe, where: Where) -> frozenset[str]:
    """Return the names of the numbers that the counts under ``where`` rest on, directly or through sums."""
    counts = (count for place, count in printed_counts(recipe) if place[: len(where)] == where)
    return resting_on(recipe, {name for count in counts if isinstance(count, str) for name in names_in(count)})


def resting_on(recipe: Recipe, names: Iterable[str]) -> frozenset[str]:
    """Return the numbers among ``names``, and all that they are worked out from."""
    waiting, known = [name for name in names if name in recipe.number], set[str]()
    while waiting:
        name = waiting.pop()
        if name not in known:
            known.add(name)
            rests = names_in(recipe.number[name].is_) if recipe.number[name].is_ else ()
            waiting += [other for other in rests if other in recipe.number]
    return frozenset(known)


def places_of(step: Step) -> set[str]:
    """Return the places that a step names."""
    return {value for _, mark, value in _walked(step, ()) if mark == "place"}


def places_named(recipe: Recipe) -> set[str]:
    """Return the places that the steps name."""
    return {place for step in recipe.step for place in places_of(step)}


def _walked(model: Any, where: Where) -> Iterator[tuple[Where, str, Any]]:
    """Yield (where, mark, value) for every marked value in a value of the model."""
    for attribute, key, marks in _marked(model.__class__):
        value = getattr(model, attribute)
        if isinstance(value, Mapping):
            for name, item in value.items():
                if is_dataclass(item):
                    yield from _walked(item, (*where, key, name))
                elif "count" in marks:
                    yield (*where, key), "place", name
                    yield (*where, key, name), "count", item
        elif is_dataclass(value):
            yield from _walked(value, (*where, key))
        elif "count" in marks:
            if value is not None and value != "all":
                yield (*where, key), "count", value
        elif isinstance(value, tuple):
            for place, item in enumerate(value):
                if is_dataclass(item):
                    yield from _walked(item, (*where, key, place))
                elif marks and item:
                    yield (*where, key, place), next(iter(marks)), item
        elif marks and value:
            yield (*where, key), next(iter(marks)), value


@cache
def _marked(cls: type) -> tuple[tuple[str, str, frozenset[str]], ...]:
    """Return (attribute, key of the file, marks) of every field that has a mark or may hold more of the model."""
    hints = get_type_hints(cls, include_extras=True)
    found = []
    for field in fields(cls):
        marks = frozenset(_marks_in(hints[field.name]))
        if marks or hints[field.name] not in {str, int, bool}:
            found.append((field.name, field.name.rstrip("_"), marks))
    return tuple(found)


def _marks_in(wanted: Any) -> Iterator[str]:
    for part in getattr(wanted, "__metadata__", ()):
        if isinstance(part, str) and part in _MARKS:
            yield part
    for arm in get_args(wanted):
        if arm is not ...:
            yield from _marks_in(arm)
