"""Every key of a model of files, and for each of them the TOML values that it does not take, from the types alone.

A new key, or a new kind of step, is tried out as soon as it is in the model.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Literal, get_args, get_origin

from finishing_tui.recipe.reader.shape import Field, arms, bare, fields_of, is_model, one_of

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
    field: Field

    @property
    def declared(self) -> bool:
        """Whether the class has this key of its own, and not from a class that it extends."""
        names = self.owner.__annotations__
        return self.field.key in names or f"{self.field.key}_" in names

    def __str__(self) -> str:
        return f"{self.owner.__name__}.{self.field.key}"


def keys_of(*models: type) -> list[Key]:
    """Return every key of the ``models`` and of all the tables that stand in them, each class once."""
    return [Key(cls, field) for cls in _classes(models) for field in fields_of(cls).values()]


def wrong_for(key: Key) -> list[str]:
    """Return values that ``key`` does not take, as they stand in a file."""
    found = list(dict.fromkeys(_wrong(key.field.type)))
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


def _classes(models: tuple[type, ...]) -> list[type]:
    found: dict[type, None] = {}
    waiting = [*reversed(models)]
    while waiting:
        cls = waiting.pop()
        if cls not in found:
            found[cls] = None
            waiting += [inner for field in fields_of(cls).values() for inner in _within(field.type)]
    return list(found)


def _within(wanted: Any) -> Iterator[type]:
    inner, marks = bare(wanted)
    if (choice := one_of(marks)) is not None:
        yield from choice.choices.values()
    elif is_model(inner):
        yield inner
    elif get_origin(inner) is not Literal:
        for arm in get_args(inner):
            yield from _within(arm)


def _wrong(wanted: Any, *, within: bool = False) -> Iterator[str]:
    """Yield values that are not of the type ``wanted``, also such as go wrong only further in.

    ``within``: of a value in a list or table, where one of each sort will do.
    """
    takes = _takes(wanted)
    for kind, texts in VALUES.items():
        if kind not in takes:
            yield from texts[:1] if within else texts
    for arm in _flat(wanted):
        inner = bare(arm)[0]
        if get_origin(inner) is Literal and takes == {"string"} and not any(arm is str for arm in _flat(wanted)):
            yield from VALUES["string"]
            if "" not in get_args(inner):
                yield '""'
        elif get_origin(inner) is Literal and takes == {"integer"}:
            yield "0"
        elif get_origin(inner) is tuple:
            item = get_args(inner)[0]
            yield from (f"[{text}]" for text in _wrong(item, within=True) if "list" not in _takes(item))
        elif isinstance(get_origin(inner), type) and issubclass(get_origin(inner), Mapping):
            yield from (f"{{ neck = {text} }}" for text in _wrong(get_args(inner)[1], within=True))
        elif inner is int:
            yield '""'
    if "string" not in takes:
        yield '""'


def _takes(wanted: Any) -> frozenset[str]:
    """Return the sorts of TOML values of which some are right."""
    return frozenset(_kind(arm) for arm in _flat(wanted))


def _flat(wanted: Any) -> Iterator[Any]:
    inner, marks = bare(wanted)
    if one_of(marks) is not None or (arms(inner) == (inner,)):
        yield wanted if one_of(marks) is not None else inner
        return
    for arm in arms(inner):
        yield from _flat(arm)


def _kind(arm: Any) -> str:
    inner, marks = bare(arm)
    if one_of(marks) is not None or is_model(inner):
        return "table"
    if get_origin(inner) is Literal:
        return "integer" if isinstance(get_args(inner)[0], int) else "string"
    if get_origin(inner) is tuple:
        return "list"
    return {str: "string", int: "integer", bool: "bool"}.get(inner, "table")


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
