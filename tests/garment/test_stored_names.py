"""What is on disk keeps its names: the whole table of classes, versions, fields and words is pinned in a text file."""

import dataclasses
import types
import typing
from collections.abc import Iterator
from enum import Enum
from pathlib import Path
from typing import Any

from finishing_tui.codec import Stored
from finishing_tui.garment.events import Event
from finishing_tui.garment.state import State
from finishing_tui.garment.stored_names import OTHERWISE, STORED

PINNED = Path(__file__).parent / "stored_names.txt"
"""Every stored class with its version and what its fields are called, and the words that a field may hold."""


def words(wanted: Any) -> Iterator[str]:
    """Yield the words and numbers that values of a type are chosen from, where it is a choice."""
    if typing.get_origin(wanted) is typing.Literal:
        yield from (repr(word) for word in typing.get_args(wanted))
    elif isinstance(wanted, type) and issubclass(wanted, Enum):
        yield from (repr(member.value) for member in wanted)
    else:
        for inner in typing.get_args(wanted):
            yield from words(inner)


def lines() -> Iterator[str]:
    """Yield the table as the file has it."""
    for cls, stored in sorted(STORED.items(), key=lambda one: (one[1].name, one[0].__module__)):
        yield f"{stored.name} {stored.version}"
        hints = typing.get_type_hints(cls)
        for field in dataclasses.fields(cls):
            if field.init:
                choice = " ".join(words(hints[field.name]))
                yield f"  {stored.fields.get(field.name, field.name)}" + (f": {choice}" if choice else "")


def types_in(wanted: Any, seen: set[Any]) -> Iterator[Any]:
    """Yield every type there is in values of a type, itself among them; each once."""
    if wanted in seen:
        return
    seen.add(wanted)
    yield wanted
    inner = typing.get_args(wanted)
    if dataclasses.is_dataclass(wanted):
        hints = typing.get_type_hints(wanted)
        inner = tuple(hints[field.name] for field in dataclasses.fields(wanted) if field.init)
    for one in inner:
        yield from types_in(one, seen)


ALL = tuple(types_in(Event | State, set()))
"""Every type there is in what is stored."""


def test_stored_names_fields_and_words_never_change() -> None:
    """A journal of today is read for ever: no line of the file changes or goes without a new version and an upcast.

    A class or field may be renamed in the code; its stored name then goes into the table. What is new gets its line in
    the file; a field that is new has a default.
    """
    assert PINNED.read_text(encoding="utf-8").splitlines() == list(lines())


def test_every_class_that_is_stored_is_in_the_table() -> None:
    """None is missing, and none stands there that is never stored."""
    assert {one for one in ALL if dataclasses.is_dataclass(one)} == set(STORED)


def test_a_class_has_a_line_of_its_own_only_where_it_is_otherwise() -> None:
    """Every such line is for a class that is stored, and says another name, other fields or an older version."""
    assert set(OTHERWISE) <= set(STORED)
    assert all(stored != Stored(cls.__name__) for cls, stored in OTHERWISE.items())


def test_a_name_says_which_class_it_is_wherever_there_is_a_choice() -> None:
    """Two classes share a stored name only where no value can be either."""
    for choice in ALL:
        if typing.get_origin(choice) in {typing.Union, types.UnionType}:
            names = [STORED[cls].name for cls in typing.get_args(choice) if cls in STORED]
            assert len(set(names)) == len(names)
