"""Opening: one writer, onlookers, and what is not ours or not for us is not touched in the least."""

import errno
import os
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.journal import NAME, InUse, Journal, NewEvent, NoJournal, check, lock, recover
from finishing_tui.garment.journal.errors import AlreadyBegun, Newer, NotAJournal, Unreachable
from tests.garment.journal.making import NOON, contents, fill, press, read


def refuse(folder: Path, error: type[FinishingError]) -> str:
    """Show that every way in answers with ``error`` and leaves every file as it was; return the sentence."""
    before = {one.name for one in folder.iterdir()}, contents(folder)
    for way in (Journal.open, lambda place: Journal.open(place, look=True), check, recover):
        with pytest.raises(error) as caught:
            way(folder)
        assert ({one.name for one in folder.iterdir()}, contents(folder)) == before
    return str(caught.value)


def test_no_journal(tmp_path: Path) -> None:
    """A folder without a journal: said so, and none is made."""
    refuse(tmp_path, NoJournal)


def test_no_folder(tmp_path: Path) -> None:
    """A folder that is not there: one sentence, and none is made."""
    with pytest.raises(NoJournal):
        Journal.open(tmp_path / "none")
    with pytest.raises(Unreachable):
        Journal.create(tmp_path / "none")
    assert not list(tmp_path.iterdir())


def test_a_folder_in_its_place(tmp_path: Path) -> None:
    """A folder under the journal's name."""
    (tmp_path / NAME).mkdir()
    refuse(tmp_path, NotAJournal)


@pytest.mark.skipif(sys.platform == "win32", reason="there are no named pipes in folders there")
def test_a_pipe_in_its_place(tmp_path: Path) -> None:
    """A named pipe under the journal's name, which would keep a plain reader waiting for ever."""
    os.mkfifo(tmp_path / NAME)
    refuse(tmp_path, NotAJournal)


@pytest.mark.parametrize("mode", ["DELETE", "WAL"])
def test_a_database_of_someone_else(tmp_path: Path, mode: str) -> None:
    """Another program's database under the journal's name, in either mode, also while it is open there."""
    with closing(sqlite3.connect(tmp_path / NAME)) as connection:
        connection.execute(f"PRAGMA journal_mode={mode}")
        connection.execute("PRAGMA application_id=1196444487")
        connection.execute("CREATE TABLE events (seq INTEGER PRIMARY KEY)")
        connection.commit()
        refuse(tmp_path, NotAJournal)
    refuse(tmp_path, NotAJournal)


def test_a_newer_format(tmp_path: Path) -> None:
    """A journal in a format of the future: both formats are named, nothing is changed, not even to recover it."""
    fill(tmp_path, 3)
    with closing(sqlite3.connect(tmp_path / NAME)) as connection:
        connection.execute("PRAGMA user_version=7")
    sentence = refuse(tmp_path, Newer)
    assert "format 7" in sentence
    assert "format 1" in sentence


def test_only_one_writes(tmp_path: Path) -> None:
    """The second to open is told and may look; when the first puts it down the way is free."""
    first = Journal.create(tmp_path)
    rows = first.append([press(1)], at=NOON, sitting=1, after_ms=0)
    assert first.flush(30)
    for way in (Journal.open, recover):
        with pytest.raises(InUse):
            way(tmp_path)
    with pytest.raises(InUse):
        Journal.create(tmp_path)
    assert check(tmp_path).in_use
    assert read(tmp_path) == rows
    more = first.append([press(2)], at=NOON, sitting=1, after_ms=1)
    assert first.close()
    assert first.close()
    assert not check(tmp_path).in_use
    with Journal.open(tmp_path) as second:
        assert tuple(second.rows()) == rows + more


def test_a_journal_is_begun_once(tmp_path: Path) -> None:
    """A second beginning is refused and changes nothing."""
    rows = fill(tmp_path, 2)
    with pytest.raises(AlreadyBegun):
        Journal.create(tmp_path)
    assert read(tmp_path) == rows


