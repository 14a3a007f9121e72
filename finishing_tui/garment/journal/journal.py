"""The journal of a garment as the rest of the program knows it: rows are added, rows are read.

One thread makes and uses a ``Journal``. Adding never waits for the disk; a row that was added can be read at once,
and ``unsaved`` says how many groups the disk does not have yet.
"""

import contextlib
import sqlite3
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from datetime import datetime
from itertools import groupby, takewhile
from pathlib import Path
from typing import Self

from finishing_tui.craft.errors import FinishingError
from finishing_tui.files import reason
from finishing_tui.garment.journal import door, reader, schema
from finishing_tui.garment.journal.chain import START, link
from finishing_tui.garment.journal.errors import (
    AlreadyBegun,
    Damaged,
    DoesNotGoOn,
    NoJSON,
    NotSaved,
    OnlyToRead,
    Unreachable,
)
from finishing_tui.garment.journal.header import identify
from finishing_tui.garment.journal.lock import Lock
from finishing_tui.garment.journal.recovery import provable, set_aside
from finishing_tui.garment.journal.rows import JSON, LARGEST, NewEvent, Row, moment, parsed, written
from finishing_tui.garment.journal.writer import Writer

PROVED_WHOLE = 20_000
"""Up to so many events all are proved when a journal is opened (some 50 ms); beyond that, those since the newest sound
snapshot. Whatever is read later is proved then, and ``check`` proves everything."""

KEPT_IN_MEMORY = 2_000
"""So many of the last rows can be read without the disk, as taking back the last acts does."""


