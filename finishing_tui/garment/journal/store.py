"""The one connection that writes: commits groups durably and keeps an eye on the files it writes to.

A file can be deleted, replaced or cut short while it is open, and writing to it then succeeds all the same. So a commit
only counts when the names in the folder still lead to the very files that were opened. Lives in the writer's thread.
"""

import contextlib
import os
import sqlite3
from collections.abc import Iterable, Iterator
from pathlib import Path

from finishing_tui.files import sync_folder
from finishing_tui.garment.journal import door, reader, schema
from finishing_tui.garment.journal.chain import seal
from finishing_tui.garment.journal.errors import Displaced
from finishing_tui.garment.journal.rows import Row

KEPT_SNAPSHOTS = 2
"""The newest, and one more in case that one turns out bad."""

BUSY_SECONDS = 2
"""How long a reader may keep a commit waiting where WAL is impossible."""

VFS = ""
"""SQLite's way to the system's files, as a part of its URI; the tests name one that cannot share memory."""

_KEEP = "INSERT OR REPLACE INTO snapshots VALUES (?, ?, ?, ?, ?)"
_THIN_OUT = "DELETE FROM snapshots WHERE seq NOT IN (SELECT seq FROM snapshots ORDER BY seq DESC LIMIT ?)"


class Store:
    """A journal open for writing."""

    def __init__(self, path: Path) -> None:
        """Open the journal at ``path``. Raises ``sqlite3.Error``, ``OSError``, ``NotAJournal`` and ``Displaced``."""
        door.looked_over(path)
        self.path = path
        self._folder = path.parent.stat()
        before = path.stat()
        self._connection = door.connect(path, f"rw{VFS}", timeout=BUSY_SECONDS)
        try:
            self._connection.execute("PRAGMA wal_autocheckpoint=0")
            self.wal = _choose_mode(self._connection)
            self.last = reader.last(self._connection)
            self._wal_path = door.beside(path, "-wal")
            self._file, self._log = path.stat(), self._stat_log()
        except BaseException:
            self._connection.close()
            raise
        if not os.path.samestat(before, self._file):
            self._connection.close()
            raise Displaced("the journal was exchanged while it was being opened")

    def commit(self, rows: Iterable[Row]) -> None:
        """Add ``rows`` in one transaction; when this returns they are on the disk under the journal's name.

        Raises ``sqlite3.Error``, ``OSError`` and ``Displaced``; then nothing may be said to be saved.
        """
        rows = tuple(rows)
        self._transact((schema.INSERT, columns) for columns in rows)
        if not self.in_place():
            raise Displaced("the journal has vanished from its folder or was exchanged")
        self._file, self._log = self.path.stat(), self._stat_log()
        self.last = rows[-1][0], rows[-1][8]

    def in_place(self) -> bool:
        """Say whether the names in the folder still lead to the files that are open here, and none was cut short."""
        try:
            return _still(self._file, self.path.stat()) and (
                not self.wal or (self._log is not None and _still(self._log, self._wal_path.stat()))
            )
        except FileNotFoundError:
            return False

    def same_folder(self) -> bool:
        """Say whether the folder that was opened still lies there, and not another one under its name."""
        return os.path.samestat(self._folder, self.path.parent.stat())

    def owns_log(self) -> bool:
        """Say whether the write-ahead log in the folder is this connection's own."""
        log = self._stat_log()
        return log is not None and self._log is not None and os.path.samestat(log, self._log)

    def rows(self) -> Iterator[Row]:
        """Yield all rows, each proved, from the files that are open here, even if their names are gone."""
        return reader.proven(self._connection)

    def save_snapshot(self, seq: int, version: int, text: str) -> None:
        """Keep ``text`` as what the events up to number ``seq`` come to. Raises ``sqlite3.Error``."""
        found = self._connection.execute("SELECT chain FROM events WHERE seq = ?", (seq,)).fetchone()
        if found is None:
            return
        self._connection.execute(schema.SNAPSHOTS.replace("TABLE", "TABLE IF NOT EXISTS", 1))
        columns = seq, found[0], version, text, seal(seq, found[0], version, text)
        self._transact([(_KEEP, columns), (_THIN_OUT, (KEPT_SNAPSHOTS,))])

    def drop_snapshots(self, numbers: Iterable[int]) -> None:
        """Take out the snapshots taken after these events. Raises ``sqlite3.Error``."""
        self._transact(("DELETE FROM snapshots WHERE seq = ?", (number,)) for number in numbers)

    def checkpoint(self, *, whole: bool = False) -> bool:
        """Move the log into the file; ``whole`` also empties it. Say if all of it went. Raises ``sqlite3.Error``."""
        if not self.wal:
            return True
        busy, logged, moved = self._connection.execute(
            f"PRAGMA wal_checkpoint({'TRUNCATE' if whole else 'PASSIVE'})"
        ).fetchone()
        self._file, self._log = self.path.stat(), self._stat_log()
        return not busy and logged == moved

    def put_down(self) -> None:
        """Make the journal one file that stands alone, and close it; while someone looks, the log stays beside it.

        Raises ``sqlite3.Error`` and ``OSError``; it is closed all the same, and whole, if not in one file.
        """
        with contextlib.closing(self._connection):
            self.checkpoint(whole=True)
            with contextlib.suppress(sqlite3.OperationalError):  # locked: someone looks
                self._connection.execute("PRAGMA journal_mode=DELETE")
        if not self.wal:  # what came along from a place where a log was possible
            door.beside(self.path, "-shm").unlink(missing_ok=True)
        sync_folder(self.path.parent)

    def close(self) -> None:
        """Close the connection and leave the files as they are."""
        self._connection.close()

    def _transact(self, work: Iterable[tuple[str, tuple[object, ...]]]) -> None:
        self._connection.execute("BEGIN IMMEDIATE")
        try:
            for statement, values in work:
                self._connection.execute(statement, values)
            self._connection.execute("COMMIT")
        except BaseException:
            if self._connection.in_transaction:
                with contextlib.suppress(sqlite3.Error):
                    self._connection.execute("ROLLBACK")
            raise

    def _stat_log(self) -> os.stat_result | None:
        try:
            return self._wal_path.stat()
        except FileNotFoundError:
            return None


def _still(then: os.stat_result, now: os.stat_result) -> bool:
    return os.path.samestat(then, now) and now.st_size >= then.st_size


def _choose_mode(connection: sqlite3.Connection) -> bool:
    """Set the write-ahead log with a sync at every commit; say whether it is possible here.

    It needs memory shared between processes, which network drives do not have. There SQLite's older way is used, with
    a sync of the folder too. A log that was left by an earlier process is read without shared memory, which takes the
    file for this connection alone, and that is let go at once.
    """
    try:
        if connection.execute("PRAGMA journal_mode=WAL").fetchone() == ("wal",):
            connection.execute("PRAGMA synchronous=FULL")
            return True
    except sqlite3.OperationalError as error:
        if reader.code(error) == sqlite3.SQLITE_BUSY:  # someone reads just now: that passes
            raise
    connection.execute("PRAGMA locking_mode=EXCLUSIVE")
    connection.execute("PRAGMA journal_mode=DELETE")
    connection.execute("PRAGMA synchronous=EXTRA")
    connection.execute("PRAGMA locking_mode=NORMAL")
    connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()  # the lock goes with the next reading
    return False
