"""The shape on disk: marked as ours, and closed to anything but adding."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from finishing_tui.garment.journal import Journal, NewEvent
from finishing_tui.garment.journal.chain import START
from tests.garment.journal.making import NOON, fill, read


def adding(values: str, how: str = "INSERT") -> str:
    """Return the statement that adds a row that begins with ``values``: seq, group, at, sitting."""
    return f"{how} INTO events VALUES ({values}, 1, '', 1, '', '{START}')"


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE events SET kind = 'other' WHERE seq = 2",
        "DELETE FROM events WHERE seq = 3",
        "DELETE FROM events",
        adding("5, 5, '', 1"),
        adding("3, 3, '', 1"),
        adding("2, 2, '', 1", "INSERT OR REPLACE"),
        adding("4, 5, '', 1"),
        adding("4, 4, '', 'one'"),
        adding("NULL, 1, '', 1"),
        adding("4, 4, '', 1").replace(START, "short"),
    ],
)
def test_any_program_can_only_add(tmp_path: Path, statement: str) -> None:
    """Whatever program opens the file: events are not changed, taken out, replaced, or added with a gap."""
    rows = fill(tmp_path, 3, 1)
    with closing(sqlite3.connect(tmp_path / "journal.sqlite3")) as connection:
        with pytest.raises(sqlite3.IntegrityError):
            connection.execute(statement)
        connection.commit()
        connection.execute(adding("4, 4, '', 1"))  # and what is right can be added, so the others failed for cause
        connection.rollback()
    assert read(tmp_path) == rows


def test_the_file_says_whose_it_is(tmp_path: Path) -> None:
    """The mark and the format stand where SQLite's file format puts them (sqlite.org/fileformat2.html, 1.3)."""
    fill(tmp_path, 1)
    head = (tmp_path / "journal.sqlite3").read_bytes()[:100]
    assert head[:16] == b"SQLite format 3\0"
    assert head[68:72] == b"FNSH"
    assert int.from_bytes(head[60:64]) == 1


def test_put_down_it_is_one_private_file(tmp_path: Path) -> None:
    """Put down, the journal is one file that stands alone, readable by its owner only, in rollback mode (byte 18)."""
    fill(tmp_path, 40)
    assert sorted(one.name for one in tmp_path.iterdir()) == ["journal.lock", "journal.sqlite3"]
    for one in tmp_path.iterdir():
        assert one.stat().st_mode & 0o077 == 0
    assert (tmp_path / "journal.sqlite3").read_bytes()[18:20] == b"\1\1"


def test_open_it_uses_the_log_with_full_syncs(tmp_path: Path) -> None:
    """While a garment is in hand the journal is in write-ahead mode, and no committing thread makes checkpoints."""
    with Journal.create(tmp_path) as journal:
        long = NewEvent("noted", 1, {"text": "x" * 40_000})
        for number in range(150):  # SQLite by itself would make a checkpoint after 1,000 pages, here after 100 events
            journal.append([long], at=NOON, sitting=1, after_ms=number)
            assert journal.flush(30)
        wal, file = tmp_path / "journal.sqlite3-wal", tmp_path / "journal.sqlite3"
        assert wal.stat().st_size > 1500 * 4096 > file.stat().st_size
        assert wal.stat().st_mode & 0o077 == 0
        assert [one.seq for one in read(tmp_path)] == list(range(1, 151))
