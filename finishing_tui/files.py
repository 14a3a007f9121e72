"""Writes files so that they are whole or not there at all, and readable by their owner only; reads plain ones only.

A garment must survive a power cut in the middle of a save. Nothing here knows what is in a file, nothing here ever
writes into a file that already exists, and nothing here overwrites one except by renaming a whole new one over it.
"""

import contextlib
import errno
import os
import shutil
import stat
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from finishing_tui.craft.errors import FinishingError

if sys.platform == "darwin":
    import fcntl


class NotWritten(FinishingError):
    """A file could not be written; what stood there before still stands."""


class NoHome(FinishingError):
    """A path begins with the home folder of someone who has none."""


def write_whole(path: Path, content: str | bytes) -> None:
    """Put ``content`` (text as UTF-8, line ends as they are) at ``path``: all of it, durably, or nothing.

    The folder must exist. A symbolic link is followed, so that the file it names is replaced and the link stays.
    Raises ``NotWritten``.
    """
    target = Path(os.path.realpath(path))
    raw = content.encode() if isinstance(content, str) else content
    try:
        handle, part = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.", suffix=".part")  # 0600
        try:
            with open(handle, "wb") as file:  # noqa: PTH123  (a handle, not a path)
                file.write(raw)
                file.flush()
                sync(file.fileno())
            os.replace(part, target)  # noqa: PTH105  (both are plain strings and paths already)
        except BaseException:
            with contextlib.suppress(OSError):
                Path(part).unlink()
            raise
        sync_folder(target.parent)
    except OSError as error:
        raise NotWritten(f"{path.name} could not be written: {reason(error)}.") from error


def read_plain(path: Path, most: int = -1) -> bytes:
    """Return what is in the plain file at ``path``, ``most`` bytes of it where that is said.

    Nothing else is even opened: a pipe nobody writes to would keep the program waiting for ever, and a device could
    have no end. Raises ``OSError``.
    """
    found = path.stat().st_mode
    if stat.S_ISDIR(found):
        raise IsADirectoryError(errno.EISDIR, "it is a folder", str(path))
    if not stat.S_ISREG(found):
        raise OSError(errno.EINVAL, "it is no plain file but a pipe, a socket or a device", str(path))
    with path.open("rb") as file:
        return file.read(most)


def private_folder(path: Path) -> None:
    """Make the folder ``path`` and those above it where they are missing, open to their owner only (0700).

    A folder that is already there keeps its rights. Raises ``NotWritten``.
    """
    try:
        for folder in reversed([path, *path.parents]):
            if not folder.is_dir():
                folder.mkdir(mode=0o700, exist_ok=True)
                sync_folder(folder.parent)
    except OSError as error:
        raise NotWritten(f"The folder {path.name} could not be made: {reason(error)}.") from error


def sync(handle: int) -> None:
    """Return when everything written through ``handle`` is on the disk itself. Raises ``OSError``."""
    if sys.platform == "darwin":
        # fsync there stops at the drive's own memory; some network drives only know fsync.
        with contextlib.suppress(OSError):
            fcntl.fcntl(handle, fcntl.F_FULLFSYNC)
            return
    os.fsync(handle)


def sync_folder(folder: Path) -> None:
    """Return when the names in ``folder`` are on the disk, where the system has a way to ask for it."""
    if sys.platform != "win32":  # a folder cannot be opened there, and a rename is written through
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            with contextlib.suppress(OSError):  # some network drives refuse; the rename itself was done
                os.fsync(handle)
        finally:
            os.close(handle)


def is_file(path: Path) -> bool:
    """Return whether ``path`` leads to a plain file; no, where it leads to what cannot be looked at."""
    return os.path.isfile(path)  # noqa: PTH113  (pathlib raises for names that are too long, and for closed folders)


def is_dir(path: Path) -> bool:
    """Return whether ``path`` leads to a folder; no, where it leads to what cannot be looked at."""
    return os.path.isdir(path)  # noqa: PTH112  (as above)


def exists(path: Path) -> bool:
    """Return whether ``path`` leads to anything; no, where it leads to what cannot be looked at."""
    return os.path.exists(path)  # noqa: PTH110  (as above)


def expanded(path: Path) -> Path:
    """Return ``path`` with a tilde at its start put in words.

    Raises ``NoHome`` where there is no home folder, or no such user.
    """
    try:
        return path.expanduser()
    except RuntimeError:
        raise NoHome(f"{str(path)!r} names a home folder that there is not; write the whole path") from None


def as_written(path: Path) -> str:
    """Return ``path`` as people write it: with a tilde for the home folder of the user."""
    with contextlib.suppress(RuntimeError, ValueError):  # there is no home, or the path is not in it
        return str("~" / path.relative_to(Path.home()))
    return str(path)


def path_in(variable: str) -> Path | None:
    """Return the path that the environment names as ``variable``, a tilde put in words; ``None`` where it names none.

    Raises ``NoHome``, naming the variable.
    """
    named = os.environ.get(variable)
    try:
        return expanded(Path(named)) if named else None
    except NoHome as error:
        raise NoHome(f"{variable}: {error}") from None


def usual_path(find: Callable[[], Path], what: str, variable: str) -> Path:
    """Return the usual place of ``what``, as ``find`` gets it from the system.

    Raises ``NoHome`` where there is no home folder for it to be in; ``variable`` is the one that can name it instead.
    """
    try:
        return find()
    except RuntimeError:
        raise NoHome(f"there is no home folder for {what}; set HOME, or name one with {variable}") from None


def reason(error: OSError) -> str:
    """Return the system's own words for ``error``, ready to stand at the end of a sentence."""
    words = error.strerror or str(error)
    if isinstance(error, shutil.Error):  # a list, an entry a file: "[Errno 28] No space left on device: '...'"
        words = str(error.args[0][0][2]).rpartition("] ")[2].partition(": '")[0]
    return words[:1].lower() + words[1:]
