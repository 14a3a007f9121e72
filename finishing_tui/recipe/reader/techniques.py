"""Reads the files of techniques, with the same guards as recipes: nothing in them is trusted either."""

from collections.abc import Iterator, Mapping
from pathlib import Path as File
from typing import Any

from finishing_tui.recipe.annotations import walk
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.reader import values
from finishing_tui.recipe.reader.blank import blank
from finishing_tui.recipe.reader.errors import BadRecipe, Path
from finishing_tui.recipe.reader.guards import text_in
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.placing import placed
from finishing_tui.recipe.reader.syntax import table_in
from finishing_tui.recipe.reader.text import unprintable
from finishing_tui.recipe.reader.validating import validated
from finishing_tui.recipe.techniques import HIGH, WIDE, Technique


class BadTechnique(BadRecipe):
    """A technique file that cannot be used; ``problems`` are all that is wrong with it."""


def read_technique(path: File) -> Technique:
    """Return the technique in the file at ``path``. Raises ``BadTechnique`` with everything that is wrong with it."""
    return read_technique_text(text_in(path, BadTechnique), str(path))


def read_technique_text(text: str, name: str) -> Technique:
    """Return the technique in ``text``; ``name``: what its file is called. Raises ``BadTechnique``."""
    data = table_in(text, name, BadTechnique)
    technique, wrong = validated(Technique, data)
    if technique is not None:
        wrong = _useless(technique)
    found = [*_characters(data), *wrong, *blank(walk(Technique, data))]
    if technique is None or found:
        raise BadTechnique(name, placed(found, text))
    return technique


def _characters(data: Mapping[str, Any]) -> Iterator[tuple[Path, str]]:
    """Yield what may not be shown; only the drawing has several lines, and those of a certain size."""
    yield from values.problems({key: value for key, value in data.items() if key != "drawing"})
    drawing = data.get("drawing")
    if not isinstance(drawing, str):
        return
    if unprintable(drawing, "\n") is not None:
        yield ("drawing",), "a tab or another character that has no width stands in this drawing; use spaces"
    lines = drawing.strip("\n").split("\n")
    if len(lines) > HIGH or max(map(len, lines)) > WIDE:
        yield ("drawing",), f"this drawing is too large; {WIDE} columns and {HIGH} lines are the most"
    if not data.get("shows"):
        yield ("drawing",), "say in words what the drawing shows, with the key 'shows', for whoever hears it read"


def _useless(technique: Technique) -> Iterator[tuple[Path, str]]:
    """Yield (path, sentence) where nothing is said of what the hands do, or of a step at which it helps."""
    if not technique.moves:
        yield ("moves",), "there are no moves; say what the hands do, a text for each"
    if not technique.helps:
        yield ("helps",), "this technique helps at no step; name a kind of step, such as [[helps]] with do"
    for number, sort in enumerate(technique.helps):
        if sort.do not in KINDS:
            yield ("helps", number, "do"), f"there is no such kind of step; {near(sort.do, KINDS, 'there are')}"
