"""Events and snapshots as the journal stores them, and how those of older programs are read.

The journal stores a kind, a version and a body. What each class is stored as, in which version, and how older versions
become the next stands in ``stored_names``. What is on disk is never rewritten.
"""

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType
from typing import Any, get_args

from finishing_tui.codec import VERSION, Codec, Unreadable
from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.events import Event
from finishing_tui.garment.evolve import Happening
from finishing_tui.garment.journal import NewEvent, NoJSON, Row, is_moment
from finishing_tui.garment.state import State
from finishing_tui.garment.stored_names import STORED

SNAPSHOT = 1
"""The version of snapshots; an older one is dropped, for a snapshot is only a cache."""

_KINDS: Mapping[str, type[Event]] = MappingProxyType({STORED[kind].name: kind for kind in get_args(Event)})
VERSIONS: Mapping[str, int] = MappingProxyType({name: STORED[kind].version for name, kind in _KINDS.items()})
"""The version each kind of event is written in."""

_CODEC = Codec(STORED)
encode, decode = _CODEC.encode, _CODEC.decode

LONGEST_KIND = 40
"""Characters of an unknown kind that are said."""


class NotUnderstood(FinishingError):
    """The journal holds an event that this program does not know."""


def to_store(events: Iterable[Event]) -> tuple[NewEvent, ...]:
    """Return ``events`` as the journal stores them."""
    return tuple(NewEvent(STORED[type(event)].name, STORED[type(event)].version, encode(event)) for event in events)


def from_row(row: Row) -> Happening:
    """Return what a row of the journal says happened. Raises ``NotUnderstood`` for an event of a later program."""
    kind = _KINDS.get(row.kind)
    if kind is None or row.version > VERSIONS[row.kind]:
        raise NotUnderstood(
            f"this garment was worked with a later version of finishing (event {row.seq} is of the kind "
            f"{row.kind[:LONGEST_KIND]!r}, version {row.version}); open it with that version"
        )
    try:
        return _read(kind, row)
    except (Unreadable, NoJSON) as error:
        raise NotUnderstood(
            f"event {row.seq} of this garment's journal is whole, but this version of finishing cannot read it; "
            "open it with the version that wrote it"
        ) from error


def _read(kind: type[Event], row: Row) -> Happening:
    if row.version < 1 or row.after_ms < 0 or not is_moment(row.at):
        raise Unreadable("its version or its time is none that is ever written")
    body = row.body
    if not isinstance(body, dict) or body.get(VERSION, 1) != row.version:
        raise Unreadable("its body is of another version than it says")
    return Happening(row.group, row.at, row.after_ms, decode(kind, body))


def happenings(rows: Iterable[Row]) -> Iterator[Happening]:
    """Return what rows of the journal say happened, in order."""
    return (from_row(row) for row in rows)


def snapshot_of(state: State) -> Any:
    """Return the state as JSON values."""
    return encode(state)


def state_of(snapshot: Any) -> State:
    """Return the state a snapshot holds. Raises ``codec.Unreadable`` when it is not one."""
    return decode(State, snapshot)
