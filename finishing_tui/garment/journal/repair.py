"""Gets the writer going again after its file failed, vanished or was exchanged.

What was acknowledged must be in the file under the journal's name, so if that file is lost it is written again, whole,
from the one that is still open. Nothing that someone else put there is overwritten: it is copied aside first. Where
another folder has taken the place of the garment's own, nothing is written at all.
"""

import contextlib
from pathlib import Path

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.journal import door, reader, schema
from finishing_tui.garment.journal.errors import Displaced
from finishing_tui.garment.journal.recovery import set_aside
from finishing_tui.garment.journal.store import Store


def opened_again(path: Path, old: Store | None, saved: tuple[int, str]) -> Store:
    """Return a new store for ``path``; ``old`` is the one before, and ``saved`` the last event known to be durable.

    On success ``old`` is closed; on failure it stays open, for it may be all that is left of the journal. Raises
    ``sqlite3.Error``, ``OSError`` and the journal's own errors.
    """
    if old is not None and not old.in_place() and not _came_back(path, old, saved):
        _write_again(path, old, saved)
    store = Store(path)
    if old is not None:
        if store.last[0] < saved[0]:  # the file is there, but not all of it
            store.close()
            _write_again(path, old, saved)
            store = Store(path)
        old.close()
    return store


def _came_back(path: Path, old: Store, saved: tuple[int, str]) -> bool:
    """Say whether what lies at ``path`` is the journal itself, as on a disk that was taken out and put in again."""
    if not path.exists() or old.owns_log():  # a log of the lost file beside another file: not to be read together
        return False
    with contextlib.suppress(FinishingError), reader.reading(path) as connection:
        return reader.last(connection) == saved
    return False


def _write_again(path: Path, old: Store, saved: tuple[int, str]) -> None:
    if not old.same_folder():  # it may be another garment's: nothing of this one belongs in there
        raise Displaced(
            "another folder lies where the garment's own was", "Bring the right one back; the rest saves itself."
        )
    made = path.with_name(schema.MAKING)
    schema.build(made, old.rows())
    with contextlib.closing(door.connect(made)) as connection:
        found = reader.last(connection)
    if found != saved:
        made.unlink()
        raise Displaced("the journal has vanished from its folder, and not all of it can be read any more")
    if old.owns_log():
        schema.clear_side_files(path)
    if path.exists():
        set_aside(path, "replaced")
    schema.put_in_place(made, path)
