"""The JSON Schema of a recipe file, made from the model, so that an editor can complete keys and mark mistakes.

TOML editors read draft 7 and older; so it keeps to what all drafts have: ``enum`` rather than ``const``, no ``null``
(TOML has none), and references alone in their table. The model stays the one place where the format is written down.
"""

import inspect
from typing import Any

from finishing_tui.recipe.annotations import models
from finishing_tui.recipe.field_texts import field_texts
from finishing_tui.recipe.kinds import BRITISH, KINDS
from finishing_tui.recipe.kinds.needles import TwoNeedles
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.sums import MOST

DRAFT = "http://json-schema.org/draft-07/schema#"
"""The draft the schema keeps to."""

_COUNT = {
    "description": "A whole number, a list with one for each size, or in quotes the name of a number or a sum of them.",
    "anyOf": [
        {"type": "integer", "minimum": 0, "maximum": MOST},
        {"type": "string"},
        {"type": "array", "items": {"type": "integer", "minimum": 0, "maximum": MOST}},
    ],
}
_ARMS = [{"type": "integer"}, {"type": "string"}, {"items": {"type": "integer"}, "type": "array"}]
_NULL = {"type": "null"}


def recipe_schema() -> dict[str, Any]:
    """Return the schema as a plain value, ready for JSON."""
    from pydantic import TypeAdapter  # noqa: PLC0415  (only this needs it here, and it takes a tenth of a second)

    made = TypeAdapter(Recipe).json_schema(by_alias=True, ref_template="#/definitions/{model}")
    classes = {cls.__name__: cls for cls in models(Recipe)}
    definitions = {name: _told(_plain(table), classes[name]) for name, table in made.pop("$defs").items()}
    for word, kind in KINDS.items():
        step = definitions[kind.__name__]
        british = [other for other, ours in BRITISH.items() if ours == word]
        step["properties"]["do"] = {"description": _about(kind), "enum": [word, *british]}
        step["required"] = ["do", *step.get("required", ())]
        if issubclass(kind, TwoNeedles):
            step["anyOf"] = [{"required": [*pair]} for pair in (("near", "far"), ("front", "back"))]
    return {
        "$schema": DRAFT,
        "title": "Finishing recipe",
        **_told(_plain(made), Recipe),
        "definitions": {"Count": _COUNT, **definitions},
    }


def _plain(value: Any) -> Any:
    """Return a schema without nulls, defaults of nothing, titles made from keys, and what only one draft knows."""
    if isinstance(value, list):
        return [_plain(item) for item in value]
    if not isinstance(value, dict):
        return value
    table = {key: _plain(item) for key, item in value.items() if key != "discriminator" and not _idle(key, item)}
    if "properties" in value:
        table["properties"] = {key: _plain(item) for key, item in value["properties"].items()}
    arms = table.get("anyOf")
    if isinstance(arms, list):
        arms = [arm for arm in arms if arm != _NULL]
        if arms[:3] == _ARMS:
            arms = [{"$ref": "#/definitions/Count"}, *arms[3:]]
        table["anyOf"] = arms
    if "const" in table:
        table["enum"] = [table.pop("const")]
    return table


def _idle(key: str, item: Any) -> bool:
    return (key == "title" and isinstance(item, str)) or (key == "default" and (item is None or item == ""))


def _told(table: dict[str, Any], model: type) -> dict[str, Any]:
    """Return the schema of a model class with what each key means, as its own docstrings say it."""
    texts, properties = field_texts(model), {}
    for key, item in table["properties"].items():
        shown = {"allOf": [item]} if set(item) == {"$ref"} else item
        properties[key] = {"description": _quoted(texts[key]), **shown} if texts.get(key) else shown
    return {**table, "description": _about(model), "properties": properties}


def _about(model: type) -> str:
    """Return the first paragraph of the docstring of a class, on one line."""
    return _quoted(" ".join((inspect.getdoc(model) or "").split("\n\n", maxsplit=1)[0].split()))


def _quoted(text: str) -> str:
    """Return a text with quotes where its source marks code."""
    return text.replace("``", "'")
