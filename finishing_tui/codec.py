"""Frozen dataclasses to plain JSON values and back, for what this program itself wrote.

The journal must be read at the start of every sitting, and importing a validation library for that costs more than
reading it (design.md, sections 3 and 11). So this small module does just what the journal needs: it rebuilds the
dataclasses, and refuses what is of another type. A checksum vouches for the values to be as they were written, not for
who wrote them, so text is made inert on its way in and no number is longer than any of ours. What values mean together
is looked at by ``garment.meaning``; files that people write go through ``recipe.reader``.

Rules: a dataclass becomes an object of all the fields it is made from, with the name it is stored under in ``"is"``, so
that a default changed later cannot change what was stored; tuples become lists; mappings keep their string keys; a
member of an enum becomes its value. Nothing else is stored: a ratio is text in the model already. A field that is
missing when read takes its default: that is how a field can be added.

What a class and its fields are stored as stands in a table (``Stored``), apart from what they are called in the code.
A value of a later version than the first says so in ``"v"``; an older one is brought up to date wherever it is nested.
"""

import dataclasses
import types
import typing
from collections.abc import Callable, Mapping
from enum import Enum
from types import MappingProxyType
from typing import Any, TypeAlias, TypeVar, cast

from finishing_tui.craft.errors import FinishingError
from finishing_tui.inert import inert

T = TypeVar("T")

LARGEST = 2**53
"""The largest whole number that is read: counts stay under a million, milliseconds of a sitting far under this."""


LONGEST = 2**18
"""Characters in the longest text that is read: no file that people write is larger, and those are stored whole."""


IS, VERSION = "is", "v"
"""The keys beside the fields: the name a value is stored under, and its version where that is above 1."""

_BESIDE = frozenset((IS, VERSION))


class Unreadable(ValueError):
    """A stored value does not fit the type it was read as; whoever reads a journal turns this into a sentence."""


Upcast: TypeAlias = Callable[[Mapping[str, Any]], Mapping[str, Any]]
"""Turns a stored object of one version into the next: its fields as they were stored, what is in them as old as it is.

It never looks at the time or works anything out that might come out otherwise one day.
"""


@dataclasses.dataclass(frozen=True, slots=True)
class Stored:
    """How values of a class are stored.

    ``name``: what they are called there, for ever; ``upcasts``: from version 1 to 2, from 2 to 3, and so on, so that
    there is one fewer than versions; ``fields``: what fields are called there that have another name in the code.
    """

    name: str
    upcasts: tuple[Upcast, ...] = ()
    fields: Mapping[str, str] = dataclasses.field(default_factory=dict)

    @property
    def version(self) -> int:
        """The version that is written."""
        return len(self.upcasts) + 1


Reader: TypeAlias = Callable[[Any], Any]
"""Rebuilds a value of one type from plain JSON values, or raises ``Unreadable``."""

_AS_THEY_ARE = (int, str, bool, type(None))
"""What JSON holds as it is."""


