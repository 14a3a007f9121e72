"""Journals to test with: bodies of every kind, and journals of a known content."""

from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from finishing_tui.garment.journal import Journal, NewEvent, Row

NOON = datetime(2024, 5, 1, 12, 0, 0, 123_456, tzinfo=UTC)

texts = st.text(st.characters(exclude_categories=["Cs"]))
"""Any text but half characters, which no file can hold."""

values: st.SearchStrategy[Any] = st.recursive(
    st.none() | st.booleans() | st.integers() | st.integers(-(10**60), 10**60) | texts,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(texts, inner, max_size=4),
    max_leaves=12,
)
bodies = st.dictionaries(texts, values, max_size=4)
entries = st.builds(NewEvent, kind=texts, version=st.integers(0, 2**63 - 1), body=bodies)


def press(number: int) -> NewEvent:
    """Return an entry whose body can be found in the file by its text."""
    return NewEvent("pressed", 1, {"mark": f"<{number:06}>", "unit": number})


def fill(folder: Path, groups: int, each: int = 2) -> tuple[Row, ...]:
    """Make a journal of ``groups`` groups of ``each`` events, put it down, and return its rows."""
    rows: list[Row] = []
    with Journal.create(folder) as journal:
        for number in range(groups):
            added = [press(number * each + inner + 1) for inner in range(each)]
            rows += journal.append(added, at=NOON, sitting=1, after_ms=number * 700)
            if number % 200 == 199:
                assert journal.flush(30)
        assert journal.flush(30)
    return tuple(rows)


def read(folder: Path) -> tuple[Row, ...]:
    """Return what can be read of the journal in ``folder``."""
    with Journal.open(folder, look=True) as journal:
        return tuple(journal.rows())


def contents(folder: Path) -> dict[str, bytes]:
    """Return every file in ``folder`` with its bytes, the empty lock file aside."""
    return {one.name: one.read_bytes() for one in folder.iterdir() if one.is_file() and one.name != "journal.lock"}
