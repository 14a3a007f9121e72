"""Snapshots are a cache: whatever is wrong with one, it is as if there were none."""

import sqlite3
import time
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from finishing_tui.garment.journal import NAME, Damaged, Journal, check
from finishing_tui.garment.journal import journal as opening
from finishing_tui.garment.journal.chain import seal
from tests.examples import share
from tests.garment.journal.making import NOON, bodies, fill, press, read


def change(folder: Path, *statements: str) -> None:
    """Change the journal in ``folder`` behind the program's back."""
    with closing(sqlite3.connect(folder / NAME)) as connection:
        for statement in statements:
            connection.execute(statement)
        connection.commit()


def numbers(folder: Path) -> list[int]:
    """Return the events after which there are snapshots on the disk."""
    with closing(sqlite3.connect(folder / NAME)) as connection:
        return [seq for (seq,) in connection.execute("SELECT seq FROM snapshots ORDER BY seq")]


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Give the folder of a journal of ten events with snapshots after 4 and 8, of version 3."""
    fill(tmp_path, 10, 1)
    for seq in (4, 8):
        with Journal.open(tmp_path) as journal:
            journal.snapshot(seq, 3, {"up to": seq})
    return tmp_path


@settings(max_examples=share(20), suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(body=bodies)
def test_the_newest_comes_back(folder: Path, body: dict[str, Any]) -> None:
    """The newest snapshot of the asked version comes back as it was given."""
    with Journal.open(folder) as journal:
        journal.snapshot(9, 3, body)
    with Journal.open(folder) as journal:
        assert journal.newest_snapshot(3) == (9, body)


def test_few_are_kept(folder: Path) -> None:
    """Only the newest two stay in the file."""
    with Journal.open(folder) as journal:
        journal.snapshot(10, 3, 10)
    assert numbers(folder) == [8, 10]


@pytest.mark.parametrize(
    "harm",
    [
        "UPDATE snapshots SET body = '{\"up to\":9}' WHERE seq = 8",
        "UPDATE snapshots SET body = 'no JSON' WHERE seq = 8",
        "UPDATE snapshots SET chain = (SELECT chain FROM events WHERE seq = 7) WHERE seq = 8",
        "UPDATE snapshots SET version = 4 WHERE seq = 8",
        "UPDATE snapshots SET seq = 9 WHERE seq = 8",
        "UPDATE snapshots SET seq = 99 WHERE seq = 8",
        "UPDATE snapshots SET seal = '' WHERE seq = 8",
    ],
)
def test_one_that_is_not_sound_is_passed_over_and_taken_out(folder: Path, harm: str) -> None:
    """Changed in any column: the one before it counts, the bad one goes, the journal is as sound as ever."""
    change(folder, harm)
    with Journal.open(folder, look=True) as onlooker:
        assert onlooker.newest_snapshot(3) == (4, {"up to": 4})
    assert check(folder).fault is None
    with Journal.open(folder) as journal:
        assert journal.newest_snapshot(3) == (4, {"up to": 4})
    assert numbers(folder) == [4]


def test_one_of_another_past_does_not_count(folder: Path) -> None:
    """Sound in itself, but taken after another event of that number, as in a copy that went its own way."""
    chain = "f" * 64
    sealed = seal(9, chain, 3, "9")
    change(folder, f"INSERT INTO snapshots VALUES (9, '{chain}', 3, '9', '{sealed}')")  # noqa: S608  (all ours)
    with Journal.open(folder, look=True) as onlooker:
        assert onlooker.newest_snapshot(3) == (8, {"up to": 8})


def test_of_another_version_there_is_none(folder: Path) -> None:
    """A program with another idea of the state passes all of them over."""
    with Journal.open(folder) as journal:
        assert journal.newest_snapshot(4) is None
    assert numbers(folder) == []


def test_the_table_may_be_dropped(folder: Path) -> None:
    """Without the table the journal opens, and snapshots are kept again."""
    change(folder, "DROP TABLE snapshots")
    assert check(folder).fault is None
    with Journal.open(folder) as journal:
        assert journal.newest_snapshot(3) is None
        journal.snapshot(6, 3, [])
    with Journal.open(folder) as journal:
        assert journal.newest_snapshot(3) == (6, [])
    assert check(folder).fault is None


def test_what_cannot_be_kept_is_no_trouble(tmp_path: Path) -> None:
    """A snapshot that is no JSON, or of an event that does not exist, is dropped without a word."""
    with Journal.create(tmp_path) as journal:
        journal.append([press(1)], at=NOON, sitting=1, after_ms=0)
        journal.snapshot(1, 1, float("nan"))
    with Journal.open(tmp_path) as journal:
        journal.snapshot(5, 1, {})
        assert journal.close()
        assert journal.trouble is None
    assert numbers(tmp_path) == []


def test_one_is_kept_while_the_garment_is_in_hand(tmp_path: Path) -> None:
    """A snapshot does not wait for the garment to be put down: a killed process leaves it too."""
    with Journal.create(tmp_path) as journal:
        journal.append([press(1)], at=NOON, sitting=1, after_ms=0)
        journal.snapshot(1, 1, {"a": 1})
        deadline = time.monotonic() + 60
        while journal.newest_snapshot(1) is None and time.monotonic() < deadline:
            time.sleep(0.05)
        assert journal.newest_snapshot(1) == (1, {"a": 1})


def test_a_long_journal_is_proved_from_the_newest_sound_one(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Beyond a length only what came since is proved on opening; older damage is found by reading, and by a check."""
    monkeypatch.setattr(opening, "PROVED_WHOLE", 5)
    with closing(sqlite3.connect(folder / NAME)) as connection:
        (stays,) = connection.execute("SELECT sql FROM sqlite_schema WHERE name = 'events_stay_as_written'").fetchone()
    hide = ["DROP TRIGGER events_stay_as_written", "UPDATE events SET kind = 'other' WHERE seq = {}", stays]
    change(folder, *(one.format(6) for one in hide))
    with Journal.open(folder) as journal:
        assert [one.seq for one in journal.rows(after=8)] == [9, 10]
        with pytest.raises(Damaged):
            tuple(journal.rows())
        with pytest.raises(Damaged):
            journal.group(6)
    assert check(folder).events == 5
    change(folder, "DELETE FROM snapshots WHERE seq = 8")
    with pytest.raises(Damaged) as caught:
        Journal.open(folder)
    assert caught.value.whole == 5
    change(folder, *(one.format(9) for one in hide))
    with pytest.raises(Damaged):
        read(folder)
