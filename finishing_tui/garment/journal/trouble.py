"""Says in a sentence what keeps a journal from being saved, and what would help."""

import errno
import sqlite3
from dataclasses import dataclass

from finishing_tui.craft.words import sentence
from finishing_tui.files import reason
from finishing_tui.garment.journal.errors import Displaced
from finishing_tui.garment.journal.reader import code


@dataclass(frozen=True, slots=True)
class Trouble:
    """What keeps a journal from being saved.

    ``why`` stands within a sentence, and is true after the program has ended too; ``help`` is one of its own, true only
    while the program goes on: what would help, and that the rest saves itself then.
    """

    why: str
    help: str = ""

    @property
    def sentence(self) -> str:
        """All of it, for as long as the program goes on."""
        return f"{sentence(self.why)} {self.help}".rstrip()


SLOW = Trouble("the disk is slow to answer", "The rest is saved as soon as it does.")

_FULL = Trouble("the disk is full", "Free some space; the rest saves itself.")
_CLOSED = Trouble("the garment's folder is not writable", "Make it writable; the rest saves itself.")
_GONE = Trouble("the garment's folder cannot be reached", "Bring it back; the rest saves itself.")
_HELD = Trouble("another program holds the journal", "End it; the rest saves itself.")
_DAMAGED = Trouble("the journal on the disk is damaged", "Put the garment down and run 'finishing doctor' on it.")

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


def in_words(error: Exception) -> Trouble:
    """Return what ``error`` means, raised by SQLite, the system or the journal itself."""
    if isinstance(error, sqlite3.Error):
        return _BY_CODE.get(code(error) or -1) or _disk(str(error))
    if isinstance(error, OSError):
        return _BY_ERRNO.get(error.errno or -1) or _disk(reason(error))
    if isinstance(error, Displaced):
        return Trouble(error.why, error.help)
    return _DAMAGED if isinstance(error, UnicodeDecodeError) else _said(str(error))


def _disk(words: str) -> Trouble:
    return Trouble(f"the disk reports an error: {words}", "Still trying.")


def _said(text: str) -> Trouble:
    """Return one of the journal's own sentences, with what more it says as help."""
    why, _, more = text.partition(". ")
    return Trouble(f"{why[:1].lower()}{why[1:]}".removesuffix("."), more)
