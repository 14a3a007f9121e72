"""Every key of a model of files, and for each of them the TOML values that it does not take, from the types alone.

A new key, or a new kind of step, is tried out as soon as it is in the model.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from finishing_tui.recipe.annotations import Annotation, ModelField, fields_of, models

Steps = tuple[str | int, ...]
"""The way to a table: keys, and positions in lists."""

VALUES: Mapping[str, tuple[str, ...]] = {
    "date": ("2020-01-01",),
    "time": ("12:30:00",),
    "moment": ("2020-01-01T12:30:00", "2020-01-01T12:30:00Z"),
    "float": ("1.0", "0.5", "nan", "-inf"),
    "bool": ("true", "false"),
    "integer": ("1", "0"),
    "string": ('"along"', '"no such word"', '"1"'),
    "list": ("[]", "[1]", '["1"]', "[[1]]", '[["1"]]', "[{}]"),
    "table": ("{}", "{ a = 1 }"),
}
"""Values of every type that TOML has."""


class Raw(str):
    """A value as it stands in a file, right or not."""

    __slots__ = ()


@dataclass(frozen=True, slots=True)
class Key:
    """The key ``field`` of the model class ``owner``."""

    owner: type
    field: ModelField

    @property
    def declared(self) -> bool:
        """Whether the class has this key of its own, and not from a class that it extends."""
        names = self.owner.__annotations__
        return self.field.key in names or f"{self.field.key}_" in names

    def __str__(self) -> str:
        return f"{self.owner.__name__}.{self.field.key}"


def keys_of(*tables: type) -> list[Key]:
    """Return every key of the ``tables`` and of all the tables that stand in them, each class once."""
    return [Key(cls, field) for cls in models(*tables) for field in fields_of(cls).values()]


def wrong_for(key: Key) -> list[str]:
    """Return values that ``key`` does not take, as they stand in a file."""
    found = list(dict.fromkeys(_wrong(key.field.annotation)))
    if not key.field.optional or (key.field.type is str and key.field.default):
        found += [empty for empty in ('""', "[]") if empty not in found]
    return found


def with_key(table: dict[str, Any], steps: Steps, key: str, value: str) -> dict[str, Any]:
    """Return ``table`` with ``value``, as it stands in a file, at ``key`` of the table to which ``steps`` lead."""
    if not steps:
        return {**table, key: Raw(value)}
    inner = table[str(steps[0])]
    if len(steps) > 1 and isinstance(steps[1], int):
        at = steps[1]
        changed: Any = [*inner[:at], with_key(inner[at], steps[2:], key, value), *inner[at + 1 :]]
    else:
        changed = with_key(inner, steps[1:], key, value)
    return {**table, str(steps[0]): changed}


def written(table: Mapping[str, Any]) -> str:
    """Return a table as a TOML file: a line a value, and a header a table."""
    return "\n".join(_lines(table, ())) + "\n"


def line_changed(before: str, after: str) -> int:
    """Return the first line (from 1) in which two texts differ."""
    pairs = enumerate(zip(before.split("\n"), after.split("\n"), strict=False), 1)
    return next(number for number, (one, other) in pairs if one != other)


def _wrong(wanted: Annotation, *, within: bool = False) -> Iterator[str]:
    """Yield values that are not of the type ``wanted``, also such as go wrong only further in.

    ``within``: of a value in a list or table, where one of each sort will do.
    """
    takes = _takes(wanted)
    for kind, texts in VALUES.items():
        if kind not in takes:
            yield from texts[:1] if within else texts
    for one in _flat(wanted):
        if one.literals and takes == {"string"} and not any(arm.bare is str for arm in _flat(wanted)):
            yield from VALUES["string"]
            if "" not in one.literals:
                yield '""'
        elif one.literals and takes == {"integer"}:
            yield "0"
        elif one.item is not None:
            yield from (f"[{text}]" for text in _wrong(one.item, within=True) if "list" not in _takes(one.item))
        elif one.named is not None:
            yield from (f"{{ neck = {text} }}" for text in _wrong(one.named, within=True))
        elif one.bare is int:
            yield '""'
    if "string" not in takes:
        yield '""'


def _takes(wanted: Annotation) -> frozenset[str]:
    """Return the sorts of TOML values of which some are right."""
    return frozenset(_kind(arm) for arm in _flat(wanted))


def _flat(wanted: Annotation) -> Iterator[Annotation]:
    if wanted.choice is not None or not wanted.arms:
        yield wanted
        return
    for arm in wanted.arms:
        yield from _flat(arm)


def _kind(one: Annotation) -> str:
    if one.literals:
        return "integer" if isinstance(one.literals[0], int) else "string"
    if one.item is not None:
        return "list"
    return {str: "string", int: "integer", bool: "bool"}.get(one.bare, "table")


def _lines(table: Mapping[str, Any], path: tuple[str, ...]) -> Iterator[str]:
    inner = {key: value for key, value in table.items() if _has_header(value)}
    yield from (f"{key} = {_inline(value)}" for key, value in table.items() if key not in inner)
    for key, value in inner.items():
        name = ".".join((*path, key))
        for one in value if isinstance(value, list) else [value]:
            yield f"[[{name}]]" if isinstance(value, list) else f"[{name}]"
            yield from _lines(one, (*path, key))


def _has_header(value: Any) -> bool:
    return isinstance(value, dict) or (
        isinstance(value, list) and bool(value) and all(isinstance(one, dict) for one in value)
    )


def _inline(value: Any) -> str:
    if isinstance(value, Raw):
        return value
    if isinstance(value, list):
        return f"[{', '.join(_inline(one) for one in value)}]"
    return json.dumps(value, ensure_ascii=False)
