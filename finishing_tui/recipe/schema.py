"""The JSON Schema of a recipe file, made from the model, so that an editor can complete keys and mark mistakes.

TOML editors read draft 7 and older; so it keeps to what all drafts have: ``enum`` rather than ``const``, no ``null``
(TOML has none), and references alone in their table. The model stays the one place where the format is written down.
"""

import ast
import dataclasses
import inspect
import textwrap
from itertools import pairwise
from typing import Any

from finishing_tui.recipe.kinds import BRITISH, KINDS
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
    definitions = {
        name: _told(_plain(table), model) for name, table in made.pop("$defs").items() for model in (_models()[name],)
    }
    for word, kind in KINDS.items():
        step = definitions[kind.__name__]
        british = [other for other, ours in BRITISH.items() if ours == word]
        step["properties"]["do"] = {"description": _texts(kind)[""], "enum": [word, *british]}
        step["required"] = ["do", *step.get("required", ())]
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
    texts = _texts(model)
    properties = {}
    for key, item in table["properties"].items():
        shown = {"allOf": [item]} if set(item) == {"$ref"} else item
        properties[key] = {"description": texts[key], **shown} if texts.get(key) else shown
    return {**table, "description": texts[""], "properties": properties}


def _models() -> dict[str, type]:
    """Return every class of the model by its name."""
    found: dict[str, type] = {}
    waiting: list[Any] = [Recipe, *KINDS.values()]
    while waiting:
        wanted = waiting.pop()
        waiting.extend(getattr(wanted, "__args__", ()))
        for choice in getattr(wanted, "__metadata__", ()):
            waiting.extend(getattr(choice, "choices", {}).values())
        if isinstance(wanted, type) and dataclasses.is_dataclass(wanted) and wanted.__name__ not in found:
            found[wanted.__name__] = wanted
            waiting.extend(field.type for field in dataclasses.fields(wanted))
    return found


def _texts(model: type) -> dict[str, str]:
    """Return what a class and each of its keys mean, in the words of their docstrings; the class stands under ""."""
    texts = {"": _joined(inspect.getdoc(model) or "")}
    for cls in reversed(model.__mro__[:-1]):
        tree = ast.parse(textwrap.dedent(inspect.getsource(cls)))
        body = tree.body[0].body if isinstance(tree.body[0], ast.ClassDef) else []
        for field, text in pairwise(body):
            if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name) and isinstance(text, ast.Expr):
                said = text.value.value if isinstance(text.value, ast.Constant) else ""
                texts[field.target.id.rstrip("_")] = _joined(str(said))
    return texts


def _joined(text: str) -> str:
    """Return the first paragraph of a docstring on one line, without the marks for code."""
    return " ".join(text.split("\n\n", maxsplit=1)[0].split()).replace("``", "'")
