"""Walks a recipe for what is printed in it: its counts and the names of its places, wherever they stand.

It goes by the marks beside the types of the model, so that it need not know any kind of step.
"""

import dataclasses
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from finishing_tui.recipe.annotations import walk
from finishing_tui.recipe.audit.finding import Where
from finishing_tui.recipe.keys import Count
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.kinds.work import Work
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.sums import names_in


def printed_counts(recipe: Recipe) -> Iterator[tuple[Where, Count]]:
    """Yield where every count stands and what it is: of numbers, of places, and of steps, in the order of the file."""
    for name, number in recipe.number.items():
        if number.by_size is not None:
            yield ("number", name, "by_size"), number.by_size
    yield from ((seen.path, seen.value) for seen in walk(Recipe, recipe) if seen.mark == "count")


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
    return {seen.value for seen in walk(type(step), step) if seen.mark == "place"}


def printed_numbers(recipe: Recipe) -> Iterator[Where]:
    """Yield where whole numbers and lists of them stand: gauges, counts, repeats, rounds and changes of shaping."""
    if recipe.gauge is not None:
        yield from (("gauge", "stitches"), ("gauge", "rows"))
        if recipe.gauge.band is not None:
            yield from (("gauge", "band", "stitches"), ("gauge", "band", "rows"))
    for where, count in printed_counts(recipe):
        if not isinstance(count, str):
            yield where
    for at, step in enumerate(recipe.step):
        if step.repeat is not None:
            yield ("step", at, "repeat", "of")
            yield ("step", at, "repeat", "plus")
        if isinstance(step, Work):
            if step.change:
                yield ("step", at, "change")
            for place, shaping in enumerate(step.shaping):
                for key in ("change", "round", "every", "from", "times"):
                    if getattr(shaping, "from_" if key == "from" else key) not in {None, 0}:
                        yield ("step", at, "shaping", place, key)


def value_at(model: Any, where: Where) -> Any:
    """Return the value at a place of the model."""
    for part in where:
        if isinstance(model, Mapping):
            model = model[part]
        elif isinstance(model, tuple):
            model = model[int(part)]
        else:
            model = getattr(model, _attribute(model, str(part)))
    return model


def with_value(model: Any, where: Where, value: Any) -> Any:
    """Return the model with one value replaced."""
    if not where:
        return value
    part, rest = where[0], where[1:]
    if isinstance(model, Mapping):
        return {**model, part: with_value(model[part], rest, value)}
    if isinstance(model, tuple):
        at = int(part)
        return (*model[:at], with_value(model[at], rest, value), *model[at + 1 :])
    name = _attribute(model, str(part))
    return dataclasses.replace(model, **{name: with_value(getattr(model, name), rest, value)})


def _attribute(model: Any, key: str) -> str:
    return key if hasattr(model, key) else f"{key}_"
