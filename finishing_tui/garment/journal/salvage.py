"""Finds the longest run of events, from the first, that the chain proves whole in a damaged journal.

It works on private copies and never on the journal itself. What is proved is as it was written, whichever way it was
read, so several ways are tried and the one that proves most is right.
"""

import contextlib
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice
from pathlib import Path

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.journal import door, reader, schema
from finishing_tui.garment.journal.rows import Row


@dataclass(frozen=True, slots=True)
class Salvage:
    """What the chain proves whole in a journal."""

    last: Row | None
    """The last event proved, None if there is none."""
    copy: Path
    """The private copy that they were read from."""
    sound: bool
    """Whether there was nothing in the copy that could not be proved."""

    @property
    def whole(self) -> int:
        """How many events, from the first."""
        return self.last[0] if self.last else 0

    def rows(self) -> Iterator[Row]:
        """Yield the proved rows once more."""
        with contextlib.closing(door.connect(self.copy)) as connection:
            yield from islice(reader.proven(connection), self.whole)


@contextlib.contextmanager
def salvaged(path: Path) -> Iterator[Salvage]:
    """Copy the journal at ``path`` and find what is whole in it; the copies go when the block ends.

    Raises ``OSError`` where the copies cannot be made.
    """
    with tempfile.TemporaryDirectory(prefix="finishing-") as folder:
        yield max(_ways(path, Path(folder)), key=lambda found: found.whole)


def _ways(path: Path, folder: Path) -> Iterator[Salvage]:
    """Yield what each way of reading proves, until one finds no fault. The first is reading it as it is."""
    for mended in (False, True):
        for log in (True, False):
            place = folder / f"{mended}-{log}"
            place.mkdir()
            copy = reader.copy_into(path, place)
            if not log:
                schema.clear_side_files(copy)
            if mended:
                _exchange_first_page(copy)
            found = _prove(copy)
            yield found
            if found.sound:
                return


def _prove(copy: Path) -> Salvage:
    last: Row | None = None
    try:
        with contextlib.closing(door.connect(copy)) as connection:
            for columns in reader.proven(connection):
                last = columns
    except (FinishingError, *reader.FAILURES):
        return Salvage(last, copy, sound=False)
    return Salvage(last, copy, sound=True)


def _exchange_first_page(copy: Path) -> None:
    """Give ``copy`` the first page of a new journal: it says where the tables begin, and is the same in all of them.

    Only the length of the file differs, which SQLite takes from the file itself if the header's two counters differ.
    """
    fresh = copy.with_name("fresh")
    schema.build(fresh)
    page = bytearray(fresh.read_bytes()[: door.PAGE])
    page[92:96] = b"\0\0\0\0"  # the counter that says the length in the header is valid
    with copy.open("r+b") as file:
        file.write(page)
        file.seek(0, 2)
        if file.tell() % door.PAGE:
            file.write(bytes(door.PAGE - file.tell() % door.PAGE))