def test_what_a_lost_journal_left_is_kept(tmp_path: Path) -> None:
    """The log of a journal that someone took away is not mixed into a new one, and not thrown out."""
    (tmp_path / f"{NAME}-wal").write_bytes(b"something")
    with Journal.create(tmp_path) as journal:
        rows = journal.append([press(1)], at=NOON, sitting=1, after_ms=0)
    assert read(tmp_path) == rows
    assert (tmp_path / "journal.lost-1.sqlite3-wal").read_bytes() == b"something"


def test_an_onlooker_does_not_keep_it_from_being_put_down(tmp_path: Path) -> None:
    """Someone looks while it is put down: it is one file all the same."""
    with Journal.create(tmp_path) as journal, Journal.open(tmp_path, look=True) as onlooker:
        journal.append([press(1)], at=NOON, sitting=1, after_ms=0)
        assert journal.flush(30)
        assert len(tuple(onlooker.rows())) == 1
        assert journal.close()
        assert set(contents(tmp_path)) == {NAME}


def test_put_down_in_the_middle_of_a_reading(tmp_path: Path) -> None:
    """Someone is in the middle of reading while it is put down: everything is saved, and the next opening tidies up."""
    fill(tmp_path, 50)
    with Journal.open(tmp_path) as journal, Journal.open(tmp_path, look=True) as onlooker:
        journal.append([press(101)], at=NOON, sitting=1, after_ms=0)
        assert journal.flush(30)
        reading = onlooker.rows()
        next(reading)
        assert journal.close()
        assert [one.seq for one in reading] == list(range(2, 102))
    Journal.open(tmp_path).close()
    assert set(contents(tmp_path)) == {NAME}


def test_after_it_was_put_down_nothing_is_taken_in(tmp_path: Path) -> None:
    """Adding to a journal that was closed is refused in a sentence, and reading still works."""
    journal = Journal.create(tmp_path)
    rows = journal.append([press(1)], at=NOON, sitting=1, after_ms=0)
    journal.close()
    with pytest.raises(FinishingError, match="put down"):
        journal.append([press(2)], at=NOON, sitting=1, after_ms=0)
    assert tuple(journal.rows()) == rows
    with pytest.raises(ValueError, match="at least one"), Journal.open(tmp_path) as again:
        again.append([], at=NOON, sitting=1, after_ms=0)
    assert NewEvent("a", 1, {}) == NewEvent("a", 1, {})


def test_killed_in_the_middle_of_a_commit_without_a_log(tmp_path: Path) -> None:
    """Where no log is possible, a process killed in a commit leaves a journal to roll back: the half of it is gone.

    Reading does the rolling back in a private copy; opening to write does it in place.
    """
    folder, killed = tmp_path / "garment", tmp_path / "killed"
    folder.mkdir()
    killed.mkdir()
    rows = fill(folder, 5)
    with closing(sqlite3.connect(folder / NAME, isolation_level=None)) as connection:
        connection.execute("PRAGMA cache_size=1")
        connection.execute("PRAGMA cache_spill=1")
        connection.execute("BEGIN IMMEDIATE")
        for number in range(11, 300):
            connection.execute(
                "INSERT INTO events VALUES (?, 11, '', 1, 1, '', 1, ?, ?)", (number, "x" * 900, "0" * 64)
            )
        for one in folder.iterdir():
            (killed / one.name).write_bytes(one.read_bytes())
        connection.execute("ROLLBACK")
    before = contents(killed)
    assert len(before[NAME]) > len(contents(folder)[NAME])  # half of it did reach the file
    assert f"{NAME}-journal" in before
    assert read(killed) == rows
    assert check(killed).fault is None
    assert contents(killed) == before
    with Journal.open(killed) as journal:
        rows += journal.append([press(1)], at=NOON, sitting=2, after_ms=0)
    assert read(killed) == rows
    assert set(contents(killed)) == {NAME}


