"""Says in a sentence what keeps a journal from being saved, and what would help."""

import errno
import sqlite3

from finishing_tui.files import reason
from finishing_tui.garment.journal.reader import code

SLOW = "The disk is slow to answer; what waits is saved as soon as it does."

_FULL = "The disk is full: make room, and what waits is saved by itself."
_CLOSED = "The journal can be read but not written: give the right to write, and what waits is saved by itself."
_GONE = "The garment's folder cannot be reached: bring it back, and what waits is saved by itself."
_HELD = "Another program holds the journal: end it, and what waits is saved by itself."
_DAMAGED = "The journal on the disk is not as it was written: put the garment down and run 'finishing doctor' on it."

_BY_CODE = {
    sqlite3.SQLITE_FULL: _FULL,
    sqlite3.SQLITE_READONLY: _CLOSED,
    sqlite3.SQLITE_PERM: _CLOSED,
    sqlite3.SQLITE_CANTOPEN: _GONE,
    sqlite3.SQLITE_BUSY: _HELD,
    sqlite3.SQLITE_LOCKED: _HELD,
    sqlite3.SQLITE_PROTOCOL: _HELD,
    sqlite3.SQLITE_CORRUPT: _DAMAGED,
    sqlite3.SQLITE_NOTADB: _DAMAGED,
    sqlite3.SQLITE_CONSTRAINT: _DAMAGED,
}

_BY_ERRNO = {
    errno.ENOSPC: _FULL,
    errno.EDQUOT: _FULL,
    errno.EROFS: _CLOSED,
    errno.EACCES: _CLOSED,
    errno.EPERM: _CLOSED,
    errno.ENOENT: _GONE,
    errno.ENOTDIR: _GONE,
}


def in_words(error: Exception) -> str:
    """Return the sentence for ``error``, raised by SQLite, the system or the journal itself."""
    if isinstance(error, sqlite3.Error):
        return _BY_CODE.get(code(error) or -1) or _disk(str(error))
    if isinstance(error, OSError):
        return _BY_ERRNO.get(error.errno or -1) or _disk(reason(error))
    return _DAMAGED if isinstance(error, UnicodeDecodeError) else str(error)


def _disk(words: str) -> str:
    return f"The disk does not take what is written ({words}); it is tried again until it does."
