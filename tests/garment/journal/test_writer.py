"""Saving: nothing is said to be saved that is not, nothing waits for the disk, and it mends itself when it can."""

import os
import shutil
import sqlite3
import sys
import threading
import time
from collections.abc import Callable, Iterable
from datetime import UTC, datetime
from pathlib import Path

import pytest

from finishing_tui.garment.journal import NAME, Journal, NewEvent, NotSaved, Row, check
from finishing_tui.garment.journal import store as storing
from finishing_tui.garment.journal import writer as writing
from finishing_tui.garment.journal.writer import MOST_UNSAVED
from tests.garment.journal.making import NOON, contents, fill, press, read

unlinks = pytest.mark.skipif(sys.platform == "win32", reason="an open file cannot be taken away there")


def until(true: Callable[[], bool]) -> bool:
    """Wait generously for ``true``; say whether it came."""
    deadline = time.monotonic() + 60
    while not true() and time.monotonic() < deadline:
        time.sleep(0.01)
    return true()


def add(journal: Journal, number: int) -> tuple[Row, ...]:
    """Add one press."""
    return journal.append([press(number)], at=NOON, sitting=2, after_ms=number)


class Gate:
    """A disk that the test opens, shuts and breaks, in place of the real commits."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.open = threading.Event()
        self.error: Exception | None = None
        self.lie = False
        real = storing.Store.commit

        def commit(store: storing.Store, rows: Iterable[Row]) -> None:
            rows = tuple(rows)
            self.open.wait()
            if self.error is None or self.lie:
                real(store, rows)
            if self.error is not None:
                raise self.error

        monkeypatch.setattr(storing.Store, "commit", commit)


@pytest.fixture
def gate(monkeypatch: pytest.MonkeyPatch) -> Gate:
    """Give a disk that is shut at first."""
    monkeypatch.setattr(writing, "FIRST_PAUSE", 0.01)
    monkeypatch.setattr(writing, "LONGEST_PAUSE", 0.02)
    return Gate(monkeypatch)


def test_nothing_waits_for_the_disk(tmp_path: Path, gate: Gate) -> None:
    """While the disk does not answer at all: adding returns, the rows can be read, and all are counted as unsaved."""
    with Journal.create(tmp_path) as journal:
        rows = [one for number in range(10) for one in add(journal, number)]
        assert journal.unsaved == 10
        assert list(journal.rows()) == rows
        assert read(tmp_path) == ()
        assert not journal.flush(0.05)
        gate.open.set()
        assert journal.flush(30)
        assert journal.unsaved == 0
        assert read(tmp_path) == tuple(rows)


def test_a_slow_disk_is_said(tmp_path: Path, gate: Gate, monkeypatch: pytest.MonkeyPatch) -> None:
    """A disk that takes too long is called so without any error, until it is through."""
    monkeypatch.setattr(writing, "SLOW_SECONDS", 0.05)
    with Journal.create(tmp_path) as journal:
        assert journal.trouble is None
        add(journal, 1)
        assert until(lambda: journal.trouble is not None)
        assert "slow" in str(journal.trouble)
        gate.open.set()
        assert journal.flush(30)
        assert journal.trouble is None


def test_so_many_wait_and_no_more(tmp_path: Path, gate: Gate, monkeypatch: pytest.MonkeyPatch) -> None:
    """500 groups may wait; the next is refused and leaves no trace; when the disk is back it goes on, without gaps."""
    monkeypatch.setattr(writing, "MOST_UNSAVED", MOST_UNSAVED)
    gate.error = OSError(28, "No space left on device")
    gate.open.set()
    with Journal.create(tmp_path) as journal:
        for number in range(500):
            add(journal, number)
        with pytest.raises(NotSaved, match="500"):
            add(journal, 500)
        assert journal.unsaved == 500
        assert journal.last_seq == 500
        assert until(lambda: journal.trouble is not None)
        assert "full" in str(journal.trouble)
        gate.error = None
        assert journal.flush(30)
        assert until(lambda: journal.trouble is None)
        add(journal, 501)
    assert [one.seq for one in read(tmp_path)] == list(range(1, 502))


def test_a_commit_that_fails_after_all_was_written(tmp_path: Path, gate: Gate) -> None:
    """The disk has the rows and says that it failed: they are not saved twice, and counted when they surely are."""
    gate.error, gate.lie = sqlite3.OperationalError("disk I/O error"), True
    gate.open.set()
    with Journal.create(tmp_path) as journal:
        rows = add(journal, 1) + add(journal, 2)
        assert journal.flush(30)
        gate.error = None
        rows += add(journal, 3)
    assert read(tmp_path) == rows
    assert check(tmp_path).fault is None


def test_giving_up_is_honest(tmp_path: Path, gate: Gate) -> None:
    """Put down while the disk is broken: it says that not all is saved, and the lock is free."""
    gate.error = sqlite3.OperationalError("disk I/O error")
    gate.open.set()
    journal = Journal.create(tmp_path)
    add(journal, 1)
    assert not journal.close(0.1)
    assert journal.unsaved == 1
    gate.error = None
    with Journal.open(tmp_path) as again:
        assert again.last_seq == 0


def test_giving_up_does_not_take_longer_than_asked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Put down while the next try is far off: it is tried at once, and given up in time, so that the lock is freed."""
    gate = Gate(monkeypatch)
    monkeypatch.setattr(writing, "FIRST_PAUSE", 1000.0)
    monkeypatch.setattr(writing, "LONGEST_PAUSE", 1000.0)
    gate.error = sqlite3.OperationalError("disk I/O error")
    gate.open.set()
    journal = Journal.create(tmp_path)
    add(journal, 1)
    assert until(lambda: journal.trouble is not None)
    assert not journal.close(0.1)
    Journal.open(tmp_path).close()


