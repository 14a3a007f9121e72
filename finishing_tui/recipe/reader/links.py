"""Checks what the types cannot: that everything a recipe names is there, and that its counts can be counts.

It works on the values as they stand in the file, right or not, so that these mistakes are told together with those
that the validation finds. What it cannot judge because the value is of a wrong type, it passes over.
"""

import re
import unicodedata
from collections.abc import Iterator, Mapping
from typing import Any

from finishing_tui.craft.counts import span
from finishing_tui.craft.ledger import OUTSIDE
from finishing_tui.craft.words import plural
from finishing_tui.recipe.annotations import Seen, walk
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.numbers import circle_in
from finishing_tui.recipe.reader.caps import MOST_IN_SUM
from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.sentences import given
from finishing_tui.recipe.stage import HAND
from finishing_tui.recipe.sums import MOST, BadSum, names_in

Mistakes = Iterator[tuple[Path, str]]

MOST_NAME = 60
"""Characters in a name."""

_NUMBER_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
_NAMES: Mapping[str | type, str] = {"tail": "a tail", "marker": "a marker", "hole": "a hole"}


class Links:
    """The references of one file, whose values are ``data``; ``met`` is all that a walk through them meets."""

    def __init__(self, data: Mapping[str, Any]) -> None:
        self.data = data
        self.met = walk(Recipe, data)
        self.numbers = _table(data, "number")
        self.places = _table(data, "place")
        sizes = data.get("sizes")
        self.sizes = [size for size in sizes if isinstance(size, str)] if isinstance(sizes, list) else []
        self.many = len(sizes) if isinstance(sizes, list) and sizes else None

    def problems(self) -> Mistakes:
        """Yield (path, sentence) for everything that is wrong."""
        yield from self._names()
        yield from self._circles()
        for seen in self.met:
            if seen.mark == "count":
                yield from self._count(seen)
            elif seen.mark == "place":
                yield from self._place(seen)
            elif seen.mark in _NAMES:
                yield from _name(seen.path, seen.value, _NAMES[seen.mark])

    def _names(self) -> Mistakes:
        for name in self.numbers:
            if not _NUMBER_NAME.fullmatch(name) or len(name) > MOST_NAME or name == "all":
                right = f"use letters a to z, digits and _, up to {MOST_NAME}, so that sums can name it"
                yield ("number", name), f"{given(name)} cannot be the name of a number; {right}"
        for name in self.places:
            if name in OUTSIDE or name == HAND:
                yield ("place", name), f"{given(name)} is a word of the ledger's own; give this place another name"
            yield from _name(("place", name), name, "a place")

    def _place(self, seen: Seen) -> Mistakes:
        if isinstance(seen.value, str) and seen.value not in self.places:
            right = near(seen.value, self.places, "the places are")
            yield seen.path, f"there is no place {given(seen.value)}; {right}"

    def _count(self, seen: Seen) -> Mistakes:
        value = seen.value
        if isinstance(value, list):
            yield from self.by_size(seen.path, value)
        elif isinstance(value, str):
            yield from self.sum(seen.path, value)
        else:
            yield from in_range(seen.path, value)

    def by_size(self, path: Path, values: list[Any]) -> Mistakes:
        """Check a list by size: one entry for each, each of them a count."""
        if self.many is not None and len(values) != self.many:
            entries, sizes = plural(len(values), "entry"), plural(self.many, "size")
            yield path, f"the list has {entries} and there are {sizes}; it needs one for each"
        for place, value in enumerate(values):
            yield from in_range((*path, place), value)

    def sum(self, path: Path, text: str) -> Mistakes:
        """Check a sum: that it can be read, and that the numbers it names are there."""
        if len(text) > MOST_IN_SUM:
            yield path, f"this sum has {len(text)} characters, {MOST_IN_SUM} is the most; make a number of part of it"
            return
        try:
            names = names_in(text)
        except BadSum as error:
            yield path, f"{error}; a sum has whole numbers, names of numbers, + - * and brackets"
            return
        for name in dict.fromkeys(names):
            if name not in self.numbers:
                yield path, f"there is no number {given(name)}; {near(name, self.numbers, 'the numbers are')}"

    def _circles(self) -> Mistakes:
        """Find the numbers that are worked out from themselves: a circle for each of the sums that must change."""
        follows = {name: self._named_by(name) for name in self.numbers}
        while circle := circle_in(follows):
            yield ("number", circle[-2], "is"), f"this number is worked out from itself: {_circle(circle)}"
            follows[circle[-2]] = []

    def _named_by(self, name: str) -> list[str]:
        number = self.numbers[name]
        text = number.get("is") if isinstance(number, dict) else None
        if not isinstance(text, str) or not text:
            return []
        try:
            return [other for other in dict.fromkeys(names_in(text)) if other in self.numbers]
        except BadSum:
            return []


def in_range(path: Path, value: Any, least: int = 0, most: int = MOST) -> Mistakes:
    """Check a whole number against its range; anything else is the validation's business."""
    if isinstance(value, int) and not isinstance(value, bool) and not least <= value <= most:
        yield path, f"{value:,} is out of range; use {span(least, most, value)}"


def _table(data: Mapping[str, Any], key: str) -> Mapping[str, Any]:
    table = data.get(key)
    return table if isinstance(table, dict) else {}


def _name(path: Path, name: Any, what: str) -> Mistakes:
    if not isinstance(name, str):
        return
    if not name.strip() or name != name.strip():
        yield path, f"{given(name)} cannot be the name of {what}; it must not be blank, nor begin or end with a space"
    elif len(name) > MOST_NAME:
        yield path, f"the name of {what} has {len(name)} characters; {MOST_NAME} is the most"
    elif odd := next((char for char in name if not _usual(char)), ""):
        right = "use letters, digits, spaces and - _ ' . ,"
        yield path, f"the character {odd!r} cannot stand in the name of {what}; {right}"


def _usual(char: str) -> bool:
    return char in " -_'’.," or unicodedata.category(char)[0] in "LNM"


def _circle(names: list[str]) -> str:
    shown = names if len(names) <= 8 else [*names[:7], "…", names[-1]]
    return f"{' → '.join(shown)}; break the circle"