class Codec:
    """Stores values of the classes in a table, and reads them again."""

    def __init__(self, table: Mapping[type, Stored]) -> None:
        self._table = table
        self._written: dict[type, tuple[dict[str, Any], tuple[tuple[str, str], ...]]] = {}
        self._readers: dict[Any, Reader] = {}

    def encode(self, value: Any) -> Any:
        """Return ``value`` as JSON values (dict, list, str, int, bool, None); raises ``TypeError`` for any other."""
        if isinstance(value, Enum):
            return value.value
        if value is None or isinstance(value, bool | int | str):
            return value
        if isinstance(value, tuple):
            return [self.encode(item) for item in value]
        if type(value) in self._table:
            head, fields = self._written.get(type(value)) or self._writes(type(value))
            return {**head, **{key: self.encode(getattr(value, field)) for field, key in fields}}
        if isinstance(value, Mapping):
            return {str(key): self.encode(item) for key, item in value.items()}
        raise TypeError(f"{type(value).__name__} cannot be stored")

    def _writes(self, cls: type) -> tuple[dict[str, Any], tuple[tuple[str, str], ...]]:
        """Return what every value of a class is stored with, and its (field, key) pairs. It is worked out once."""
        stored = self._table[cls]
        head = {IS: stored.name} if stored.version == 1 else {IS: stored.name, VERSION: stored.version}
        self._written[cls] = head, tuple((field, key) for key, field in _keys(cls, stored).items())
        return self._written[cls]

    def decode(self, wanted: type[T], plain: Any) -> T:
        """Return ``plain`` (what ``encode`` gave) as a value of the type ``wanted``.

        Raises ``Unreadable`` when it does not fit.
        """
        try:
            return cast("T", self._reader(cast("Any", wanted))(plain))
        except RecursionError as error:  # a value of a class may hold one of the same class
            raise Unreadable("values are nested deeper than any that are stored") from error

    def _reader(self, wanted: Any) -> Reader:
        """Return what reads values of a type. It is made once a type: asking what a type is costs more than reading."""
        if wanted not in self._readers:
            self._readers[wanted] = self._made(wanted)
        return self._readers[wanted]

    def _made(self, wanted: Any) -> Reader:
        origin = typing.get_origin(wanted)
        if origin in {typing.Union, types.UnionType}:
            return self._union(typing.get_args(wanted))
        if origin is typing.Literal:
            return _one_of({word: word for word in typing.get_args(wanted)})
        if origin is tuple:
            return self._tuple(typing.get_args(wanted))
        if origin is not None and issubclass(origin, Mapping):
            return self._mapping(typing.get_args(wanted)[1])
        if isinstance(wanted, typing.NewType):
            return self._reader(wanted.__supertype__)
        if wanted in self._table:
            return self._dataclass(wanted, self._table[wanted])
        if isinstance(wanted, type) and issubclass(wanted, Enum):
            return _one_of({member.value: member for member in wanted})
        if wanted is None or wanted in _AS_THEY_ARE:
            return _as_it_is(type(None) if wanted is None else wanted)
        raise Unreadable(f"nothing of the type {wanted} is ever stored")

    def _union(self, choices: tuple[Any, ...]) -> Reader:
        classes = {self._table[choice].name: self._reader(choice) for choice in choices if choice in self._table}
        as_they_are = tuple(choice for choice in choices if choice in _AS_THEY_ARE)
        readers = tuple(self._reader(choice) for choice in choices if choice not in _AS_THEY_ARE)

        def read(plain: Any) -> Any:
            if type(plain) in as_they_are:
                return _taken(plain)
            name = plain.get(IS) if isinstance(plain, dict) else None
            if isinstance(name, str) and name in classes:
                return classes[name](plain)
            for reader in readers:
                try:
                    return reader(plain)
                except Unreadable:
                    continue
            raise Unreadable(f"{_kind(plain)} is none of {', '.join(map(_named, choices))}")

        return read

    def _tuple(self, items: tuple[Any, ...]) -> Reader:
        if len(items) == 2 and items[1] is Ellipsis:
            item = self._reader(items[0])

            def read_many(plain: Any) -> Any:
                if not isinstance(plain, list):
                    raise Unreadable(f"{_kind(plain)} is not a list")
                return tuple([item(value) for value in plain])

            return read_many
        readers = tuple(self._reader(wanted) for wanted in items)

        def read(plain: Any) -> Any:
            if not isinstance(plain, list) or len(plain) != len(readers):
                raise Unreadable(f"{_kind(plain)} is not a list of {len(readers)}")
            return tuple([reader(value) for reader, value in zip(readers, plain, strict=True)])

        return read

    def _mapping(self, item: Any) -> Reader:
        reader = self._reader(item)

        def read(plain: Any) -> Any:
            if not isinstance(plain, dict):
                raise Unreadable(f"{_kind(plain)} is not a table")
            return MappingProxyType({inert(key): reader(value) for key, value in plain.items()})

        return read

    def _dataclass(self, wanted: type, stored: Stored) -> Reader:
        name, version, readers, fields = stored.name, stored.version, dict[str, Reader](), dict[str, str]()
        same = not stored.fields

        def read(plain: Any) -> Any:
            if not isinstance(plain, dict) or plain.get(IS, name) != name:
                raise Unreadable(f"{_kind(plain)} is not a {name}")
            if not readers:  # only now: most kinds of steps and events are in no one garment
                hints = typing.get_type_hints(wanted)
                fields.update(_keys(wanted, stored))
                found = {key: self._reader(hints[field]) for key, field in fields.items()}
                readers.update(found)  # all at once: another thread may be reading too
            try:
                if plain.get(VERSION, 1) != version:
                    plain = _brought_up(plain, stored)
                found = {key: readers[key](value) for key, value in plain.items() if key not in _BESIDE}
                return wanted(**(found if same else {fields[key]: value for key, value in found.items()}))
            except Unreadable:
                raise
            except KeyError as error:
                raise Unreadable(f"{name} has no such field") from error
            except (TypeError, ValueError, ArithmeticError, LookupError, AttributeError, FinishingError) as error:
                raise Unreadable(f"a {name} of these fields there cannot be") from error

        return read


def _keys(cls: type, stored: Stored) -> dict[str, str]:
    """Return the fields a value of a class is made from, by what each is stored as."""
    names = (field.name for field in dataclasses.fields(cls) if field.init)
    return {stored.fields.get(name, name): name for name in names}


def _brought_up(plain: Mapping[str, Any], stored: Stored) -> Mapping[str, Any]:
    """Return a stored object of an older version as this one has it; raises ``Unreadable`` for one of a later one."""
    version = plain.get(VERSION, 1)
    if type(version) is not int or not 1 <= version < stored.version:
        raise Unreadable(f"a {stored.name} of this version is not known here")
    for upcast in stored.upcasts[version - 1 :]:
        plain = upcast(plain)
    return plain


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


def _one_of(meant: Mapping[Any, Any]) -> Reader:
    """Return what reads one of a few words as what it means."""
    kinds = {type(word) for word in meant}  # else True would do for 1

    def read(plain: Any) -> Any:
        if type(plain) not in kinds or plain not in meant:
            raise Unreadable(f"{_kind(plain)} is none of {tuple(meant)}")
        return meant[plain]

    return read
