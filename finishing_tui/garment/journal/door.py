"""The one door to a journal's files: they are looked over, and only then does SQLite see them.

A garment's folder may come from anyone, and SQLite believes what lies beside a database. A rollback journal can name
a further file, anywhere, that SQLite then deletes, and can say how long the database shall be; through a link, or a
second name of the same file, its log and its shared memory are written into whatever they lead to; a pipe makes it
wait for ever. So what lies under our names must be plain files of one name each and of a sane length, and a rollback
journal must say only what ours say. What is *in* a database is proved by others: the tables by ``reader``, each row by
the chain, what the rows mean by ``garment.stored`` and ``garment.meaning``.
"""

import os
import sqlite3
import stat
import sys
from pathlib import Path

from finishing_tui.files import reason
from finishing_tui.garment.journal.errors import NotAJournal, Unreachable

LOCK = "journal.lock"
"""An empty file in a garment's folder. It stays there: only the system's lock on it means anything."""

SIDE_FILES = ("-wal", "-shm", "-journal")
"""What SQLite may keep beside a file that is open, or was when the machine stopped."""

PAGE = 4096
"""Bytes in a page; said here so that every journal has the same first page (see ``salvage``)."""

MOST_BYTES = 2**26
"""The largest file that is opened or copied: over a hundred thousand events such as ours."""

MOST_IN_BODY = 8 * 2**20
"""Bytes in the body of an event or a snapshot; none is written larger, and none larger is fetched."""

OLDEST_SQLITE = (3, 37, 0)
"""The first that knows STRICT tables."""

_ROLLBACK = bytes.fromhex("d9d505f920a163d7")
"""How a rollback journal begins, and how a super-journal record, at its end, does too (SQLite's file format, 3)."""

SHORTEST_RECORD = 16
"""Bytes behind the name in such a record; SQLite reads one wherever a file is at least so long."""

MOST_IN_TABLE = 10_000
"""Bytes in what a database says of one of its tables; it is read whole before anything else is."""

MOST_IN_TABLES = 20_000
"""Steps that SQLite may take to read which tables there are: ours take some hundred, pages that lead to one another
would take for ever."""

_LIMITS = {
    sqlite3.SQLITE_LIMIT_LENGTH: MOST_IN_BODY + 2**16,  # of a row: its body, and room for the rest of it
    sqlite3.SQLITE_LIMIT_SQL_LENGTH: 10_000,
    sqlite3.SQLITE_LIMIT_COLUMN: 16,
    sqlite3.SQLITE_LIMIT_EXPR_DEPTH: 20,
    sqlite3.SQLITE_LIMIT_COMPOUND_SELECT: 2,
    sqlite3.SQLITE_LIMIT_FUNCTION_ARG: 8,
    sqlite3.SQLITE_LIMIT_ATTACHED: 0,
    sqlite3.SQLITE_LIMIT_LIKE_PATTERN_LENGTH: 100,
    sqlite3.SQLITE_LIMIT_VARIABLE_NUMBER: 16,
    sqlite3.SQLITE_LIMIT_TRIGGER_DEPTH: 2,
    sqlite3.SQLITE_LIMIT_WORKER_THREADS: 0,
}
"""Room for what our own statements and tables need, and little more, whatever a file from elsewhere defines."""


def beside(path: Path, suffix: str) -> Path:
    """Return the name of a file that SQLite keeps beside ``path``."""
    return path.with_name(path.name + suffix)


def looked_over(path: Path) -> None:
    """Return if what lies under the name of the journal at ``path``, and beside it, may be opened.

    Nothing is opened but the rollback journal, and nothing is changed. Where a file is missing there is nothing to
    look at. Raises ``NotAJournal`` and ``Unreachable``.
    """
    for one in (path, *(beside(path, suffix) for suffix in SIDE_FILES), path.with_name(LOCK)):
        plain(one)
    try:
        _no_more_than_ours(beside(path, "-journal"))
    except FileNotFoundError:
        return
    except OSError as error:
        raise Unreachable(f"The journal in {path.parent.name} cannot be read: {reason(error)}.") from error


def plain(path: Path) -> None:
    """Return if ``path`` is missing or a plain file with one name and a sane length; it is not opened.

    Raises ``NotAJournal`` and ``Unreachable``.
    """
    try:
        found = path.lstat()
    except FileNotFoundError:
        return
    except OSError as error:
        raise Unreachable(f"{path.name} cannot be looked at: {reason(error)}.") from error
    if stat.S_ISLNK(found.st_mode):
        raise _foreign(path, "is a link to somewhere else")
    if not stat.S_ISREG(found.st_mode):
        raise _foreign(path, "is not a file")
    if found.st_nlink > 1:
        raise _foreign(path, "has a second name somewhere else")
    if found.st_size > MOST_BYTES:
        raise _foreign(path, f"has {found.st_size:,} bytes, and no garment's has more than {MOST_BYTES:,}")