def test_changes_are_told(tmp_path: Path) -> None:
    """The callback comes from another thread when the count has gone down, and a broken callback stops nothing."""
    seen: list[tuple[int, bool]] = []
    main = threading.get_ident()

    def changed() -> None:
        seen.append((journal.unsaved, threading.get_ident() != main))
        raise RuntimeError("the screen is gone")

    with Journal.create(tmp_path, on_change=changed) as journal:
        for number in range(3):
            add(journal, number)
            assert journal.flush(30)
            assert until(lambda: len(seen) >= number + 1)  # noqa: B023  (called at once)
    assert seen == [(0, True)] * 3


@unlinks
@pytest.mark.parametrize("then", ["another press", "nothing", "put down"])
def test_a_deleted_journal_is_written_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, then: str) -> None:
    """Someone deletes the files of a garment in hand: the whole journal is there again, the old rows too."""
    monkeypatch.setattr(writing, "IDLE_SECONDS", 0.02)
    monkeypatch.setattr(writing, "WATCH_SECONDS", 0.02)
    rows = fill(tmp_path, 30)
    with Journal.open(tmp_path) as journal:
        rows += add(journal, 61)
        assert journal.flush(30)
        for one in tmp_path.glob(f"{NAME}*"):
            one.unlink()
        if then == "nothing":
            assert until((tmp_path / NAME).exists)
        if then == "another press":
            rows += add(journal, 62)
            assert journal.flush(30)
            assert read(tmp_path) == rows
            assert tuple(journal.rows()) == rows
    assert read(tmp_path) == rows
    assert set(contents(tmp_path)) == {NAME}


@unlinks
@pytest.mark.parametrize("suffix", ["", "-wal", "-shm"])
def test_one_file_of_it_is_deleted(tmp_path: Path, suffix: str) -> None:
    """Only the file, only its log, only its shared memory is deleted: the same."""
    rows = fill(tmp_path, 30)
    with Journal.open(tmp_path) as journal:
        rows += add(journal, 61)
        assert journal.flush(30)
        (tmp_path / f"{NAME}{suffix}").unlink()
        rows += add(journal, 62)
        assert journal.flush(30)
        if suffix != "-shm":
            assert read(tmp_path) == rows
    assert read(tmp_path) == rows


