"""The thread that makes events durable, in order, and never says they are when they are not.

Groups wait in a queue until the disk has them. When saving fails they go on waiting, the trouble is put in a sentence,
and it is tried again, ever more rarely, until it works. Whatever may wait (snapshots, checkpoints, a look whether the
file is still there) is done when no group is waiting, so that no press ever waits for it.
"""

import contextlib
import sqlite3
import threading
import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.journal.errors import Displaced, NotSaved, Unwritable
from finishing_tui.garment.journal.reader import FAILURES
from finishing_tui.garment.journal.repair import opened_again
from finishing_tui.garment.journal.rows import JSON, Row, written
from finishing_tui.garment.journal.store import Store
from finishing_tui.garment.journal.trouble import SLOW, Trouble, in_words

MOST_UNSAVED = 500
"""So many groups may wait; then nothing more is taken in."""

TOGETHER = 64
"""So many waiting groups at most share a transaction, to catch up after a pause of the disk."""

IDLE_SECONDS = 0.5
"""So long no group must have come before snapshots and checkpoints are made."""

WATCH_SECONDS = 5.0
"""How often it is seen to that the file is still there, while nothing happens."""

FIRST_PAUSE, LONGEST_PAUSE = 0.1, 5.0
"""Seconds between two tries to save; each pause is twice the one before."""

BEGIN_SECONDS = 2.0
"""So long at most the opening of a journal waits for its first connection to stand."""

SLOW_SECONDS = 3.0
"""A group that waits longer than this is called trouble, even if nothing failed."""


@dataclass(frozen=True, slots=True)
class _Snapshot:
    seq: int
    version: int
    body: JSON


