"""What goes into a journal and what comes out: entries, rows, and the one way their bodies are written as text.

Nothing here knows what any event means.
"""

import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any, NamedTuple, TypeAlias

from finishing_tui.garment.journal.door import MOST_IN_BODY
from finishing_tui.garment.journal.errors import NoJSON, NotSaved, Unwritable

JSON: TypeAlias = "None | bool | int | float | str | Sequence[JSON] | Mapping[str, JSON]"
"""A value that JSON can hold. What is read back has lists for sequences and dictionaries for mappings."""

LARGEST = 2**63 - 1
"""The largest whole number a column holds (bodies hold larger ones)."""


_MOMENT = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\.[0-9]{3}Z")


@dataclass(frozen=True, slots=True)
class NewEvent:
    """One event to be written: what kind it is, the version of that kind's body, and the body."""

    kind: str
    version: int
    body: Mapping[str, JSON]


class Row(NamedTuple):
    """One event as it stands in the journal: the columns of the table, in order."""

    seq: int
    """Its number: 1, 2, 3 ... without gaps."""
    group: int
    """The number of the first event that was written together with it, by the same command or a key held down."""
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
    text: str
    """The body exactly as it is stored."""
    chain: str
    """The checksum over this row and, through the row before it, over all rows before (``chain.link``)."""

    @property
    def body(self) -> Any:
        """The body, read anew each time it is asked for; whole numbers are ``int``. Raises ``NoJSON``.

        The chain proves that a body is as it was written, not that it was written by this program.
        """
        return parsed(self.text)


TYPES = tuple(Row.__annotations__.values())
"""What the columns of a row are."""


def parsed(text: str) -> Any:
    """Return the value that a stored JSON text holds. Raises ``NoJSON`` with what is wrong, in words."""
    try:
        return json.loads(text)
    except RecursionError:
        raise NoJSON("it is nested too deep") from None
    except ValueError as error:  # no JSON, or a number of more digits than Python reads
        raise NoJSON("a number in it is too long" if "digits" in str(error) else "it is not JSON") from None


def written(body: JSON) -> str:
    """Return ``body`` as canonical JSON text: keys sorted, no spaces, characters as they are.

    Raises ``Unwritable`` for what would not come back the same: NaN and infinity, keys that are not text, half a
    character (a lone surrogate), nesting or numbers too large to read back, objects, more than ``MOST_IN_BODY`` bytes.
    """
    try:
        _keys_are_text(body)
        text = json.dumps(
            body, ensure_ascii=False, allow_nan=False, sort_keys=True, separators=(",", ":"), default=_plain
        )
        size = len(text.encode())
        json.loads(text)
    except (ValueError, TypeError, RecursionError) as error:
        raise Unwritable(f"This cannot be written in a journal: {error}.") from error
    if size > MOST_IN_BODY:
        raise Unwritable(f"This has {size:,} bytes, and a journal takes up to {MOST_IN_BODY:,} at a time.")
    return text


def is_moment(text: str) -> bool:
    """Say whether ``text`` is a moment as ``moment`` writes it, and one that every clock can show."""
    if not _MOMENT.fullmatch(text):
        return False
    try:
        return 1900 <= datetime.fromisoformat(text).year < 9999
    except ValueError:
        return False


def moment(at: datetime) -> str:
    """Return ``at`` as a row's text, cut to the millisecond. A time without a zone is a mistake: ``ValueError``.

    Raises ``NotSaved`` for a time that would not be read again.
    """
    if at.tzinfo is None:
        raise ValueError("the time of an event needs a time zone")
    text = at.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
    if not is_moment(text):
        raise NotSaved(f"This computer's clock says {text[:10]}. Set it right, then go on.")
    return text


def _plain(value: Any) -> Any:
    if isinstance(value, Mapping):
        return dict(value)
    if isinstance(value, Sequence) and not isinstance(value, bytes | bytearray | memoryview):
        return list(value)
    raise TypeError(f"a {type(value).__name__} is not a JSON value")


_HOLDS_NOTHING = frozenset({type(None), bool, int, float, str})


def _keys_are_text(value: Any) -> None:
    # json would quietly write the key 1 as "1", and sort_keys fails on a mixture.
    if isinstance(value, Mapping):
        for key, inner in value.items():
            if not isinstance(key, str):
                raise TypeError(f"the key {key!r} is not text")
            if type(inner) not in _HOLDS_NOTHING:
                _keys_are_text(inner)
    elif isinstance(value, Sequence) and not isinstance(value, str):
        for inner in value:
            if type(inner) not in _HOLDS_NOTHING:
                _keys_are_text(inner)