@unlinks
def test_an_exchanged_journal_is_kept_beside(tmp_path: Path) -> None:
    """Something puts an older copy in its place, as a program that keeps folders alike does: both are kept."""
    rows = fill(tmp_path, 5)
    older = (tmp_path / NAME).read_bytes()
    with Journal.open(tmp_path) as journal:
        rows += add(journal, 11)
        assert journal.flush(30)
        (tmp_path / "arriving").write_bytes(older)
        (tmp_path / "arriving").replace(tmp_path / NAME)
        rows += add(journal, 12)
        assert journal.flush(30)
        assert read(tmp_path) == rows
    assert read(tmp_path) == rows
    assert (tmp_path / "journal.replaced-1.sqlite3").read_bytes() == older
    assert not (tmp_path / "journal.replaced-1.sqlite3-wal").exists()  # the log was not that file's


@unlinks
def test_another_garment_in_its_place(tmp_path: Path) -> None:
    """The journal of another garment, or rubbish, in its place: kept beside, and never added to."""
    here, there = tmp_path / "here", tmp_path / "there"
    here.mkdir()
    there.mkdir()
    rows = fill(here, 5)
    fill(there, 9, 1)
    with Journal.open(here) as journal:
        rows += add(journal, 11)
        assert journal.flush(30)
        for number, content in enumerate([(there / NAME).read_bytes(), b"rubbish" * 5000], 1):
            for one in here.glob(f"{NAME}*"):
                one.unlink()
            (here / NAME).write_bytes(content)
            rows += add(journal, 11 + number)
            assert journal.flush(30)
            assert (here / f"journal.replaced-{number}.sqlite3").read_bytes() == content
    assert read(here) == rows


@unlinks
def test_the_folder_goes_and_comes_back(tmp_path: Path) -> None:
    """The whole folder goes, as with a disk that is pulled out: not saved, said, and saved when it is back."""
    folder = tmp_path / "garment"
    folder.mkdir()
    rows = fill(folder, 5)
    with Journal.open(folder) as journal:
        rows += add(journal, 11)
        assert journal.flush(30)
        folder.rename(tmp_path / "away")
        rows += add(journal, 12) + add(journal, 13)
        assert until(lambda: journal.trouble is not None)
        assert "folder" in str(journal.trouble)
        assert not journal.flush(0.3)
        assert journal.unsaved == 2
        assert not folder.exists()
        assert journal.group(12) == rows[11:12]
        (tmp_path / "away").rename(folder)
        assert journal.flush(60)
        assert until(lambda: journal.trouble is None)
        assert read(folder) == rows
    assert read(folder) == rows


@unlinks
def test_the_folder_comes_back_as_a_copy(tmp_path: Path) -> None:
    """What comes back is a copy with other file numbers, made before the last presses: they are saved in it."""
    folder, copy = tmp_path / "garment", tmp_path / "copy"
    folder.mkdir()
    rows = fill(folder, 5)
    with Journal.open(folder) as journal:
        rows += add(journal, 11)
        assert journal.flush(30)
        shutil.copytree(folder, copy, ignore=shutil.ignore_patterns("*-shm"))
        folder.rename(tmp_path / "away")
        rows += add(journal, 12)
        assert until(lambda: journal.trouble is not None)
        copy.rename(folder)
        assert journal.flush(60)
    assert read(folder) == rows
    assert set(contents(folder)) == {NAME}