class Writer:
    """Saves the groups of one journal; made and used by the thread that presses the keys."""

    def __init__(self, path: Path, last: tuple[int, str], on_change: Callable[[], None] | None) -> None:
        """Begin to save to the journal at ``path``, whose last event has the number and the chain ``last``.

        ``on_change`` is called from the writer's own thread whenever groups were saved or the trouble changed.
        """
        self._path = path
        self._on_change = on_change
        self._turn = threading.Condition()  # guards all that follows, except what only the thread touches
        self._groups: deque[tuple[Row, ...]] = deque()
        self._since = 0.0  # when the first waiting group came to be the first
        self._saved = last
        self._trouble: Trouble | None = None
        self._snapshot: _Snapshot | None = None
        self._unsound: set[int] = set()
        self._hurry = False
        self._closing_by: float | None = None
        self._begun = threading.Event()  # the first try to open the file is over
        self._store: Store | None = None  # only the thread touches this and what follows
        self._doubtful = False  # something failed: the store has to be opened again
        self._untidy = False  # something was saved since it was last tidied up
        self._idle = False  # nothing has come for a while
        self._pause = FIRST_PAUSE
        # A daemon: a disk that never answers must not keep the program from ending.
        self._thread = threading.Thread(target=self._run, name="journal", daemon=True)
        self._thread.start()
        # Going over to the log takes the file for itself for a moment: whoever reads next must not meet that.
        self._begun.wait(BEGIN_SECONDS)

    @property
    def unsaved(self) -> int:
        """How many groups are not durable."""
        return len(self._groups)

    @property
    def saved(self) -> int:
        """The number of the last durable event."""
        return self._saved[0]

    @property
    def trouble(self) -> Trouble | None:
        """What keeps groups from being saved; None if nothing does."""
        with self._turn:
            if self._trouble is None and self._groups and time.monotonic() - self._since > SLOW_SECONDS:
                return SLOW
            return self._trouble

    def check_room(self) -> None:
        """Raise ``NotSaved`` if no further group is taken in."""
        if self._closing_by is not None:
            raise NotSaved("The garment was put down: pick it up again to go on.")
        if len(self._groups) >= MOST_UNSAVED:
            raise NotSaved(
                f"{MOST_UNSAVED} acts wait to be saved, and no more are taken in. {(self.trouble or SLOW).sentence}"
            )

    def add(self, rows: tuple[Row, ...]) -> None:
        """Queue one group; never waits for the disk. Raises ``NotSaved``."""
        self.check_room()
        with self._turn:
            if not self._groups:
                self._since = time.monotonic()
            self._groups.append(rows)
            self._turn.notify_all()

    def add_snapshot(self, seq: int, version: int, body: JSON) -> None:
        """Keep a snapshot when there is time; one that still waits gives way to it."""
        with self._turn:
            self._snapshot = _Snapshot(seq, version, body)

    def drop_snapshots(self, numbers: set[int]) -> None:
        """Take out these snapshots when there is time."""
        with self._turn:
            self._unsound |= numbers

    def flush(self, timeout: float) -> bool:
        """Wait until every group is durable, at most ``timeout`` seconds; say whether they are."""
        with self._turn:
            self._hurry = True
            self._turn.notify_all()
            return self._turn.wait_for(lambda: not self._groups, timeout)

    def close(self, timeout: float) -> bool:
        """Save what waits, put the file in order and end; say whether the thread is gone.

        Groups that cannot be saved within ``timeout`` seconds are given up and stay counted as unsaved.
        """
        with self._turn:
            if self._closing_by is None:
                self._closing_by = time.monotonic() + timeout
            self._hurry = True
            self._turn.notify_all()
        self._thread.join(timeout + 1)
        return not self._thread.is_alive()

    def left(self) -> tuple[tuple[int, str], tuple[Row, ...]]:
        """Return the number and the chain of the last durable event, and all rows that wait after it."""
        with self._turn:
            return self._saved, tuple(row for group in self._groups for row in group)

    # From here on: the thread.

    def _run(self) -> None:
        while not self._finished():
            try:
                store = self._ready()
                if batch := self._waiting(TOGETHER):
                    store.commit(row for rows in batch for row in rows)
                    self._done(len(batch))
                else:
                    self._tidy(store)
                self._tell(None)
            except (*FAILURES, OSError, FinishingError) as error:
                self._doubtful = True
                self._tell(in_words(error))
                self._begun.set()
                self._rest()
            else:
                self._begun.set()
                self._wait()
        self._put_down()

    def _finished(self) -> bool:
        return self._closing_by is not None and (not self._groups or time.monotonic() >= self._closing_by)

    def _waiting(self, most: int) -> tuple[tuple[Row, ...], ...]:
        with self._turn:
            return tuple(islice(self._groups, most))

    def _ready(self) -> Store:
        """Return a store that holds exactly what counts as saved; mend what can be mended to have one."""
        if self._store is None or self._doubtful or not self._store.in_place():
            self._store = opened_again(self._path, self._store, self._saved)
            self._adopt(self._store)
            self._doubtful = False
        return self._store

    def _adopt(self, store: Store) -> None:
        """Count as saved what a commit left on the disk although it seemed to fail, once the disk surely has it."""
        if store.last == self._saved:
            return
        for count, rows in enumerate(self._waiting(MOST_UNSAVED), 1):
            if store.last == (rows[-1].seq, rows[-1].chain) and store.checkpoint(whole=True):
                self._done(count)
                return
        raise Displaced("the journal on the disk is not the one that is being written")

    def _done(self, count: int) -> None:
        with self._turn:
            for _ in range(count):
                rows = self._groups.popleft()
            self._saved = rows[-1].seq, rows[-1].chain
            self._since = time.monotonic()
            self._turn.notify_all()
        self._untidy = True
        self._pause = FIRST_PAUSE
        self._call()

    def _tell(self, trouble: Trouble | None) -> None:
        with self._turn:
            changed, self._trouble = self._trouble != trouble, trouble
        if changed:
            self._call()

    def _call(self) -> None:
        if self._on_change is not None:
            # Whatever the caller's own code does wrong, this thread must go on saving.
            with contextlib.suppress(Exception):
                self._on_change()

    def _wait(self) -> None:
        """Wait for something to save, and if nothing comes until it is time to tidy up or to look round."""
        with self._turn:
            patience = IDLE_SECONDS if self._untidy else WATCH_SECONDS
            if self._turn.wait_for(lambda: self._groups or self._closing_by is not None, patience):
                return
        self._idle = True

    def _rest(self) -> None:
        """Wait before the next try; a flush or a close cuts it short once."""
        with self._turn:
            left = self._pause if self._closing_by is None else self._closing_by - time.monotonic()
            self._turn.wait_for(lambda: self._hurry, max(0.0, min(self._pause, left)))
            self._hurry = False
        self._pause = min(self._pause * 2, LONGEST_PAUSE)

    def _tidy(self, store: Store) -> None:
        """Do what had to wait. It is only convenience: if it fails, nothing is lost, and it comes round again."""
        if not self._idle:
            return
        self._idle = self._untidy = False
        with contextlib.suppress(sqlite3.Error, OSError):
            self._save_snapshot(store)
            store.checkpoint()

    def _save_snapshot(self, store: Store) -> None:
        with self._turn:
            snapshot, self._snapshot = self._snapshot, None
            unsound, self._unsound = self._unsound, set()
        with contextlib.suppress(sqlite3.Error, Unwritable):
            if unsound:
                store.drop_snapshots(unsound)
            if snapshot is not None:
                store.save_snapshot(snapshot.seq, snapshot.version, written(snapshot.body))

    def _put_down(self) -> None:
        try:
            store = self._ready()
            self._save_snapshot(store)
            store.put_down()
        except (*FAILURES, OSError, FinishingError) as error:
            self._tell(in_words(error))
            if self._store is not None:
                self._store.close()
