"""Small recipes for tests, as the text of a recipe file, put together from their parts."""

import json
import re
from collections.abc import Mapping
from typing import Any


def recipe(title: str, *parts: str, **keys: Any) -> str:
    """Return a recipe of one size (or of ``sizes``) made of ``parts``: its numbers, places and steps."""
    return _table("", {"format": 1, "title": title, "sizes": ["one"], **keys}, parts)


def place(name: str, kind: str = "needle", text: str = "", **keys: Any) -> str:
    """Return a place; where no ``text`` is given it is called by its name and kind: "band needle"."""
    return _table(f"[place.{name}]\n", {"text": text or f"{name} {kind}", "kind": kind, **keys})


def number(name: str, text: str, **keys: Any) -> str:
    """Return a number."""
    return _table(f"[number.{name}]\n", {"text": text, **keys})


def step(do: str, title: str, *sections: str, **keys: Any) -> str:
    """Return a step; a trailing underscore marks a key that is a Python word."""
    return _table("[[step]]\n", {"do": do, "title": title, **keys}, sections)


def along(name: str, spots: int, stitches: int, **keys: Any) -> str:
    """Return a section along an edge."""
    return section(along=name, spots=spots, stitches=stitches, **keys)


def section(**keys: Any) -> str:
    """Return a section of a step."""
    return _table("[[step.section]]\n", keys)


def _table(header: str, keys: Mapping[str, Any], parts: tuple[str, ...] = ()) -> str:
    lines = "".join(f"{key.rstrip('_')} = {toml(value)}\n" for key, value in keys.items())
    return f"{header}{lines}{''.join(parts)}"


def toml(value: Any) -> str:
    """Return a plain value as a recipe file has it."""
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{_key(key)} = {toml(item)}" for key, item in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(toml(item) for item in value) + "]"
    return json.dumps(value, ensure_ascii=False)


def _key(name: str) -> str:
    return name if re.fullmatch(r"[A-Za-z0-9_-]+", name) else json.dumps(name, ensure_ascii=False)
