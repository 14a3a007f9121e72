"""The chain proves every byte of every column."""

import sqlite3
import tempfile
from contextlib import closing
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.garment.journal import Damaged, check
from finishing_tui.garment.journal.chain import START, link
from finishing_tui.garment.journal.rows import Row
from tests.examples import share
from tests.garment.journal.making import fill, read, texts

numbers = st.integers(0, 2**63 - 1)
unlinked = st.tuples(numbers, numbers, texts, numbers, numbers, texts, numbers, texts)


def parsed(line: str) -> tuple[Any, ...]:
    """Read the documented encoding back, from its description alone."""
    found: list[Any] = [line[:64]]
    rest = line[64:]
    for column in "nntnntnt":
        assert rest.startswith(",")
        if column == "n":
            digits, comma, more = rest[1:].partition(",")
            found.append(int(digits))
            rest = comma + more
        else:
            length, _, more = rest[1:].partition(":")
            found.append(more[: int(length)])
            rest = more[int(length) :]
    assert rest == ""
    return tuple(found)


def encoded(before: str, columns: tuple[Any, ...]) -> str:
    """Return the encoding as the docstring of ``link`` describes it."""
    return ",".join([before, *(str(one) if isinstance(one, int) else f"{len(one)}:{one}" for one in columns)])


@given(columns=unlinked)
def test_the_encoding_says_everything(columns: Any) -> None:
    """The encoding that is hashed can be read back, so no two different rows share one."""
    line = encoded(START, columns)
    assert parsed(line) == (START, *columns)
    assert link(START, *columns) == sha256(line.encode()).hexdigest()


def test_the_first_format_for_ever() -> None:
    """The chain of one row, worked out with the system's sha256sum: it may never change."""
    assert (
        link(START, 1, 1, "2024-05-01T12:00:00.123Z", 1, 0, "pressed", 1, '{"é":1}')
        == "f6351c1953fcce578cb7b0eaafb567d7c64f0dca5e7579b3f0efd9d034fd550e"
    )


@settings(max_examples=share(30))
@given(data=st.data())
def test_any_changed_byte_of_any_column_is_found(data: st.DataObject) -> None:
    """One bit flipped in one column of one row, behind SQLite's back: that row is refused, those before it are not."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        rows = list(fill(folder, 4, 1))
        at = data.draw(st.integers(0, 3), "row")
        column = data.draw(st.integers(1, 8), "column")
        changed = tampered(rows[at], column, data)
        names = ("seq", '"group"', "at", "sitting", "after_ms", "kind", "version", "body", "chain")
        with closing(sqlite3.connect(folder / "journal.sqlite3")) as connection:
            trigger = connection.execute("SELECT sql FROM sqlite_schema WHERE name='events_stay_as_written'").fetchone()
            connection.execute("DROP TRIGGER events_stay_as_written")
            connection.execute("PRAGMA ignore_check_constraints=ON")
            connection.execute(f"UPDATE events SET {names[column]}=? WHERE seq=?", (changed, at + 1))  # noqa: S608
            connection.execute(trigger[0])
            connection.commit()
        with pytest.raises(Damaged) as caught:
            read(folder)
        assert caught.value.whole == at
        report = check(folder)
        assert report.events == at
        assert report.fault == f"event {at + 1} is not as it was written"


def tampered(row: Row, column: int, data: st.DataObject) -> int | str:
    """Return one column of ``row`` with one bit changed."""
    value = row[column]
    if isinstance(value, int):
        return value ^ (1 << data.draw(st.integers(0, 61), "bit"))
    at = data.draw(st.integers(0, len(value) - 1), "character")
    return value[:at] + chr(ord(value[at]) ^ (1 << data.draw(st.integers(0, 6), "bit"))) + value[at + 1 :]


def test_rows_are_their_columns(tmp_path: Path) -> None:
    """What is on the disk is the columns of the rows, and nothing else."""
    rows = fill(tmp_path, 3)
    with closing(sqlite3.connect(tmp_path / "journal.sqlite3")) as connection:
        stored = connection.execute("SELECT * FROM events ORDER BY seq").fetchall()
    assert stored == list(rows)
