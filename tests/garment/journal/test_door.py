"""The door: what lies under a journal's names is looked over before SQLite sees any of it.

What a side file can make SQLite do is in its own documents: sqlite.org/fileformat2.html (3, the rollback journal),
sqlite.org/tempfiles.html (2.3, super-journal files) and sqlite.org/howtocorrupt.html (1.4, links).
"""

import os
import re
import sqlite3
import tracemalloc
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.journal import NAME, Damaged, Journal, NewEvent, Unwritable, check, door, recover
from finishing_tui.garment.journal.chain import link
from finishing_tui.garment.journal.door import LOCK, SIDE_FILES
from finishing_tui.garment.journal.errors import NotAJournal
from finishing_tui.garment.journal.reader import copy_into
from finishing_tui.garment.journal.recovery import set_aside
from finishing_tui.garment.journal.rows import written
from finishing_tui.garment.journal.salvage import salvaged
from finishing_tui.garment.journal.schema import INSERT, MAKING, put_in_place
from finishing_tui.garment.journal.store import Store
from tests.garment.journal.making import NOON, fill, press, read

NAMES = (NAME, *(NAME + suffix for suffix in SIDE_FILES), LOCK)

LOOSER = re.compile(r' STRICT| NOT NULL|CHECK \("group" BETWEEN 1 AND seq\)')
"""What keeps SQLite from writing any value into a column of our tables."""

ROLLBACK = bytes.fromhex("d9d505f920a163d7")
"""How a rollback journal begins, and how the record in it that names a super-journal ends."""


def _copied(folder: Path) -> None:
    (folder / "copies").mkdir()
    copy_into(folder / NAME, folder / "copies")


def _salvaged(folder: Path) -> None:
    with salvaged(folder / NAME):
        pass


WAYS: dict[str, Callable[[Path], object]] = {
    "open": Journal.open,
    "look": lambda folder: Journal.open(folder, look=True),
    "check": check,
    "recover": recover,
    "store": lambda folder: Store(folder / NAME),
    "copy": _copied,
    "set aside": lambda folder: set_aside(folder / NAME, "damaged"),
    "salvage": _salvaged,
    "connect": lambda folder: door.connect(folder / NAME),
}
"""Every way in which the files of a journal are opened."""


@pytest.fixture(params=list(WAYS))
def way(request: pytest.FixtureRequest) -> Callable[[Path], object]:
    """Return every way in, one after the other."""
    return WAYS[request.param]


@pytest.fixture
def garment(tmp_path: Path) -> Path:
    """Return a folder with a whole journal, beside a file of the user's own."""
    folder = tmp_path / "garment"
    folder.mkdir()
    fill(folder, 3)
    (tmp_path / "mine").write_text("mine", encoding="utf-8")
    return folder


def rollback(folder: Path, *, pages: int = 2, page: int = 4096, tail: bytes = b"") -> None:
    """Lay a hot rollback journal beside the journal: its header, no page, and a ``tail``."""
    head = ROLLBACK + bytes(8) + pages.to_bytes(4) + (512).to_bytes(4) + page.to_bytes(4)
    (folder / f"{NAME}-journal").write_bytes(head.ljust(512, b"\0") + tail)


def names(victim: Path) -> bytes:
    """Return a super-journal record that names ``victim``."""
    name = str(victim).encode()
    return (1).to_bytes(4) + name + len(name).to_bytes(4) + sum(name).to_bytes(4) + ROLLBACK


def untouched(garment: Path) -> None:
    """Show that nothing outside the garment's folder was made, taken away or changed."""
    assert {path.name for path in garment.parent.iterdir()} == {"garment", "mine"}
    assert (garment.parent / "mine").read_text(encoding="utf-8") == "mine"


def test_a_rollback_journal_cannot_have_a_file_deleted(garment: Path, way: Callable[[Path], object]) -> None:
    """One that ends in a super-journal record: SQLite would delete the file it names, from a private copy too."""
    rollback(garment, tail=names(garment.parent / "mine"))
    before = (garment / NAME).read_bytes()
    with pytest.raises(NotAJournal, match="names a further file"):
        way(garment)
    untouched(garment)
    assert (garment / NAME).read_bytes() == before
    (garment / f"{NAME}-journal").unlink()
    assert len(read(garment)) == 6