class Journal:
    """The journal of one garment, open for adding and reading, or only to look at."""

    def __init__(self, path: Path, last: tuple[int, str], lock: Lock | None, writer: Writer | None) -> None:
        """Use ``open`` or ``create``."""
        self._path = path
        self._last = last
        self._lock = lock
        self._writer = writer
        self._kept: deque[Row] = deque()

    @classmethod
    def create(cls, folder: Path, *, on_change: Callable[[], None] | None = None) -> "Journal":
        """Begin a journal in ``folder`` and open it; see ``open``.

        Raises ``AlreadyBegun``, ``NotAJournal``, ``InUse`` and ``Unreachable``.
        """
        path = folder / schema.NAME
        door.looked_over(path)
        try:
            lock = Lock(folder)
        except OnlyToRead as error:  # and nothing is there yet that could be looked at
            raise Unreachable(
                f"Nothing can be written in the folder {folder.name}, so the garment in it cannot be begun. Copy the "
                "folder to where you can write, and begin there."
            ) from error
        try:
            _begin(path)
        except BaseException:
            lock.release()
            raise
        return cls(path, (0, START), lock, Writer(path, (0, START), on_change))

    @classmethod
    def open(cls, folder: Path, *, look: bool = False, on_change: Callable[[], None] | None = None) -> "Journal":
        """Open the journal in ``folder``; with ``look`` only to read, which never disturbs who writes.

        ``on_change`` is called *from another thread* whenever ``unsaved`` went down or ``trouble`` changed. It must
        post its news and return: were it to wait for the thread that closes the journal, both would wait.

        Raises ``NoJournal``, ``NotAJournal``, ``Newer``, ``Damaged`` (with how many events are whole), ``Unreachable``,
        and without ``look`` also ``InUse``. Nothing on the disk is changed then.
        """
        path = folder / schema.NAME
        lock: Lock | None = None
        try:
            identify(path)
            lock = None if look else Lock(folder)
            last = _proved(path)
        except BaseException as error:
            if lock is not None:
                lock.release()
            if isinstance(error, Damaged):
                raise Damaged(error.wrong, provable(path)) from error
            raise
        return cls(path, last, lock, Writer(path, last, on_change) if lock is not None else None)

    @property
    def last_seq(self) -> int:
        """The number of the last event, 0 if there is none; when looking, of the last one on the disk right now."""
        if self._writer is None:
            with reader.reading(self._path) as connection:
                return reader.last(connection)[0]
        return self._last[0]

    @property
    def unsaved(self) -> int:
        """How many groups are not durable."""
        return self._writer.unsaved if self._writer else 0

    @property
    def trouble(self) -> str | None:
        """What keeps groups from being saved, as a sentence; None if nothing does."""
        trouble = self._writer.trouble if self._writer else None
        return trouble.sentence if trouble else None

    @property
    def why_unsaved(self) -> str:
        """The same within a sentence that is said after the program has ended; empty if nothing does."""
        trouble = self._writer.trouble if self._writer else None
        return trouble.why if trouble else ""

    @property
    def last(self) -> tuple[int, str]:
        """The number and the chain of the last event; when looking, of the last one when this was opened."""
        return self._last

    def left(self) -> tuple[tuple[int, str], tuple[Row, ...]]:
        """Return the number and the chain of the last durable event, and all rows that are not durable after it."""
        return self._writer.left() if self._writer else (self._last, ())

    def append(
        self, entries: Sequence[NewEvent], *, at: datetime, sitting: int, after_ms: int, joins: bool = False
    ) -> tuple[Row, ...]:
        """Add ``entries`` as one group, and return its rows as they will stand; never waits for the disk.

        ``joins``: they go on with the group that was added last, instead of being one of their own. ``at`` has a time
        zone; ``after_ms`` is counted from when the sitting began. Raises ``NotSaved`` (then nothing was added: refuse
        the command), and ``Unwritable`` for a body that would not come back the same.
        """
        if self._writer is None:
            raise NotSaved("You can only look at this garment here.")
        if not entries:
            raise ValueError("a group has at least one entry")
        self._writer.check_room()
        number, chain = self._last
        group, when = self._kept[-1].group if joins else number + 1, moment(at)
        rows: list[Row] = []
        for entry in entries:
            number += 1
            if not all(0 <= column <= LARGEST for column in (sitting, after_ms, entry.version)):
                raise ValueError("a sitting, a time or a version is out of range")
            text = written(entry.body)
            chain = link(chain, number, group, when, sitting, after_ms, entry.kind, entry.version, text)
            rows.append(Row(number, group, when, sitting, after_ms, entry.kind, entry.version, text, chain))
        added = tuple(rows)
        self._take(self._writer, added)
        return added

    def adopt(self, rows: Sequence[Row]) -> None:
        """Add ``rows`` that were chained to this journal's last one elsewhere, as they are and in their own groups.

        Never waits for the disk. Raises ``DoesNotGoOn`` where they do not follow the last event (then nothing was
        added) and ``NotSaved``.
        """
        if self._writer is None:
            raise NotSaved("You can only look at this garment here.")
        number, chain = self._last
        for one in rows:
            number, chain = number + 1, link(chain, *one[:8])
            if (one.seq, one.chain) != (number, chain):
                raise DoesNotGoOn("These entries do not follow what is in the journal.")
        for _, group in groupby(rows, key=lambda one: one.group):
            self._take(self._writer, tuple(group))

    def _take(self, writer: Writer, added: tuple[Row, ...]) -> None:
        writer.add(added)
        self._last = added[-1].seq, added[-1].chain
        self._kept.extend(added)
        while len(self._kept) > KEPT_IN_MEMORY and self._kept[0].seq <= writer.saved:
            self._kept.popleft()

    def rows(self, after: int = 0) -> Iterator[Row]:
        """Yield the rows after event number ``after`` in order, each proved; those not saved yet too.

        Raises ``Damaged`` at the first that is not whole, and ``Unreachable``.
        """
        kept = tuple(self._kept)
        first = kept[0].seq if kept else self._last[0] + 1
        if self._writer is None or after < first - 1:
            expected = after
            with reader.reading(self._path) as connection:
                for one in reader.proven(connection, after):
                    if self._writer is not None and one.seq >= first:
                        break
                    expected = one.seq
                    yield one
            if self._writer is not None and expected != first - 1:
                raise Unreachable("The journal on the disk is not the one that is being written just now.")
        for one in kept:
            if one.seq > after:
                yield one

    def group(self, seq: int) -> tuple[Row, ...]:
        """Return the rows of the group whose first event has the number ``seq``; none if there is no such group."""
        return tuple(takewhile(lambda one: one.group == seq, self.rows(seq - 1))) if seq > 0 else ()

    def flush(self, timeout: float) -> bool:
        """Wait until every group is durable, at most ``timeout`` seconds; say whether they are."""
        return self._writer is None or self._writer.flush(timeout)

    def snapshot(self, seq: int, version: int, body: JSON) -> None:
        """Hand over what the events up to number ``seq`` come to, in the program's snapshot ``version``.

        It is kept when there is time, and is only a convenience: nothing is said if that fails. ``body`` must not be
        changed afterwards.
        """
        if self._writer is not None:
            self._writer.add_snapshot(seq, version, body)

    def newest_snapshot(self, version: int) -> tuple[int, JSON] | None:
        """Return the newest sound snapshot of ``version`` and the number of the event it was taken after, if any.

        Others are passed over, and taken out if this journal is open for writing.
        """
        useless: set[int] = set()
        found: tuple[int, JSON] | None = None
        with contextlib.suppress(FinishingError), reader.reading(self._path) as connection:
            for seq, made_by, text in reader.snapshots(connection):
                if text is not None and made_by == version:
                    with contextlib.suppress(NoJSON):
                        found = seq, parsed(text)
                        break
                useless.add(seq)
        if useless and self._writer is not None:
            self._writer.drop_snapshots(useless)
        return found

    def close(self, timeout: float = 5.0) -> bool:
        """Put the garment down: save what waits, make the journal one file, free the lock. Say if all is saved.

        What cannot be saved within ``timeout`` seconds is given up; ``unsaved`` still says how much that is. More
        than once does no harm.
        """
        if self._writer is None:
            return True
        # The lock stays for as long as the thread might still write; the system frees it in the end.
        if self._writer.close(timeout) and self._lock is not None:
            self._lock.release()
            self._lock = None
        return self._writer.unsaved == 0

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


def _begin(path: Path) -> None:
    if path.exists():
        raise AlreadyBegun(f"There is a journal in {path.parent.name} already.")
    try:
        if door.beside(path, "-wal").exists():
            set_aside(path, "lost")  # of a journal that someone took away: not ours to throw out
        made = path.with_name(schema.MAKING)
        schema.build(made)
        schema.put_in_place(made, path)
    except (OSError, sqlite3.Error) as error:
        why = reason(error) if isinstance(error, OSError) else str(error)
        raise Unreachable(f"No journal can be begun in {path.parent.name}: {why}.") from error


def _proved(path: Path) -> tuple[int, str]:
    with reader.reading(path) as connection:
        last = reader.last(connection)
        after = 0
        if last[0] > PROVED_WHOLE:
            after = next((seq for seq, _, text in reader.snapshots(connection) if text is not None), 0)
        for _ in reader.proven(connection, after):
            pass
    return last
