"""Walks the types of the recipe model and the values of a file side by side.

The model says what may stand where, and marks what a text refers to. These functions are the only place that looks
at its type annotations, so that neither the sentences nor the checks of references know any kind of step by name.
"""

import ast
import dataclasses
import inspect
import textwrap
import types
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

from finishing_tui.recipe.keys import OneOf
from finishing_tui.recipe.reader.errors import Path


@dataclass(frozen=True, slots=True)
class Field:
    """A field of a model class as a file has it: its ``key``, its ``type``, and whether it may be left out."""

    key: str
    type: Any
    optional: bool
    default: Any


@dataclass(frozen=True, slots=True)
class Seen:
    """Something the walk met: at ``path`` stands ``value``, which is a ``mark``.

    ``mark`` is the word beside the type ("count", "place" ...) or, for a table, the model class it is.
    """

    path: Path
    mark: str | type
    value: Any


@cache
def fields_of(cls: type) -> Mapping[str, Field]:
    """Return the fields of a model class by the key they have in a file."""
    hints = get_type_hints(cls, include_extras=True)
    found = {}
    for field in dataclasses.fields(cls):
        key = field.name.rstrip("_")
        optional = field.default is not dataclasses.MISSING or field.default_factory is not dataclasses.MISSING
        found[key] = Field(key, hints[field.name], optional, field.default)
    return found


def is_model(wanted: Any) -> bool:
    """Return whether ``wanted`` is a class of the recipe model."""
    return isinstance(wanted, type) and dataclasses.is_dataclass(wanted)


def arms(wanted: Any) -> tuple[Any, ...]:
    """Return what a type may be: the arms of a union but ``None``, or the type alone."""
    if get_origin(wanted) in {Union, types.UnionType}:
        return tuple(arm for arm in get_args(wanted) if arm is not types.NoneType)
    return (wanted,)


def bare(wanted: Any) -> tuple[Any, tuple[Any, ...]]:
    """Return a type without what is annotated to it, and that."""
    if get_origin(wanted) is Annotated:
        inner, *marks = get_args(wanted)
        return inner, tuple(marks)
    return wanted, ()


def one_of(marks: tuple[Any, ...]) -> OneOf | None:
    """Return the ``OneOf`` among ``marks``, if there is one."""
    return next((mark for mark in marks if isinstance(mark, OneOf)), None)


def walk(wanted: Any, value: Any, path: Path = ()) -> Iterator[Seen]:
    """Yield every mark and every table of a model class met in ``value``, which should be of the type ``wanted``.

    What is of another type than it should be is passed over: the validation tells that.
    """
    inner, marks = bare(wanted)
    choice = one_of(marks)
    if choice is not None:
        name = choice.told(value)
        if name is not None:
            yield from walk(choice.choices[name], value, path)
        return
    for mark in marks:
        yield Seen(path, mark, value)
    choices = arms(inner)
    if len(choices) > 1 or choices[0] is not inner:
        if any(get_origin(arm) is Literal and value in get_args(arm) for arm in choices if _hashable(value)):
            return
        for arm in choices:
            yield from walk(arm, value, path)
    elif is_model(inner) and isinstance(value, dict):
        yield Seen(path, inner, value)
        for key, field in fields_of(inner).items():
            if key in value and not (value[key] == "" and field.default == ""):
                yield from walk(field.type, value[key], (*path, key))
    elif get_origin(inner) is tuple and isinstance(value, list):
        for place, item in enumerate(value):
            yield from walk(get_args(inner)[0], item, (*path, place))
    elif _is_mapping(inner) and isinstance(value, dict):
        for key, item in value.items():
            yield from walk(get_args(inner)[0], key, (*path, key))
            yield from walk(get_args(inner)[1], item, (*path, key))


def settle(wanted: Any, value: Any, loc: Path) -> tuple[Path, Any, Any, type | None] | None:
    """Turn a place as the validation gives it (with the names of union arms in it) into one of the file.

    Returns the path, the type wanted there, the value that stands there (``None`` if nothing does), and the model
    class whose key is the last part of the path (``None`` where it is not a key of one). Returns ``None`` for the
    complaint of an arm that was not meant: where a list stands and may stand, only its entries can be wrong.
    """
    path: Path = ()
    owner: type | None = None
    rest = list(loc)
    while rest:
        inner, marks = bare(wanted)
        choice = one_of(marks)
        if choice is not None:
            wanted = choice.choices[str(rest.pop(0))]
        elif len(choices := arms(inner)) > 1:
            listed = next((arm for arm in choices if get_origin(bare(arm)[0]) is tuple), None)
            nested = next((arm for arm in choices if len(arms(bare(arm)[0])) > 1), None)
            if not isinstance(value, list) or (listed or nested) is None:
                break
            if isinstance(rest[-1], str):
                return None
            rest.pop(0)
            wanted = listed or nested
        elif choices[0] is not inner:
            wanted = choices[0]
        else:
            part = rest.pop(0)
            path = (*path, part)
            wanted, owner = _within(inner, part)
            value = _at(value, part)
    return path, wanted, value, owner


def _within(inner: Any, part: str | int) -> tuple[Any, type | None]:
    """Return the type of what stands at ``part`` of the type ``inner``, and ``inner`` if it is a model class."""
    if is_model(inner):
        field = fields_of(inner).get(str(part))
        return (field.type if field else None), inner
    return get_args(inner)[0 if get_origin(inner) is tuple else 1], None


def _at(value: Any, part: str | int) -> Any:
    if isinstance(value, dict):
        return value.get(part)
    if isinstance(value, list) and isinstance(part, int) and part < len(value):
        return value[part]
    return None


def _is_mapping(inner: Any) -> bool:
    origin = get_origin(inner)
    return isinstance(origin, type) and issubclass(origin, Mapping)


def _hashable(value: Any) -> bool:
    return isinstance(value, str | int)


@cache
def meanings(cls: type) -> Mapping[str, str]:
    """Return what each key of a model class means: the text under its field in the source, as part of a sentence.

    Empty where the source is not at hand.
    """
    found: dict[str, str] = {}
    for base in reversed(cls.__mro__[:-1]):
        try:
            tree = ast.parse(textwrap.dedent(inspect.getsource(base)))
        except (OSError, TypeError):
            continue
        body = tree.body[0].body if isinstance(tree.body[0], ast.ClassDef) else []
        for field, text in pairwise(body):
            if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name):
                said = text.value.value if isinstance(text, ast.Expr) and isinstance(text.value, ast.Constant) else ""
                found[field.target.id.rstrip("_")] = _clause(str(said))
    return found


def _clause(text: str) -> str:
    first = " ".join(text.split()).split(". ")[0].replace("``", "'").rstrip(".")
    return first[:1].lower() + first[1:]
