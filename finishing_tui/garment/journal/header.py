"""Tells what stands under the journal's name before SQLite touches it.

SQLite writes to some files merely because they are opened. A file that is not ours, or is of a newer format, must not
be changed in the least, so its first bytes are read here by plain means.
"""

import contextlib
from pathlib import Path

from finishing_tui.files import reason
from finishing_tui.garment.journal import door, schema
from finishing_tui.garment.journal.errors import Damaged, Newer, NoJournal, NotAJournal, Unreachable
from finishing_tui.garment.journal.lock import held_here
from finishing_tui.garment.journal.reader import FAILURES

MAGIC = b"SQLite format 3\0"

_MODES = {b"\1\1", b"\2\2"}
"""Bytes 18 and 19: without a log, and with one."""


def identify(path: Path) -> None:
    """Return if ``path`` looks like a journal of ours, in a format we know, with nothing strange beside it.

    Raises ``NoJournal``, ``NotAJournal``, ``Newer``, ``Damaged`` or ``Unreachable``.
    """
    door.looked_over(path)
    if held_here(path.parent):
        return  # it was looked at when it was opened; see there why it is not opened again
    try:
        with path.open("rb") as file:
            head = file.read(100)
    except FileNotFoundError:
        raise NoJournal(f"There is no journal in {path.parent.name}.") from None
    except OSError as error:
        raise Unreachable(f"The journal in {path.parent.name} cannot be read: {reason(error)}.") from error
    if len(head) < 100 or not head.startswith(MAGIC):
        raise Damaged("the file is empty" if not head else "the file does not begin as a journal does")
    if int.from_bytes(head[68:72]) != schema.APPLICATION_ID:
        if not _has_our_tables(path):
            raise NotAJournal(
                f"{path.name} is a database, but not a journal of this program: move it away, it was not touched."
            )
        raise Damaged("its mark is not as it was written")
    written = int.from_bytes(head[60:64])
    if written > schema.FORMAT:
        raise Newer(written, schema.FORMAT)
    if written < schema.FORMAT:
        raise Damaged("its format is not as it was written")
    if head[18:20] not in _MODES:  # SQLite would still read it, but never write to it
        raise Damaged("its mode is not as it was written")


def _has_our_tables(path: Path) -> bool:
    # immutable: no lock, no side file, nothing that could change a stranger's file
    with contextlib.suppress(*FAILURES), contextlib.closing(door.connect(path, "ro&immutable=1")) as connection:
        return (schema.EVENTS,) in connection.execute("SELECT sql FROM sqlite_schema").fetchall()
    return False
