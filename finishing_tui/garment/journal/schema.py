"""The shape of a journal on disk, format 1, and how an empty or a copied one is made whole.

This is the part that cannot be changed cheaply: journals outlive the program that wrote them. Events are only ever
added: the triggers hold that for every program that opens the file, and so does the number, which must follow the
last one. Snapshots are a cache: whoever likes may empty or drop that table.
"""

import contextlib
import os
from collections.abc import Iterable
from pathlib import Path

from finishing_tui.files import sync_folder
from finishing_tui.garment.journal.door import PAGE, SIDE_FILES, beside, connect, unlink
from finishing_tui.garment.journal.rows import Row

NAME = "journal.sqlite3"
"""The journal's file in a garment's folder."""

MAKING = "journal.making"
"""A journal being made, until it is whole and takes its name; one left by a process that was killed means nothing."""

APPLICATION_ID = 0x464E5348
"""SQLite's mark of whose file it is, at byte 68: the letters FNSH."""

FORMAT = 1
"""SQLite's user_version, at byte 60: the number of this format."""

EVENTS = """\
CREATE TABLE events (
  seq INTEGER PRIMARY KEY,
  "group" INTEGER NOT NULL CHECK ("group" BETWEEN 1 AND seq),
  at TEXT NOT NULL,
  sitting INTEGER NOT NULL,
  after_ms INTEGER NOT NULL,
  kind TEXT NOT NULL,
  version INTEGER NOT NULL,
  body TEXT NOT NULL,
  chain TEXT NOT NULL CHECK (length(chain) = 64)
) STRICT"""

FOLLOW = """\
CREATE TRIGGER events_follow_one_another BEFORE INSERT ON events
WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM events)
BEGIN SELECT RAISE(ABORT, 'an event must follow the last one'); END"""

KEPT = """\
CREATE TRIGGER events_are_kept BEFORE DELETE ON events
BEGIN SELECT RAISE(ABORT, 'events are never taken out'); END"""

UNCHANGED = """\
CREATE TRIGGER events_stay_as_written BEFORE UPDATE ON events
BEGIN SELECT RAISE(ABORT, 'events are never changed'); END"""

SNAPSHOTS = """\
CREATE TABLE snapshots (
  seq INTEGER PRIMARY KEY,
  chain TEXT NOT NULL,
  version INTEGER NOT NULL,
  body TEXT NOT NULL,
  seal TEXT NOT NULL
) STRICT"""

NEEDED = {EVENTS, FOLLOW, KEPT, UNCHANGED}
"""What a journal must consist of."""

INSERT = "INSERT INTO events VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)"


def clear_side_files(path: Path) -> None:
    """Take away what lies beside ``path``: it must never be read together with another file of that name."""
    for suffix in SIDE_FILES:
        unlink(beside(path, suffix))


def build(path: Path, rows: Iterable[Row] = ()) -> None:
    """Make a whole journal of ``rows`` at ``path``, a name that only the holder of the lock uses, and sync it.

    A file left there by a process that was killed is made anew. Raises ``NotAJournal`` where no such file can be, and
    ``OSError`` and ``sqlite3.Error``; then nothing is left at ``path``.
    """
    unlink(path)
    clear_side_files(path)
    os.close(os.open(path, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
    try:
        with contextlib.closing(connect(path)) as connection:
            connection.execute(f"PRAGMA page_size={PAGE}")
            connection.execute("PRAGMA journal_mode=DELETE")
            connection.execute("PRAGMA synchronous=EXTRA")
            connection.execute("BEGIN IMMEDIATE")
            connection.execute(f"PRAGMA application_id={APPLICATION_ID}")
            connection.execute(f"PRAGMA user_version={FORMAT}")
            for statement in (EVENTS, FOLLOW, KEPT, UNCHANGED, SNAPSHOTS):
                connection.execute(statement)
            connection.executemany(INSERT, rows)
            connection.execute("COMMIT")
    except BaseException:
        path.unlink(missing_ok=True)
        clear_side_files(path)
        raise


def put_in_place(made: Path, path: Path) -> None:
    """Let the whole journal at ``made`` take the name ``path``, without the side files of what stood there.

    They go after the rename: if the machine stops between the two, they disturb a journal that is whole in itself,
    which the chain notices and ``recover`` mends; the other way round the last rows would be gone without a word.
    """
    made.replace(path)
    clear_side_files(path)
    sync_folder(path.parent)
