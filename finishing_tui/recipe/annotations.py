"""Reads the type annotations of the recipe model, and walks values beside them.

The model says what may stand where, and marks what a text refers to. This is the only module that takes its types
apart, so that neither the reader, the schema nor the audit knows any kind of step by name. (``codec`` reads stored
values, of other classes and by other rules, and must be there before any of this is: it stays by itself.)
"""

import dataclasses
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

from finishing_tui.recipe.keys import OneOf


@dataclass(frozen=True, slots=True)
class Annotation:
    """A type taken apart, each form that it may have in a field of its own; what it has not is empty."""

    bare: Any
    """The type without what is annotated to it."""
    marks: tuple[Any, ...] = ()
    """The words annotated to it: "count", "place" ..."""
    choice: OneOf | None = None
    """How to know which of several tables is meant, where that is annotated."""
    arms: tuple["Annotation", ...] = ()
    """Of a union: what it may be besides ``None``."""
    literals: tuple[Any, ...] = ()
    """The values of a ``Literal``, in their order."""
    item: "Annotation | None" = None
    """What is in a list."""
    named: "Annotation | None" = None
    """What is in a table of names."""
    name: "Annotation | None" = None
    """What these names are."""
    table: type | None = None
    """The class of the model, where it is one."""

    @property
    def each(self) -> tuple["Annotation", ...]:
        """All that it may be: the arms of a union, or itself."""
        return self.arms or (self,)


def annotation(wanted: Any) -> Annotation:
    """Return the type ``wanted`` taken apart.

    Not kept for the next time: to Python two unions or literals are equal whatever their order, and sentences keep it.
    """
    bare, *beside = get_args(wanted) if get_origin(wanted) is Annotated else (wanted,)
    origin, args = get_origin(bare), get_args(bare)
    of_names = isinstance(origin, type) and issubclass(origin, Mapping)
    return Annotation(
        bare=bare,
        marks=tuple(mark for mark in beside if not isinstance(mark, OneOf)),
        choice=next((mark for mark in beside if isinstance(mark, OneOf)), None),
        arms=tuple(annotation(arm) for arm in args if arm is not NoneType) if origin in {Union, UnionType} else (),
        literals=args if origin is Literal else (),
        item=annotation(args[0]) if origin is tuple else None,
        name=annotation(args[0]) if of_names else None,
        named=annotation(args[1]) if of_names else None,
        table=bare if isinstance(bare, type) and dataclasses.is_dataclass(bare) else None,
    )


@dataclass(frozen=True, slots=True)
class ModelField:
    """A field of a model class: its ``key`` in a file, its ``attribute``, its ``type``, and if it is ``optional``."""

    key: str
    attribute: str
    type: Any
    annotation: Annotation
    optional: bool
    default: Any


@cache
def fields_of(cls: type) -> Mapping[str, ModelField]:
    """Return the fields of a model class by the key they have in a file."""
    hints = get_type_hints(cls, include_extras=True)
    found = {}
    for field in dataclasses.fields(cls):
        key = field.name.rstrip("_")
        optional = field.default is not dataclasses.MISSING or field.default_factory is not dataclasses.MISSING
        wanted = hints[field.name]
        found[key] = ModelField(key, field.name, wanted, annotation(wanted), optional, field.default)
    return found


def models(*wanted: Any) -> Iterator[type]:
    """Yield every class of the model in the types ``wanted``, each once: a table before those that stand in it."""
    found: set[type] = set()
    waiting = [annotation(one) for one in wanted]
    while waiting:
        one = waiting.pop(0)
        if one.choice is not None:
            waiting[:0] = map(annotation, one.choice.choices.values())
        elif one.table is None:
            waiting[:0] = (*one.arms, *filter(None, (one.item, one.named)))
        elif one.table not in found:
            found.add(one.table)
            yield one.table
            waiting[:0] = [field.annotation for field in fields_of(one.table).values()]


@dataclass(frozen=True, slots=True)
class Seen:
    """Something the walk met: at ``path`` stands ``value``, which is a ``mark``.

    ``mark`` is the word beside the type ("count", "place" ...) or, for a table, the model class it is.
    """

    path: tuple[str | int, ...]
    mark: str | type
    value: Any


def walk(wanted: Any, value: Any) -> list[Seen]:
    """Return every mark and every table met in ``value``, which should be of the type ``wanted``, in their order.

    ``value`` is what stands in a file, right or not, or a value of the model. What is of another type than it should
    be is passed over: the validation says that. So is what may be left out and is.
    """
    seen: list[Seen] = []
    _walk(annotation(wanted), value, (), seen)
    return seen


def _walk(one: Annotation, value: Any, path: tuple[str | int, ...], seen: list[Seen]) -> None:
    if value is None:
        return
    if one.choice is not None:
        if (meant := one.choice.meant(value)) is not None:
            _walk(_of_class(meant), value, path, seen)
        return
    seen.extend(Seen(path, mark, value) for mark in one.marks)
    if one.arms:
        if isinstance(value, str | int) and any(value in arm.literals for arm in one.arms):
            return
        for arm in one.arms:
            _walk(arm, value, path, seen)
    elif one.table is not None and isinstance(value, dict | one.table):
        seen.append(Seen(path, one.table, value))
        for key, field in fields_of(one.table).items():
            inner = value.get(key) if isinstance(value, dict) else getattr(value, field.attribute)
            if not (inner == "" and field.default == ""):
                _walk(field.annotation, inner, (*path, key), seen)
    elif one.item is not None and isinstance(value, list | tuple):
        for place, item in enumerate(value):
            _walk(one.item, item, (*path, place), seen)
    elif one.name is not None and one.named is not None and isinstance(value, Mapping):
        for key, item in value.items():
            _walk(one.name, key, (*path, key), seen)
            _walk(one.named, item, (*path, key), seen)


@cache
def _of_class(cls: type) -> Annotation:
    return annotation(cls)
