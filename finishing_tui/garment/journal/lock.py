"""One writer a garment: a lock that the system holds for this process and frees when it ends, however it ends.

The lock is on a file of its own, since SQLite's own locks come and go with every reading. It does not reach other
machines that share the folder, and some network drives have none; there the numbers of the events keep two writers
from mixing (``schema``).
"""

import contextlib
import errno
import os
import sys
import time
from pathlib import Path

from finishing_tui.files import reason
from finishing_tui.garment.journal.door import LOCK, plain
from finishing_tui.garment.journal.errors import InUse, OnlyToRead

if sys.platform == "win32":
    import msvcrt

    def _take(handle: int) -> None:
        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _take(handle: int) -> None:
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)


_TAKEN = {errno.EWOULDBLOCK, errno.EAGAIN, errno.EACCES, errno.EDEADLK}
"""How the systems say that someone else has the lock."""

_NO_LINK: int = getattr(os, "O_NOFOLLOW", 0)
"""A lock is never taken on, nor made, where a link leads to; Windows makes none without being asked."""

_held: set[Path] = set()


class Lock:
    """The right to write the journal of one folder, from when it is made to ``release`` or the process's end."""

    def __init__(self, folder: Path) -> None:
        """Take the lock, or raise ``InUse``, ``OnlyToRead`` or, for what is no lock file, ``NotAJournal``."""
        plain(folder / LOCK)
        try:
            self._handle = os.open(folder / LOCK, os.O_RDWR | os.O_CREAT | _NO_LINK, 0o600)
        except OSError as error:
            raise OnlyToRead(
                f"The folder {folder.name} is read-only ({reason(error)}). You can only look here."
            ) from error
        if not _taken(self._handle, tries=3):
            os.close(self._handle)
            raise InUse(f"The garment in {folder.name} is open in another window. You can only look here.")
        self._folder = folder.resolve()
        _held.add(self._folder)

    def release(self) -> None:
        """Give the lock back; more than once does no harm."""
        _held.discard(self._folder)
        with contextlib.suppress(OSError):
            os.close(self._handle)
        self._handle = -1


def in_use(folder: Path) -> bool:
    """Say whether anyone, this process too, holds the lock of ``folder``; nothing is made there.

    Raises ``NotAJournal`` for what is no lock file.
    """
    plain(folder / LOCK)
    try:
        handle = os.open(folder / LOCK, os.O_RDWR | _NO_LINK)
    except OSError:
        return False
    try:
        return not _taken(handle, tries=1)
    finally:
        os.close(handle)


def _taken(handle: int, tries: int) -> bool:
    # Someone who only asks whether it is in use has it for an instant: hence more than one try.
    for attempt in range(tries):
        if attempt:
            time.sleep(0.02)
        try:
            _take(handle)
        except OSError as error:
            if error.errno in _TAKEN:
                continue
        return True  # also where the drive knows no locks
    return False


def held_here(folder: Path) -> bool:
    """Say whether this very process holds the lock of ``folder``.

    It matters because the system drops all of a process's locks on a file when the process closes *any* of its handles
    to it: a file that SQLite has open for writing here must not be opened and closed by other means.
    """
    return folder.resolve() in _held
