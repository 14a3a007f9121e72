"""Reads the files of techniques, with the same guards as recipes: nothing in them is trusted either."""

from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path as File
from typing import TYPE_CHECKING, Any

from finishing_tui.recipe.annotations import walk
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.reader import values
from finishing_tui.recipe.reader.blank import blank
from finishing_tui.recipe.reader.errors import BadRecipe, Path, Problem
from finishing_tui.recipe.reader.guards import looked_over, text_in
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.placing import placed
from finishing_tui.recipe.reader.sentences import sentences
from finishing_tui.recipe.reader.syntax import parsed
from finishing_tui.recipe.reader.text import unprintable
from finishing_tui.recipe.techniques import HIGH, WIDE, Technique

if TYPE_CHECKING:
    from pydantic import TypeAdapter


class BadTechnique(BadRecipe):
    """A technique file that cannot be used; ``problems`` are all that is wrong with it."""


def read_technique(path: File) -> Technique:
    """Return the technique in the file at ``path``. Raises ``BadTechnique`` with everything that is wrong with it."""
    text = text_in(path)
    if isinstance(text, Problem):
        raise BadTechnique(str(path), [text])
    return read_technique_text(text, str(path))


def read_technique_text(text: str, name: str) -> Technique:
    """Return the technique in ``text``; ``name``: what its file is called. Raises ``BadTechnique``."""
    problem = looked_over(text)
    data = parsed(text) if problem is None else problem
    if isinstance(data, Problem):
        raise BadTechnique(name, [data])
    data = values.tidied(data)
    found = [*_characters(data), *_wrong(data), *blank(walk(Technique, data))]
    if found:
        raise BadTechnique(name, placed(found, text))
    return _adapter().validate_json(values.as_json(data))


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


@cache
def _adapter() -> "TypeAdapter[Technique]":
    from pydantic import TypeAdapter  # noqa: PLC0415  (a tenth of a second, and only reading a file needs it)

    return TypeAdapter(Technique)


def _wrong(data: Mapping[str, Any]) -> Iterator[tuple[Path, str]]:
    """Yield (path, sentence) for everything the validation finds wrong, and for steps that there are not."""
    from pydantic import ValidationError  # noqa: PLC0415  (as above)

    try:
        technique = _adapter().validate_json(values.as_json(data), strict=True)
    except ValidationError as error:
        yield from sentences(error.errors(include_url=False, include_context=False), data, Technique)
        return
    if not technique.moves:
        yield ("moves",), "there are no moves; say what the hands do, a text for each"
    if not technique.helps:
        yield ("helps",), "this technique helps at no step; name a kind of step, such as [[helps]] with do"
    for number, sort in enumerate(technique.helps):
        if sort.do not in KINDS:
            yield ("helps", number, "do"), f"there is no such kind of step; {near(sort.do, KINDS, 'there are')}"
