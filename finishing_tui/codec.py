"""Frozen dataclasses to plain JSON values and back, for what this program itself wrote.

The journal must be read at the start of every sitting, and importing a validation library for that costs more than
reading it (design.md, sections 3 and 11). So this small module does just what the journal needs: it rebuilds the
dataclasses from values that a checksum has already vouched for. It is not a validator: files that people write go
through ``recipe.reader``.

Rules: a dataclass becomes an object of all its fields, with its class in ``"is"``, so that a default changed later
cannot change what was stored; tuples become lists; mappings keep their string keys. Nothing else is stored: a ratio is
text in the model already. A field that is missing when read takes its default: that is how a field can be added.
"""

import dataclasses
import types
import typing
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any, TypeVar, cast

T = TypeVar("T")


class Unreadable(ValueError):
    """A stored value does not fit the type it was read as; whoever reads a journal turns this into a sentence."""


def encode(value: Any) -> Any:
    """Return ``value`` as JSON values (dict, list, str, int, bool, None); raises ``TypeError`` for anything else."""
    if value is None or isinstance(value, bool | int | str):
        return value
    if isinstance(value, tuple):
        return [encode(item) for item in value]
    if isinstance(value, Mapping):
        return {str(key): encode(item) for key, item in value.items()}
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        plain = {field.name: encode(getattr(value, field.name)) for field in dataclasses.fields(value)}
        return {"is": type(value).__name__, **plain}
    raise TypeError(f"{type(value).__name__} cannot be stored")


def decode(wanted: type[T], plain: Any) -> T:
    """Return ``plain`` (what ``encode`` gave) as a value of the type ``wanted``.

    Raises ``Unreadable`` when it does not fit.
    """
    return cast("T", _decode(wanted, plain))


@cache
def _fields(cls: type) -> dict[str, Any]:
    """Return the fields of a dataclass with their resolved types; cached, since resolving is what costs."""
    hints = typing.get_type_hints(cls)
    return {field.name: hints[field.name] for field in dataclasses.fields(cls) if field.init}


def _decode(wanted: Any, plain: Any) -> Any:
    origin = typing.get_origin(wanted)
    if origin in {typing.Union, types.UnionType}:
        return _decode_union(typing.get_args(wanted), plain)
    if origin is typing.Literal:
        if plain in typing.get_args(wanted):
            return plain
    elif origin is tuple:
        return _decode_tuple(typing.get_args(wanted), plain)
    elif origin is not None and issubclass(origin, Mapping):
        if isinstance(plain, dict):
            item = typing.get_args(wanted)[1]
            return MappingProxyType({key: _decode(item, value) for key, value in plain.items()})
    elif isinstance(wanted, type) and dataclasses.is_dataclass(wanted):
        return _decode_dataclass(wanted, plain)
    elif wanted is None or wanted is type(None):
        if plain is None:
            return None
    elif isinstance(wanted, type) and type(plain) is wanted:
        return plain
    raise Unreadable(f"{plain!r} is not a {wanted}")


def _decode_union(choices: tuple[Any, ...], plain: Any) -> Any:
    if isinstance(plain, dict) and "is" in plain:
        for choice in choices:
            if isinstance(choice, type) and dataclasses.is_dataclass(choice) and choice.__name__ == plain["is"]:
                return _decode_dataclass(choice, plain)
    for choice in choices:
        try:
            return _decode(choice, plain)
        except Unreadable:
            continue
    raise Unreadable(f"{plain!r} is none of {choices}")


def _decode_tuple(items: tuple[Any, ...], plain: Any) -> tuple[Any, ...]:
    if not isinstance(plain, list):
        raise Unreadable(f"{plain!r} is not a list")
    if len(items) == 2 and items[1] is Ellipsis:
        return tuple(_decode(items[0], item) for item in plain)
    if len(items) != len(plain):
        raise Unreadable(f"{plain!r} does not have {len(items)} parts")
    return tuple(_decode(wanted, item) for wanted, item in zip(items, plain, strict=True))


def _decode_dataclass(wanted: type, plain: Any) -> Any:
    if not isinstance(plain, dict) or plain.get("is", wanted.__name__) != wanted.__name__:
        raise Unreadable(f"{plain!r} is not a {wanted.__name__}")
    fields = _fields(wanted)
    given = {key: value for key, value in plain.items() if key != "is"}
    if unknown := given.keys() - fields.keys():
        raise Unreadable(f"{wanted.__name__} has no {', '.join(sorted(unknown))}")
    try:
        return wanted(**{name: _decode(fields[name], value) for name, value in given.items()})
    except Unreadable:
        raise
    except (TypeError, ValueError) as error:  # a key too few, or values that do not go together
        raise Unreadable(str(error)) from error
