"""Checks a journal from end to end, and makes a whole one of what a damaged one still proves.

The damaged journal is always kept beside, under a name that was free.
"""

import contextlib
import itertools
import os
import shutil
from dataclasses import dataclass
from pathlib import Path

from finishing_tui.files import reason, sync, sync_folder
from finishing_tui.garment.journal import door, reader, schema
from finishing_tui.garment.journal.errors import Damaged, Unreachable
from finishing_tui.garment.journal.header import identify
from finishing_tui.garment.journal.lock import Lock, in_use
from finishing_tui.garment.journal.salvage import salvaged


@dataclass(frozen=True, slots=True)
class CheckReport:
    """What a check of a whole journal found."""

    events: int
    """How many events, from the first, the chain proves whole."""
    fault: str | None
    """What is wrong, in words without a full stop; None if the journal is whole."""
    in_use: bool
    """Whether someone has the garment in hand: events may have come since."""


@dataclass(frozen=True, slots=True)
class Recovery:
    """What a recovery did."""

    events: int
    """How many events the journal now has: those that the chain proves whole."""
    fault: str | None
    """What was wrong; None if nothing was, and then nothing was done."""
    aside: Path | None
    """Where the damaged journal is kept; None if nothing was done."""
    unsure: int | None
    """The last group that was kept: whether it had more events cannot be told from what is left. None if there is
    none or nothing was done."""


def check(folder: Path) -> CheckReport:
    """Prove every event of the journal in ``folder``; nothing is changed.

    Raises ``NoJournal``, ``NotAJournal``, ``Newer`` and ``Unreachable``; damage is reported, not raised.
    """
    path = folder / schema.NAME
    busy = in_use(folder)
    try:
        identify(path)
        events, fault = _examine(path)
    except Damaged as error:
        events, fault = 0, error.wrong
    return CheckReport(events if fault is None else provable(path), fault, busy)


def recover(folder: Path) -> Recovery:
    """Make the journal in ``folder`` whole: exactly the events that the chain proves, as they were written.

    The damaged one is first copied aside under a new name; a sound one is left alone. Raises ``InUse``, ``NoJournal``,
    ``NotAJournal``, ``Newer`` and ``Unreachable``; then the journal is as it was.
    """
    path = folder / schema.NAME
    fault: str | None = None
    try:
        identify(path)  # before the lock: it makes a file, and a stranger's folder is left as it is
    except Damaged as error:
        fault = error.wrong
    lock = Lock(folder)
    try:
        if fault is None:
            events, fault = _examine(path)
            if fault is None:
                return Recovery(events, None, None, None)
        with salvaged(path) as found:
            aside = set_aside(path, "damaged")
            made = path.with_name(schema.MAKING)
            schema.build(made, found.rows())
            schema.put_in_place(made, path)
            return Recovery(found.whole, fault, aside, found.last[1] if found.last else None)
    except (OSError, *reader.FAILURES) as error:
        why = reason(error) if isinstance(error, OSError) else str(error)
        raise Unreachable(f"The journal could not be recovered, and is as it was: {why}.") from error
    finally:
        lock.release()


def provable(path: Path) -> int:
    """Return how many events of the damaged journal at ``path`` the chain proves whole. Raises ``Unreachable``."""
    try:
        with salvaged(path) as found:
            return found.whole
    except OSError as error:
        raise Unreachable(f"The journal is damaged, and cannot be read: {reason(error)}.") from error


def set_aside(path: Path, why: str) -> Path:
    """Copy the journal at ``path``, with its log, to a name in its folder that was free; return that name.

    Raises ``OSError``, and as ``door.looked_over`` does.
    """
    door.looked_over(path)
    for number in itertools.count(1):
        aside = path.with_name(f"journal.{why}-{number}.sqlite3")
        if not any(os.path.lexists(name) for name in (aside, *(door.beside(aside, one) for one in door.SIDE_FILES))):
            break
    for suffix in ("-wal", "-journal", ""):
        with contextlib.suppress(FileNotFoundError), door.beside(path, suffix).open("rb") as source:
            handle = os.open(door.beside(aside, suffix), os.O_CREAT | os.O_EXCL | os.O_WRONLY, 0o600)
            with open(handle, "wb") as target:  # noqa: PTH123  (a handle, not a path)
                shutil.copyfileobj(source, target)
                target.flush()
                sync(target.fileno())
    sync_folder(path.parent)
    return aside


def _examine(path: Path) -> tuple[int, str | None]:
    """Return how many events could be read in place and proved, and what is wrong, if anything is."""
    try:
        with reader.reading(path) as connection:
            events = sum(1 for _ in reader.proven(connection))
            found = connection.execute("PRAGMA quick_check(1)").fetchone()[0]
    except Damaged as error:
        return error.whole, error.wrong
    return events, None if found == "ok" else "its tables no longer fit together"
