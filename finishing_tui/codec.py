"""Frozen dataclasses to plain JSON values and back, for what this program itself wrote.

The journal must be read at the start of every sitting, and importing a validation library for that costs more than
reading it (design.md, sections 3 and 11). So this small module does just what the journal needs: it rebuilds the
dataclasses, and refuses what is of another type. A checksum vouches for the values to be as they were written, not for
who wrote them, so text is made inert on its way in and no number is longer than any of ours. What values mean together
is looked at by ``garment.meaning``; files that people write go through ``recipe.reader``.

Rules: a dataclass becomes an object of all the fields it is made from, with its class in ``"is"``, so that a default
changed later cannot change what was stored; tuples become lists; mappings keep their string keys. Nothing else is
stored: a ratio is text in the model already. A field that is missing when read takes its default: that is how a field
can be added.
"""

import dataclasses
import types
import typing
from collections.abc import Callable, Mapping
from functools import cache
from types import MappingProxyType
from typing import Any, TypeAlias, TypeVar, cast

from finishing_tui.craft.errors import FinishingError
from finishing_tui.inert import inert

T = TypeVar("T")

LARGEST = 2**53
"""The largest whole number that is read: counts stay under a million, milliseconds of a sitting far under this."""


LONGEST = 2**18
"""Characters in the longest text that is read: no file that people write is larger, and those are stored whole."""


class Unreadable(ValueError):
    """A stored value does not fit the type it was read as; whoever reads a journal turns this into a sentence."""


def encode(value: Any) -> Any:
    """Return ``value`` as JSON values (dict, list, str, int, bool, None); raises ``TypeError`` for anything else."""
    if value is None or isinstance(value, bool | int | str):
        return value
    if isinstance(value, tuple):
        return [item if type(item) in _AS_THEY_ARE else encode(item) for item in value]
    if isinstance(value, Mapping):
        return {str(key): encode(item) for key, item in value.items()}
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        plain: dict[str, Any] = {"is": type(value).__name__}
        for field in dataclasses.fields(value):
            if field.init:
                item = getattr(value, field.name)
                plain[field.name] = item if type(item) in _AS_THEY_ARE else encode(item)
        return plain
    raise TypeError(f"{type(value).__name__} cannot be stored")


def decode(wanted: type[T], plain: Any) -> T:
    """Return ``plain`` (what ``encode`` gave) as a value of the type ``wanted``.

    Raises ``Unreadable`` when it does not fit.
    """
    return cast("T", _reader(cast("Any", wanted))(plain))


Reader: TypeAlias = Callable[[Any], Any]
"""Rebuilds a value of one type from plain JSON values, or raises ``Unreadable``."""

_AS_THEY_ARE = (int, str, bool, type(None))
"""What JSON holds as it is."""


@cache
def _reader(wanted: Any) -> Reader:
    """Return what reads values of a type. It is made once a type: asking what a type is costs more than reading."""
    origin = typing.get_origin(wanted)
    if origin in {typing.Union, types.UnionType}:
        return _union(typing.get_args(wanted))
    if origin is typing.Literal:
        return _literal(typing.get_args(wanted))
    if origin is tuple:
        return _tuple(typing.get_args(wanted))
    if origin is not None and issubclass(origin, Mapping):
        return _mapping(typing.get_args(wanted)[1])
    if dataclasses.is_dataclass(wanted):
        return _dataclass(cast("type", wanted))
    if wanted is None or wanted in _AS_THEY_ARE:
        return _as_it_is(type(None) if wanted is None else wanted)
    raise Unreadable(f"nothing of the type {wanted} is ever stored")


def _as_it_is(wanted: type) -> Reader:
    def read(plain: Any) -> Any:
        if type(plain) is not wanted:
            raise Unreadable(f"{_kind(plain)} is not {_named(wanted)}")
        return _taken(plain)

    return read


def _taken(plain: Any) -> Any:
    """Return a text, whole number, truth value or None that was stored, fit to be shown and reckoned with."""
    if type(plain) is str:
        if len(plain) > LONGEST:
            raise Unreadable("a text is longer than any that is stored")
        return inert(plain)
    if type(plain) is int and not -LARGEST <= plain <= LARGEST:
        raise Unreadable("a number is longer than any that is stored")
    return plain


def _kind(plain: Any) -> str:
    """Name what was found, not its value: that may be long, and comes from anyone."""
    return f"a {type(plain).__name__}"


def _named(wanted: Any) -> str:
    return getattr(wanted, "__name__", str(wanted))


def _literal(words: tuple[Any, ...]) -> Reader:
    kinds = {type(word) for word in words}  # else True would do for 1

    def read(plain: Any) -> Any:
        if isinstance(plain, list | dict) or plain not in words or type(plain) not in kinds:
            raise Unreadable(f"{_kind(plain)} is none of {words}")
        return plain

    return read


def _union(choices: tuple[Any, ...]) -> Reader:
    named: list[Any] = [choice for choice in choices if dataclasses.is_dataclass(choice)]
    classes: dict[str, Reader] = {choice.__name__: _reader(choice) for choice in named}
    as_they_are = tuple(choice for choice in choices if choice in _AS_THEY_ARE)
    readers = tuple(_reader(choice) for choice in choices if choice not in _AS_THEY_ARE)

    def read(plain: Any) -> Any:
        if type(plain) in as_they_are:
            return _taken(plain)
        name = plain.get("is") if isinstance(plain, dict) else None
        if isinstance(name, str) and name in classes:
            return classes[name](plain)
        for reader in readers:
            try:
                return reader(plain)
            except Unreadable:
                continue
        raise Unreadable(f"{_kind(plain)} is none of {', '.join(map(_named, choices))}")

    return read


def _tuple(items: tuple[Any, ...]) -> Reader:
    if len(items) == 2 and items[1] is Ellipsis:
        item = _reader(items[0])

        def read_many(plain: Any) -> Any:
            if not isinstance(plain, list):
                raise Unreadable(f"{_kind(plain)} is not a list")
            return tuple([item(value) for value in plain])

        return read_many
    readers = tuple(_reader(wanted) for wanted in items)

    def read(plain: Any) -> Any:
        if not isinstance(plain, list) or len(plain) != len(readers):
            raise Unreadable(f"{_kind(plain)} is not a list of {len(readers)}")
        return tuple([reader(value) for reader, value in zip(readers, plain, strict=True)])

    return read


def _mapping(item: Any) -> Reader:
    reader = _reader(item)

    def read(plain: Any) -> Any:
        if not isinstance(plain, dict):
            raise Unreadable(f"{_kind(plain)} is not a table")
        return MappingProxyType({inert(key): reader(value) for key, value in plain.items()})

    return read


def _dataclass(wanted: type) -> Reader:
    name, readers = wanted.__name__, dict[str, Reader]()

    def read(plain: Any) -> Any:
        if not isinstance(plain, dict) or plain.get("is", name) != name:
            raise Unreadable(f"{_kind(plain)} is not a {name}")
        if not readers:  # only now: most kinds of steps and events are in no one garment
            hints = typing.get_type_hints(wanted)
            readers.update((one.name, _reader(hints[one.name])) for one in dataclasses.fields(wanted) if one.init)
        try:
            return wanted(**{key: readers[key](value) for key, value in plain.items() if key != "is"})
        except Unreadable:
            raise
        except KeyError as error:
            raise Unreadable(f"{name} has no such field") from error
        except (TypeError, ValueError, ArithmeticError, FinishingError) as error:
            raise Unreadable(f"a {name} of these fields there cannot be") from error

    return read