def unlink(path: Path) -> None:
    """Take away what lies at ``path``, a name that only this program uses; it may be missing.

    Raises ``NotAJournal`` where that is a folder, and ``OSError``.
    """
    if path.is_dir() and not path.is_symlink():
        raise _foreign(path, "is not a file")
    path.unlink(missing_ok=True)


def connect(path: Path, mode: str = "rw", *, timeout: float = 5.0) -> sqlite3.Connection:
    """Return a hardened connection to the database at ``path``, once it was looked over.

    ``mode``: SQLite's own, "ro" or "rw", with any further parts of its URI after an ampersand. ``timeout``: seconds
    to wait for another's lock. Raises ``NotAJournal``, ``Unreachable``, ``sqlite3.Error``.
    """
    looked_over(path)
    uri = f"{path.absolute().as_uri()}?mode={mode}"
    connection = sqlite3.connect(uri, uri=True, isolation_level=None, timeout=timeout)
    try:
        _harden(connection)
        _has_few_tables(connection, path)
    except BaseException:
        connection.close()
        raise
    return connection


def _harden(connection: sqlite3.Connection) -> None:
    """Set what every connection needs: real syncs on a Mac, and no trust in what a file from elsewhere may define."""
    if sqlite3.sqlite_version_info < OLDEST_SQLITE:
        raise Unreachable(
            f"This Python comes with SQLite {sqlite3.sqlite_version}; journals need "
            f"{'.'.join(map(str, OLDEST_SQLITE))} or newer."
        )
    for limit, most in _LIMITS.items():
        connection.setlimit(limit, most)
    connection.setlimit(sqlite3.SQLITE_LIMIT_LENGTH, MOST_IN_TABLE)  # until it is known which tables there are
    if sys.version_info >= (3, 12):
        for option, on in (
            (sqlite3.SQLITE_DBCONFIG_DEFENSIVE, True),
            (sqlite3.SQLITE_DBCONFIG_ENABLE_VIEW, False),
            (sqlite3.SQLITE_DBCONFIG_DQS_DDL, False),
            (sqlite3.SQLITE_DBCONFIG_DQS_DML, False),
        ):
            connection.setconfig(option, on)
    connection.execute("PRAGMA trusted_schema=OFF")
    connection.execute("PRAGMA cell_size_check=ON")
    connection.execute("PRAGMA mmap_size=0")
    connection.execute("PRAGMA fullfsync=ON")
    connection.execute("PRAGMA checkpoint_fullfsync=ON")


def _has_few_tables(connection: sqlite3.Connection, path: Path) -> None:
    """Return if reading which tables there are comes to an end soon, or fails: then the next statement says why."""
    connection.set_progress_handler(lambda: 1, MOST_IN_TABLES)
    try:
        connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()
    except sqlite3.Error as error:
        code = getattr(error, "sqlite_errorcode", None)
        if code == sqlite3.SQLITE_INTERRUPT:
            raise _foreign(path, "has tables without end") from error
        if code == sqlite3.SQLITE_TOOBIG:
            raise _foreign(path, "has definitions of tables longer than any of ours") from error
    except UnicodeDecodeError:  # where the message quotes bytes that are no text
        return
    finally:
        connection.set_progress_handler(None, 0)
        connection.setlimit(sqlite3.SQLITE_LIMIT_LENGTH, _LIMITS[sqlite3.SQLITE_LIMIT_LENGTH])


def _no_more_than_ours(path: Path) -> None:
    """Return if the rollback journal at ``path`` says nothing that ours never say. Raises ``OSError`` too."""
    with path.open("rb") as file:
        head = file.read(28)
        size = file.seek(0, os.SEEK_END)
        file.seek(max(size - len(_ROLLBACK), 0))
        if file.read() == _ROLLBACK and size >= SHORTEST_RECORD:
            raise _foreign(path, "names a further file for the database to delete")
    if head.startswith(_ROLLBACK) and len(head) == 28:
        pages, _sector, page = (int.from_bytes(head[at : at + 4]) for at in (16, 20, 24))
        if pages * PAGE > MOST_BYTES or page not in {0, PAGE}:
            raise _foreign(path, "speaks of another database")


def _foreign(path: Path, why: str) -> NotAJournal:
    return NotAJournal(
        f"{path.name} in {path.parent.name} {why}. This program never makes such a file, so nothing was opened or "
        "changed: move it away, or ask whoever gave you the folder."
    )
