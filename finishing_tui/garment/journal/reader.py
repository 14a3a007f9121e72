"""Reads a journal without changing it, and hands out no row that the chain does not prove.

Every reading opens a connection of its own, in the thread that reads, and closes it: nothing that looks at a garment
stays in the way of putting it down. A row is proved against the row before it each time it is read.
"""

import contextlib
import shutil
import sqlite3
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from finishing_tui.craft.errors import FinishingError
from finishing_tui.files import reason
from finishing_tui.garment.journal import door, schema
from finishing_tui.garment.journal.chain import START, link, seal
from finishing_tui.garment.journal.errors import Damaged, Newer, Unreachable
from finishing_tui.garment.journal.rows import TYPES, Row

_AFTER = """\
SELECT seq, "group", at, sitting, after_ms, kind, version, body, chain FROM events WHERE seq > ? ORDER BY seq"""

_ONE = _AFTER.replace("seq > ?", "seq = ?")

_NOT_DAMAGE = {
    sqlite3.SQLITE_BUSY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_FULL, sqlite3.SQLITE_INTERRUPT, sqlite3.SQLITE_IOERR,
    sqlite3.SQLITE_LOCKED, sqlite3.SQLITE_NOMEM, sqlite3.SQLITE_PERM, sqlite3.SQLITE_PROTOCOL, sqlite3.SQLITE_READONLY,
}  # fmt: skip

_MIXED_UP = "its contents no longer fit together"
_IN_WORDS = {
    sqlite3.SQLITE_CORRUPT: "parts of the file are missing or were written over",
    sqlite3.SQLITE_NOTADB: "the file is no longer a database",
    sqlite3.SQLITE_TOOBIG: "an entry in it is larger than any that this program writes",
}
"""What people are told of damage that SQLite finds; its own words help nobody at the needles."""

MOST_SNAPSHOTS = 8
"""So many of the newest are looked at; no more than two are kept."""

FAILURES = (sqlite3.Error, UnicodeDecodeError)
"""What SQLite's calls raise; the latter where its message quotes damaged bytes that are no text."""


@contextlib.contextmanager
def reading(path: Path) -> Iterator[sqlite3.Connection]:
    """Open the journal at ``path`` for reading, with its format and tables checked.

    SQLite cannot read in place what was not put down where the folder cannot be written, nor what has to be rolled back
    first: a private copy is read instead. Raises ``Damaged``, ``Newer`` and ``Unreachable``, also for errors of SQLite
    inside the block.
    """
    try:
        try:
            connection = _connect(path)
        except sqlite3.OperationalError as error:
            if code(error) not in {sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_IOERR}:
                raise
            with tempfile.TemporaryDirectory(prefix="finishing-") as folder:
                copy = copy_into(path, Path(folder))
                with contextlib.closing(_connect(copy, "rw")) as connection:
                    _check_shape(connection)
                    yield connection
            return
        with contextlib.closing(connection):
            _check_shape(connection)
            yield connection
    except FAILURES as error:
        raise as_ours(error) from error
    except OSError as error:
        raise Unreachable(f"The journal cannot be read: {reason(error)}.") from error


def proven(connection: sqlite3.Connection, after: int = 0) -> Iterator[Row]:
    """Yield the rows after event number ``after``, each proved whole; raise ``Damaged`` at the first that is not."""
    number, chain = after, START
    try:
        if after:
            found = connection.execute("SELECT chain FROM events WHERE seq = ?", (after,)).fetchone()
            if found is None:
                if connection.execute("SELECT 1 FROM events WHERE seq > ? LIMIT 1", (after,)).fetchone():
                    raise Damaged(f"event {after} is missing", after - 1)
                return
            chain = found[0]
        for columns in _fetched(connection, after):
            number += 1
            if columns[0] != number:
                raise Damaged(f"event {number} is missing", number - 1)
            if tuple(map(type, columns)) != TYPES:  # STRICT holds for what SQLite writes, not for what it reads
                raise Damaged(f"event {number} is not as it was written", number - 1)
            chain = link(chain, *columns[:8])
            if chain != columns[8]:
                raise Damaged(f"event {number} is not as it was written", number - 1)
            yield Row._make(columns)
    except FAILURES as error:
        ours = as_ours(error)
        raise (Damaged(ours.wrong, number) if isinstance(ours, Damaged) else ours) from error