@pytest.mark.parametrize("before", [b"", b"x" * 3, (1).to_bytes(4)])
def test_nor_by_a_short_one(garment: Path, before: bytes, way: Callable[[Path], object]) -> None:
    """SQLite needs no header before the record: a name of a few bytes makes a file of less than 28."""
    (garment / f"{NAME}-journal").write_bytes(before + names(Path("m"))[4:])
    with pytest.raises(NotAJournal, match="names a further file"):
        way(garment)


def test_tables_without_end(garment: Path) -> None:
    """So many tables that reading which there are would take long: refused after a number of steps."""
    with closing(sqlite3.connect(garment / NAME)) as connection:
        connection.execute("CREATE TABLE t (a)")
        connection.execute("PRAGMA writable_schema=ON")
        (page,) = connection.execute("SELECT rootpage FROM sqlite_schema WHERE name = 't'").fetchone()
        named = ((f"t{number}", f"t{number}", page, f"CREATE TABLE t{number} (a)") for number in range(3_000))
        connection.executemany("INSERT INTO sqlite_schema VALUES ('table', ?, ?, ?, ?)", named)
        connection.commit()
    with pytest.raises(NotAJournal, match="tables without end"):
        Journal.open(garment, look=True)


def test_tables_of_which_too_much_is_said(garment: Path) -> None:
    """3,000 rows of the schema that shared one long value took half a minute: each is read whole at first."""
    with closing(sqlite3.connect(garment / NAME)) as connection:
        connection.execute("PRAGMA writable_schema=ON")
        long = "x" * (2 * door.MOST_IN_TABLE)
        connection.execute("INSERT INTO sqlite_schema VALUES (?, 'a', 'a', 0, NULL)", (long,))
        connection.commit()
    with pytest.raises(NotAJournal, match="longer than any of ours"):
        Journal.open(garment, look=True)


def test_what_is_kept_aside_keeps_all_its_names(garment: Path) -> None:
    """A name that is taken beside an older copy is not free: recovery goes on under the next."""
    (garment / "journal.damaged-1.sqlite3-journal").write_bytes(b"")
    rollback(garment)
    raw = (garment / NAME).read_bytes().replace(b"2024-05-01T12", b"2024-05-01T13")
    (garment / NAME).write_bytes(raw)
    aside = recover(garment).aside
    assert aside is not None
    assert aside.name == "journal.damaged-2.sqlite3"