def test_a_drive_without_locks(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Some network drives know no such lock: the journal opens all the same."""

    def unknown(_: int) -> None:
        raise OSError(errno.ENOLCK, "No locks available")

    rows = fill(tmp_path, 2)
    monkeypatch.setattr(lock, "_take", unknown)
    with Journal.open(tmp_path) as journal:
        assert tuple(journal.rows()) == rows


def test_too_old_an_sqlite(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """An SQLite that cannot read our tables is named, and the journal is not called damaged."""
    fill(tmp_path, 2)
    monkeypatch.setattr(sqlite3, "sqlite_version_info", (3, 34, 1))
    refuse(tmp_path, Unreachable)


def test_opening_while_someone_reads(tmp_path: Path) -> None:
    """Someone is in the middle of reading when it is picked up: nothing is lost, and the log is used in the end."""
    rows = fill(tmp_path, 50)
    with Journal.open(tmp_path, look=True) as onlooker:
        reading = onlooker.rows()
        next(reading)
        with Journal.open(tmp_path) as journal:
            rows += journal.append([press(1)], at=NOON, sitting=2, after_ms=0)
            assert len(tuple(reading)) == 99
            assert journal.flush(30)
            assert (tmp_path / f"{NAME}-wal").exists()
    assert read(tmp_path) == rows


AS_NOBODY = """
import os, sys
from pathlib import Path
from finishing_tui.garment.journal import Journal, check, recover
from finishing_tui.garment.journal.errors import Unreachable
folder, rehearsal = map(Path, sys.argv[1:])
Journal.create(rehearsal).close()  # whatever Python loads late is loaded while its own files may still be read
for way in (Journal.open, recover, lambda place: Journal.open(place, look=True)):
    got = way(rehearsal)
    if isinstance(got, Journal):
        list(got.rows())
        got.close()
check(rehearsal)
if os.getuid() == 0:
    os.setgroups([])
    os.setgid(65534)
    os.setuid(65534)
for way in (Journal.open, recover):
    try:
        way(folder)
    except Unreachable as error:
        print(error)
    else:
        sys.exit("it was opened")
print(len(list(Journal.open(folder, look=True).rows())), check(folder).fault)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="rights work otherwise there")
@pytest.mark.parametrize("put_down", [True, False])
def test_a_folder_that_can_only_be_read(tmp_path: Path, *, put_down: bool) -> None:
    """No right to write, whether it was put down or not: refused in a sentence, can be looked at, is not changed."""
    folder, rehearsal = tmp_path / "garment", tmp_path / "rehearsal"
    folder.mkdir()
    rehearsal.mkdir()
    fill(folder, 3)
    if not put_down:
        with Journal.open(folder) as journal:
            journal.append([press(7)], at=NOON, sitting=2, after_ms=0)
            assert journal.flush(30)
            left = contents(folder)
        for name, content in left.items():
            if not name.endswith("-shm"):
                (folder / name).write_bytes(content)
    (folder / "journal.lock").unlink()
    before = contents(folder)
    for one in folder.iterdir():
        one.chmod(0o444)
    above = [place for place in folder.parents if place.stat().st_uid == os.getuid() and place != Path("/")]
    modes = {place: place.stat().st_mode for place in above}
    try:
        for place in above:
            place.chmod(place.stat().st_mode | 0o055)
        folder.chmod(0o555)
        command = [sys.executable, "-c", AS_NOBODY, str(folder), str(rehearsal)]
        run = subprocess.run(command, capture_output=True, text=True, check=False)
    finally:
        folder.chmod(0o700)
        for place, mode in modes.items():
            place.chmod(mode)
    assert run.returncode == 0, run.stderr
    assert run.stdout.count("You can only look here") == 2
    assert run.stdout.endswith("6 None\n" if put_down else "7 None\n")
    assert contents(folder) == before