def _fetched(connection: sqlite3.Connection, after: int) -> Iterator[tuple[Any, ...]]:
    """Yield the rows after event number ``after`` as they are, each that can be fetched."""
    number = after
    try:
        for columns in connection.execute(_AFTER, (after,)):
            number += 1
            yield columns
    except FAILURES:
        # Python fetches one row ahead, and so loses the last whole one with the first that is not.
        with contextlib.suppress(*FAILURES):
            yield from connection.execute(_ONE, (number + 1,)).fetchall()
        raise


def last(connection: sqlite3.Connection) -> tuple[int, str]:
    """Return the number and the chain of the last event: 0 and the start of the chain if there is none."""
    found = connection.execute("SELECT seq, chain FROM events ORDER BY seq DESC LIMIT 1").fetchone()
    if found is None:
        return 0, START
    if tuple(map(type, found)) != (int, str):
        raise Damaged("its last event is not as it was written")
    return found[0], found[1]


def snapshots(connection: sqlite3.Connection) -> Iterator[tuple[int, int, str | None]]:
    """Yield the newest snapshots: the event's number, the version, and the text, or None if it is not sound."""
    try:
        for seq, chain, version, text, sealed in connection.execute(
            "SELECT seq, chain, version, body, seal FROM snapshots ORDER BY seq DESC LIMIT ?", (MOST_SNAPSHOTS,)
        ):
            event = connection.execute("SELECT chain FROM events WHERE seq = ?", (seq,)).fetchone()
            sound = event is not None and event[0] == chain and seal(seq, chain, version, text) == sealed
            yield seq, version, text if sound else None
    except (*FAILURES, TypeError):
        return  # a cache that cannot be read is no cache


def copy_into(path: Path, folder: Path) -> Path:
    """Copy the journal at ``path`` and what belongs to it into ``folder``; return the copy.

    Raises ``OSError``, and as ``door.looked_over`` does.
    """
    door.looked_over(path)
    copy = folder / schema.NAME
    shutil.copyfile(path, copy)
    for suffix in ("-wal", "-journal"):
        with contextlib.suppress(FileNotFoundError):
            shutil.copyfile(door.beside(path, suffix), door.beside(copy, suffix))
    return copy


def code(error: Exception) -> int | None:
    """Return SQLite's primary code of ``error``, or None where Python's own layer raised it."""
    extended: int | None = getattr(error, "sqlite_errorcode", None)
    return None if extended is None else extended & 0xFF


def as_ours(error: sqlite3.Error | UnicodeDecodeError) -> FinishingError:
    """Return what ``error`` means when a journal is read: damage, or a system that does not let us at it."""
    if code(error) in _NOT_DAMAGE:
        return Unreachable(f"The journal cannot be read: {error}.")
    return Damaged(_IN_WORDS.get(code(error) or -1, _MIXED_UP))


def _connect(path: Path, mode: str = "ro") -> sqlite3.Connection:
    connection = door.connect(path, mode)
    try:
        connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()  # SQLite opens the file only now
    except BaseException:
        connection.close()
        raise
    return connection


def _check_shape(connection: sqlite3.Connection) -> None:
    written = connection.execute("PRAGMA user_version").fetchone()[0]
    if written > schema.FORMAT:
        raise Newer(written, schema.FORMAT)
    found = {text for (text,) in connection.execute("SELECT sql FROM sqlite_schema")}
    if found - {schema.SNAPSHOTS} != schema.NEEDED:
        raise Damaged("its tables are not as this program makes them")