def test_sqlite_would_delete_that_file(garment: Path) -> None:
    """The test above is about something that happens: SQLite by itself does it."""
    rollback(garment, pages=(garment / NAME).stat().st_size // 4096, tail=names(garment.parent / "mine"))
    with closing(sqlite3.connect(garment / NAME)) as connection:
        connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()
    assert not (garment.parent / "mine").exists()


@pytest.mark.parametrize(("pages", "page"), [(2**32 - 1, 4096), (2, 65536), (2, 512)])
def test_a_rollback_journal_of_another_database(garment: Path, pages: int, page: int) -> None:
    """One that would make the journal terabytes long, or has pages of another size, is none of ours."""
    rollback(garment, pages=pages, page=page)
    with pytest.raises(NotAJournal, match="another database"):
        Journal.open(garment)
    assert (garment / NAME).stat().st_size < 100_000


@pytest.mark.parametrize("tail", [b"", ROLLBACK[:7], b"x" * 600, bytes(700)])
def test_a_rollback_journal_like_ours_is_rolled_back(garment: Path, tail: bytes) -> None:
    """One that was left when the machine stopped, cut off anywhere, is no reason to refuse a garment."""
    pages = (garment / NAME).stat().st_size // 4096
    rollback(garment, pages=pages, tail=tail)
    assert len(read(garment)) == 6
    with Journal.open(garment) as journal:
        assert journal.last_seq == 6


@pytest.mark.parametrize("name", NAMES)
def test_a_pipe_keeps_nobody_waiting(garment: Path, name: str, way: Callable[[Path], object]) -> None:
    """A named pipe under any of the names is refused, and not waited for."""
    (garment / name).unlink(missing_ok=True)
    os.mkfifo(garment / name)
    with pytest.raises(NotAJournal, match="is not a file"):
        way(garment)
    untouched(garment)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("target", ["mine", "missing"])
def test_links_are_not_followed(garment: Path, name: str, target: str, way: Callable[[Path], object]) -> None:
    """SQLite would write its log and its memory into the file that a link leads to; a lock would be made there."""
    (garment / name).unlink(missing_ok=True)
    (garment / name).symlink_to(garment.parent / target)
    with pytest.raises(NotAJournal, match="is a link"):
        way(garment)
    untouched(garment)


@pytest.mark.parametrize("name", NAMES)
def test_second_names_are_not_written_to(garment: Path, name: str, way: Callable[[Path], object]) -> None:
    """The same through a second name of the same file (a hard link)."""
    (garment / name).unlink(missing_ok=True)
    (garment / name).hardlink_to(garment.parent / "mine")
    with pytest.raises(NotAJournal, match="has a second name"):
        way(garment)
    untouched(garment)


@pytest.mark.parametrize("name", NAMES)
def test_sizes_are_looked_at_before_anything_is_copied(garment: Path, name: str, way: Callable[[Path], object]) -> None:
    """A file of a terabyte, most of it holes, is neither read nor copied."""
    with (garment / name).open("wb") as file:
        file.truncate(2**40)
    with pytest.raises(NotAJournal, match="1,099,511,627,776 bytes"):
        way(garment)
    untouched(garment)


@pytest.mark.parametrize("name", [name for name in NAMES if name != NAME])
def test_folders_beside_a_journal(garment: Path, name: str, way: Callable[[Path], object]) -> None:
    """A folder where a file of the journal's would lie."""
    (garment / name).unlink(missing_ok=True)
    (garment / name).mkdir()
    with pytest.raises(NotAJournal, match="is not a file"):
        way(garment)


@pytest.mark.parametrize("name", [MAKING, *(MAKING + suffix for suffix in SIDE_FILES)])
def test_a_folder_where_a_journal_is_made(garment: Path, name: str) -> None:
    """One under the name that a new journal has until it is whole: neither begun nor recovered, and it is named."""
    (garment / name).mkdir()
    before = (garment / NAME).read_bytes().replace(b"2024-05-01T12", b"2024-05-01T13")
    (garment / NAME).write_bytes(before)
    with pytest.raises(NotAJournal, match=re.escape(f"{name} in ") + ".* is not a file"):
        recover(garment)
    assert (garment / NAME).read_bytes() == before
    (garment / NAME).unlink()
    with pytest.raises(NotAJournal, match=re.escape(f"{name} in ") + ".* is not a file"):
        Journal.create(garment)
    assert (garment / name).is_dir()


@pytest.mark.parametrize("name", NAMES)
def test_a_journal_is_not_begun_among_strange_files(tmp_path: Path, name: str) -> None:
    """Neither is one made where a link, a pipe or a folder lies in the way, nor written where they lead."""
    (tmp_path / "garment").mkdir()
    (tmp_path / "garment" / name).symlink_to(tmp_path / "missing")
    with pytest.raises(NotAJournal):
        Journal.create(tmp_path / "garment")
    assert [path.name for path in tmp_path.iterdir()] == ["garment"]


def test_a_linked_folder_goes_on_working(garment: Path) -> None:
    """Where the folder itself is reached through a link, the journal in it is read, written and recovered."""
    there = garment.parent / "there"
    there.symlink_to(garment)
    with Journal.open(there) as journal:
        journal.append([press(7)], at=NOON, sitting=1, after_ms=1)
    assert len(read(there)) == 7
    assert check(there).fault is None
    assert recover(there).fault is None


def test_a_body_is_never_larger_than_what_is_read(garment: Path) -> None:
    """What would not be fetched again is not written: the largest body comes back, one byte more is refused."""
    frame = len(written({"text": ""}))
    largest = {"text": "x" * (door.MOST_IN_BODY - frame)}
    with pytest.raises(Unwritable, match="bytes"):
        written({"text": largest["text"] + "x"})
    with pytest.raises(Unwritable, match="bytes"):
        written({"text": "é" * (door.MOST_IN_BODY // 2)})
    with Journal.open(garment) as journal:
        journal.append([NewEvent("large", 1, largest)], at=NOON, sitting=1, after_ms=1)
        assert journal.flush(30)
    assert read(garment)[-1].body == largest


@pytest.mark.parametrize("column", ["body", "kind", "at"])
def test_what_is_too_large_is_not_fetched(garment: Path, column: str) -> None:
    """A row of 40 MB: its length is looked at in SQLite, and none of it comes into memory."""
    last = read(garment)[-1]
    columns = {"at": last.at, "kind": "pressed", "body": "{}"} | {column: "x" * 40_000_000}
    at, kind, body = columns["at"], columns["kind"], columns["body"]
    chain = link(last.chain, 7, 7, at, 1, 0, kind, 1, body)
    with closing(sqlite3.connect(garment / NAME)) as connection:
        connection.execute(INSERT, (7, 7, at, 1, 0, kind, 1, body, chain))
        connection.commit()
    del columns, at, kind, body
    tracemalloc.start()
    try:
        with pytest.raises(Damaged, match="larger than any"):
            Journal.open(garment, look=True)
        report = check(garment)
        assert tracemalloc.get_traced_memory()[1] < 10_000_000
    finally:
        tracemalloc.stop()
    assert (report.events, report.fault) == (6, "an entry in it is larger than any that this program writes")
    assert recover(garment).events == 6
    assert len(read(garment)) == 6


def test_snapshots_that_are_too_large_or_too_many_are_passed_over(garment: Path) -> None:
    """They are a cache: the journal is read without them."""
    with closing(sqlite3.connect(garment / NAME)) as connection:
        rows = [(number, "0" * 64, 1, "x" * (40_000_000 if number == 6 else 10), "0" * 64) for number in range(1, 7)]
        connection.executemany("INSERT INTO snapshots VALUES (?, ?, ?, ?, ?)", rows)
        connection.commit()
    with Journal.open(garment, look=True) as journal:
        assert journal.newest_snapshot(1) is None
        assert len(tuple(journal.rows())) == 6


@pytest.mark.parametrize("value", [2.0, b"2", None])
def test_columns_of_another_type_are_damage(garment: Path, value: object) -> None:
    """A table says it is strict, and SQLite believes what a file holds; the chain alone would take 2.0 for 2."""
    rows = read(garment)
    chain = link(rows[-1].chain, 7, value, rows[-1].at, 1, 0, "k", 1, "{}")  # type: ignore[arg-type]
    fresh = garment / "fresh"
    with closing(sqlite3.connect(garment / NAME)) as connection, closing(sqlite3.connect(fresh)) as loose:
        connection.execute("PRAGMA journal_mode=DELETE")
        loose.execute("PRAGMA page_size=4096")
        for (sql,) in connection.execute("SELECT sql FROM sqlite_schema").fetchall():
            loose.execute(LOOSER.sub("", sql))
        loose.executemany(INSERT, connection.execute("SELECT * FROM events").fetchall())
        loose.execute(INSERT, (7, value, rows[-1].at, 1, 0, "k", 1, "{}", chain))
        loose.execute("PRAGMA writable_schema=ON")
        for name, sql in connection.execute("SELECT name, sql FROM sqlite_schema").fetchall():
            loose.execute("UPDATE sqlite_schema SET sql = ? WHERE name = ?", (sql, name))
        for pragma in ("application_id", "user_version"):
            number = connection.execute(f"PRAGMA {pragma}").fetchone()[0]
            loose.execute(f"PRAGMA {pragma}={number}")
        loose.commit()
    put_in_place(fresh, garment / NAME)
    with pytest.raises(FinishingError, match="event 7 is not as it was written"):
        read(garment)
    assert check(garment).events == 6
