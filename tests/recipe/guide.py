"""Writes the part of the guide for writers that explains every key: ``python -m tests.recipe.guide``.

It is made from the model: what a key means stands under its field there, and what it takes is its type. A test holds
that the guide is what the model says, so that it cannot go stale.
"""

import re
import sys
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

from finishing_tui.recipe.annotations import Annotation, ModelField, fields_of
from finishing_tui.recipe.kinds import BRITISH, KINDS
from finishing_tui.recipe.kinds.base import RepeatOf, Step
from finishing_tui.recipe.kinds.seam import Side
from finishing_tui.recipe.kinds.sections import Along, Gap, Held
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.kinds.work import Shaping
from finishing_tui.recipe.model import BandGauge, Number, Place, Recipe, RecipeGauge
from finishing_tui.recipe.reader.sentences import meaning
from finishing_tui.recipe.schema import recipe_schema
from finishing_tui.recipe.techniques import HelpsAt, Technique
from finishing_tui.shipped import recipe as shipped_recipe

GUIDE = shipped_recipe("crew-neck").parent / "README.md"
BEGIN, END = "<!-- made from the model: python -m tests.recipe.guide -->", "<!-- end of what is made from the model -->"

TABLES: tuple[tuple[str, type], ...] = (
    ("The file", Recipe),
    ("`[gauge]`", RecipeGauge),
    ("`[gauge.band]`", BandGauge),
    ("`[number.NAME]`", Number),
    ("`[place.NAME]`", Place),
)
"""The tables of a file but its steps, with their headings."""

PARTS: dict[str, tuple[tuple[str, type], ...]] = {
    "pick up and knit": (
        ("A section of spots", Along),
        ("A section of held stitches", Held),
        ("A gap", Gap),
    ),
    "seam": (("A side", Side),),
    "work": (("A shaping", Shaping), ("`short_rows`", ShortRows)),
}
"""Tables inside a step of some kind."""

NAMES = {
    "count": "count",
    "place": "name of a place",
    "tail": "name of a tail",
    "marker": "name of a marker",
    "hole": "name of a hole",
}
TYPES: Mapping[Any, str] = {str: "text", int: "whole number", bool: "`true` or `false`"}


def made() -> str:
    """Return the part of the guide that is made from the model."""
    return "\n\n".join(_sections())


def _sections() -> Iterator[str]:
    for heading, model in TABLES:
        yield _section(f"### {heading}", model)
    yield _section("### Every step", Step)
    yield _section("### `repeat`", RepeatOf)
    common = set(fields_of(Step))
    for word, kind in KINDS.items():
        british = [other for other, ours in BRITISH.items() if ours == word]
        also = f" (also written {' or '.join(f'`{other}`' for other in british)})" if british else ""
        yield _section(f'### `do = "{word}"`{also}', kind, without={*common, "do"})
        yield from (_section(f"**{heading}**", model) for heading, model in PARTS.get(word, ()))
    yield _section("### A technique", Technique)
    yield _section("**Where a technique helps**", HelpsAt)


def _section(heading: str, model: type, without: set[str] | None = None) -> str:
    """Return a heading, what the table is, and its keys."""
    about, texts = _texts(model)
    keys = {key: field for key, field in fields_of(model).items() if key not in (without or ())}
    rows = [f"| `{key}` | {texts[key]} | {_takes(field)} |" for key, field in keys.items()]
    return "\n".join((heading, "", about, "", "| key | what it says | it takes |", "|---|---|---|", *rows))


@cache  # it is the same for every table, and slow to make
def _schema() -> dict[str, Any]:
    return recipe_schema()


def _texts(model: type) -> tuple[str, dict[str, str]]:
    """Return what a table is, and what each of its keys says."""
    schema = _schema()
    tables = {**schema["definitions"], "Recipe": schema, "Step": schema["definitions"]["Mark"]}  # any kind has the keys
    table = tables.get(model.__name__)
    if table is None:  # techniques are no part of the schema of recipes
        said = {key: f"{text[:1].upper()}{text[1:]}." for key in fields_of(model) for text in [meaning(model, key)]}
    else:
        said = {key: str(item.get("description", "")) for key, item in table["properties"].items()}
    about = " ".join((model.__doc__ or "").split("\n\n")[0].replace("``", "'").split())
    return _keys_marked(about), {key: _keys_marked(text) for key, text in said.items()}


def _keys_marked(text: str) -> str:
    return re.sub(r"(?<!\w)'([^' ][^']*)'", r"`\1`", text)


def _takes(field: ModelField) -> str:
    """Return what a key takes, whether it must be there, and what holds where it is left out."""
    said = _said(field.annotation)
    if not field.optional:
        return f"{said}; needed"
    default = field.default
    if isinstance(default, bool) or not isinstance(default, str | int) or default in {"", 0}:
        return said
    return f"{said}; `{default}` where it is left out"


def _said(one: Annotation) -> str:
    named = next((NAMES[mark] for mark in one.marks if mark in NAMES), None)
    if named is not None:
        return named
    if one.arms:
        return " or ".join(dict.fromkeys(said for said in map(_said, one.arms) if said))
    if one.literals:
        return " or ".join(f"`{word}`" for word in one.literals if word != "")
    if one.item is not None:
        return f"list of {_many(one.item)}"
    return "table" if one.table is not None else TYPES.get(one.bare) or "table of names"


def _many(one: Annotation) -> str:
    """Return what several of a type are."""
    if any(arm.table is not None for arm in one.each):
        return "tables"
    said = _said(one)
    return f"names of {said.removeprefix('name of a ')}s" if said.startswith("name of a ") else f"{said}s"


def with_made(text: str) -> str:
    """Return the text of the guide with the part that is made from the model put in anew."""
    before, _, rest = text.partition(BEGIN)
    _, _, after = rest.partition(END)
    return f"{before}{BEGIN}\n\n{made()}\n\n{END}{after}"


def main(guide: Path = GUIDE) -> int:
    """Write the guide anew."""
    guide.write_text(with_made(guide.read_text(encoding="utf-8")), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
