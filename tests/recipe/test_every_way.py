"""The shipped recipes together use every kind of step, every key of every table, and every way that a key names.

What a recipe may say is walked from the model, so that a new key or a new way is missed here until a recipe shows it:
a pattern writer then has an example of everything, and every way of finishing has been worked to its end by the tests
that work the recipes.
"""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import fields
from typing import Any

from finishing_tui import shipped
from finishing_tui.craft.methods import method
from finishing_tui.recipe.annotations import fields_of, models, walk
from finishing_tui.recipe.kinds import BRITISH, KINDS
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import read_recipe

Way = tuple[str, ...]
"""A table's name, one of its keys, and (where the key takes one of some words, a flag or a form) what it says."""

EXCEPT: Mapping[Way, str] = {
    (
        "Number",
        "neither by_size nor is",
    ): "a number that is not printed is a fault of a pattern: the audit finds it out",
}
"""What no shipped recipe uses, with the reason why none should."""

RECIPES = {name: tomllib.loads(path.read_text(encoding="utf-8")) for name, path in shipped.recipes().items()}

OF_ALL_STEPS = {field.name.rstrip("_") for field in fields(Step)}


def ways(model: type, key: str) -> Iterator[Way]:
    """Yield the ways of a key: itself, each word of which it takes one, and true where it is a flag.

    A key that every step may have is looked for at any step, not at each kind of step.
    """
    table = Step.__name__ if issubclass(model, Step) and key in OF_ALL_STEPS else model.__name__
    yield table, key
    arms = fields_of(model)[key].annotation.each
    for arm in arms:
        if arm.literals:
            yield from ((table, key, str(word)) for word in arm.literals if word != "")
        elif arm.bare is bool:
            yield table, key, "true"
        elif "count" in arm.marks and len(arms) > 1:
            yield table, key, "a count"


def wanted_ways() -> set[Way]:
    """Return all that a recipe may say, and the forms in which a number may be given."""
    of_keys = {way for model in models(Recipe) for key in fields_of(model) for way in ways(model, key)}
    forms = {("count", form) for form in ("whole number", "list by size", "name or sum")}
    numbers = {("Number", form) for form in ("one for all", "by size", "neither by_size nor is", "is alone", "both")}
    return of_keys | forms | numbers


def said(model: type, table: Mapping[str, Any]) -> Iterator[Way]:
    """Yield the ways that one table uses; what a key says where it is left out counts, but not as the key."""
    for key, field in fields_of(model).items():
        value = table.get(key, field.default)
        name, *words = ways(model, key)
        if table.get(key) not in (None, "", [], {}):
            yield name
        for word in words:
            form = word[-1]
            if form == "true":
                used = value is True
            elif form == "a count":
                used = key in table and value != "all"
            else:
                used = str(value) == form
            if used:
                yield word
    if model.__name__ == "Number":
        yield "Number", "by size" if isinstance(table.get("by_size"), list) else "one for all"
        has = ("by_size" in table, "is" in table)
        yield (
            "Number",
            {(True, True): "both", (False, True): "is alone", (False, False): "neither by_size nor is"}.get(
                has, "by size"
            ),
        )


def used_ways(recipe: Mapping[str, Any]) -> Iterator[Way]:
    """Yield every way that a recipe uses."""
    for seen in walk(Recipe, recipe):
        if isinstance(seen.mark, type) and isinstance(seen.value, dict):
            yield from said(seen.mark, seen.value)
        elif seen.mark == "count":
            form = {int: "whole number", list: "list by size", str: "name or sum"}[type(seen.value)]
            yield "count", form


def test_every_key_and_every_way_is_used() -> None:
    """Nothing that a recipe may say is without a shipped example, but for what stands in ``EXCEPT``."""
    used = {way for recipe in RECIPES.values() for way in used_ways(recipe)}
    assert wanted_ways() - used == set(EXCEPT)


def test_the_walk_finds_what_there_is() -> None:
    """The walk is not blind: kinds, tables inside of steps, words, flags and forms are among what is wanted."""
    wanted = wanted_ways()
    assert {("Step", "unequal", "true"), ("Along", "unit", "ridge"), ("Side", "unit", "chain"), ("Held", "stitches"),
            ("Graft", "count", "a count"), ("Graft", "count", "all"), ("ShortRows", "times")} <= wanted  # fmt: skip
    assert all((kind.__name__, "do") in wanted or ("Step", "do") in wanted for kind in KINDS.values())
    assert len(wanted) > 200


def test_british_words_are_taken_but_not_used() -> None:
    """One voice: the recipes that are shipped say "bind off" and "pick up and knit" (the reader's tests use others)."""
    assert not {step["do"] for recipe in RECIPES.values() for step in recipe["step"]} & set(BRITISH)


def test_even_shaping_is_shown_both_ways() -> None:
    """The method of a row of even shaping is free text, as the row is written: one that loses and one that gains."""
    methods = {
        step.method for path in shipped.recipes().values() for step in read_recipe(path).step if isinstance(step, Shape)
    }
    assert {method(name).change for name in methods} == {-1, 1}
