"""What goes into a journal and what comes out: entries, rows, and the one way their bodies are written as text.

Nothing here knows what any event means.
"""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any, TypeAlias

from finishing_tui.garment.journal.errors import Unwritable

JSON: TypeAlias = "None | bool | int | float | str | Sequence[JSON] | Mapping[str, JSON]"
"""A value that JSON can hold. What is read back has lists for sequences and dictionaries for mappings."""

LARGEST = 2**63 - 1
"""The largest whole number a column holds (bodies hold larger ones)."""


@dataclass(frozen=True, slots=True)
class Entry:
    """One event to be written: what kind it is, the version of that kind's body, and the body."""

    kind: str
    version: int
    body: Mapping[str, JSON]


@dataclass(frozen=True, slots=True)
class Row:
    """One event as it stands in the journal."""

    seq: int
    """Its number: 1, 2, 3 ... without gaps."""
    group: int
    """The number of the first event that was written together with it, by the same command."""
    at: str
    """When, in universal time to the millisecond: ``2024-05-01T12:34:56.789Z``."""
    sitting: int
    """The number of the sitting."""
    after_ms: int
    """Milliseconds since that sitting began, by a clock that never jumps."""
    kind: str
    """What kind of event it is."""
    version: int
    """The version of that kind's body."""
    body: Mapping[str, JSON]
    """The body, read; whole numbers are ``int``. Not to be changed."""
    text: str
    """The body exactly as it is stored."""
    chain: str
    """The checksum over this row and, through the row before it, over all rows before (``chain.link``)."""


Raw: TypeAlias = tuple[int, int, str, int, int, str, int, str, str]
"""A row as its columns in order: seq, group, at, sitting, after_ms, kind, version, body text, chain."""


def raw(row: Row) -> Raw:
    """Return ``row`` as the columns of the table."""
    return (
        row.seq, row.group, row.at, row.sitting, row.after_ms, row.kind, row.version, row.text, row.chain,
    )  # fmt: skip


def row(columns: Raw) -> Row:
    """Return the row that the columns of the table make."""
    seq, group, at, sitting, after_ms, kind, version, text, chain = columns
    return Row(seq, group, at, sitting, after_ms, kind, version, json.loads(text), text, chain)


def written(body: JSON) -> str:
    """Return ``body`` as canonical JSON text: keys sorted, no spaces, characters as they are.

    Raises ``Unwritable`` for what would not come back the same: NaN and infinity, keys that are not text, half a
    character (a lone surrogate), nesting or numbers too large to read back, objects.
    """
    try:
        _keys_are_text(body)
        text = json.dumps(
            body, ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":"), default=_plain
        )
        text.encode()
        json.loads(text)
    except (ValueError, TypeError, RecursionError) as error:
        raise Unwritable(f"This cannot be written in a journal: {error}.") from error
    return text


def moment(at: datetime) -> str:
    """Return ``at`` as a row's text, cut to the millisecond. A time without a zone is a mistake: ``ValueError``."""
    if at.tzinfo is None:
        raise ValueError("the time of an event needs a time zone")
    return at.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def _plain(value: Any) -> Any:
    if isinstance(value, Mapping):
        return dict(value)
    if isinstance(value, Sequence) and not isinstance(value, bytes | bytearray | memoryview):
        return list(value)
    raise TypeError(f"a {type(value).__name__} is not a JSON value")


def _keys_are_text(value: Any) -> None:
    # json would quietly write the key 1 as "1", and sort_keys fails on a mixture.
    if isinstance(value, Mapping):
        for key, inner in value.items():
            if not isinstance(key, str):
                raise TypeError(f"the key {key!r} is not text")
            _keys_are_text(inner)
    elif isinstance(value, Sequence) and not isinstance(value, str):
        for inner in value:
            _keys_are_text(inner)