@unlinks
def test_a_journal_cut_short_under_our_hands(tmp_path: Path) -> None:
    """The log is emptied in place while it is open: either all of it is there again, or it is said not to be."""
    rows = fill(tmp_path, 5)
    with Journal.open(tmp_path) as journal:
        for number in range(11, 31):
            rows += add(journal, number)
            assert journal.flush(30)
        os.truncate(tmp_path / f"{NAME}-wal", 0)
        rows += add(journal, 31)
        saved = journal.flush(2)
        if saved:
            assert read(tmp_path) == rows
        else:
            assert journal.trouble
            assert journal.unsaved == 1
        assert journal.close(0.2) == saved
    assert read(tmp_path) == rows[: len(read(tmp_path))]


@pytest.mark.skipif(sys.platform == "win32", reason="SQLite has no such way to the files there")
def test_where_no_log_is_possible(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where memory cannot be shared, as on a network drive, SQLite's older way is used, and all else is the same.

    The VFS named here is SQLite's own for such drives (sqlite.org/vfs.html).
    """
    monkeypatch.setattr(storing, "VFS", "&vfs=unix-dotfile")
    with Journal.create(tmp_path) as journal:
        rows = add(journal, 1) + add(journal, 2)
        assert journal.flush(30)
        assert journal.trouble is None
        assert not (tmp_path / f"{NAME}-wal").exists()
        assert read(tmp_path) == rows
    assert set(contents(tmp_path)) == {NAME}
    assert read(tmp_path) == rows


@pytest.mark.skipif(sys.platform == "win32", reason="SQLite has no such way to the files there")
def test_a_log_that_came_to_where_none_is_possible(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Killed elsewhere with a log, then carried to such a drive: what the log has is kept, and it goes on there."""
    with Journal.create(tmp_path) as journal:
        rows = add(journal, 1)
        assert journal.flush(30)
        (tmp_path / "carried").mkdir()
        for suffix in ("", "-wal"):
            shutil.copy(tmp_path / f"{NAME}{suffix}", tmp_path / "carried")
    monkeypatch.setattr(storing, "VFS", "&vfs=unix-dotfile")
    folder = tmp_path / "carried"
    with Journal.open(folder) as journal:
        rows += add(journal, 2)
        assert journal.flush(30)
        assert journal.trouble is None
    assert read(folder) == rows
    assert set(contents(folder)) == {NAME}


def test_two_machines_never_mix(tmp_path: Path) -> None:
    """Two writers that cannot see each other's lock: the second's rows are refused and said to be unsaved."""
    with Journal.create(tmp_path) as journal:
        rows = add(journal, 1)
        assert journal.flush(30)
        (tmp_path / "journal.lock").unlink()  # what another machine does not see
        with Journal.open(tmp_path) as other:
            theirs = other.append([press(77)], at=NOON, sitting=9, after_ms=0)
            assert other.flush(30)
            add(journal, 2)
            assert not journal.flush(1)
            assert journal.unsaved == 1
            assert journal.trouble
            assert not journal.close(0.2)
    assert read(tmp_path) == rows + theirs


def test_another_folder_in_its_place_is_left_alone(tmp_path: Path) -> None:
    """The garment's folder is moved and another one put under its name: nothing is written there, and it is said.

    When its own folder is back, what waited is saved.
    """
    folder, aside = tmp_path / "garment", tmp_path / "aside"
    folder.mkdir()
    with Journal.create(folder) as journal:
        journal.append([NewEvent("One", 1, {})], at=datetime.now(UTC), sitting=1, after_ms=0)
        assert journal.flush(30)
        folder.rename(aside)
        folder.mkdir()
        journal.append([NewEvent("Two", 1, {})], at=datetime.now(UTC), sitting=1, after_ms=0)
        assert not journal.flush(1.5)
        assert journal.unsaved == 1
        assert "Another folder" in (journal.trouble or "")
        assert not (folder / NAME).exists()
        folder.rmdir()
        aside.rename(folder)
        assert journal.flush(30)
    with Journal.open(folder, look=True) as journal:
        assert [row.kind for row in journal.rows()] == ["One", "Two"]
