"""Where a rescue file may lie: on another disk than the garment if there is any, and never in the garment's folder."""

import os
import tempfile
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from finishing_tui.files import NotWritten, private_folder
from finishing_tui.garment.journal.rescue import Rescue, for_garment, write

MOST_NAMES = 20_000
"""So many names of a folder are looked at: a temporary folder may be anyone's, and full of them."""


@dataclass(frozen=True, slots=True)
class RescuePlace:
    """A folder for rescue files; ``temporary``: the system may empty it."""

    folder: Path
    temporary: bool = False


@dataclass(frozen=True, slots=True)
class PutAway:
    """Where a rescue file was written, and whether the system may delete it there."""

    file: Path
    temporary: bool


def places() -> tuple[RescuePlace, ...]:
    """Return every folder that is considered, the best first, whether it is there or not."""
    return tuple(_places())


def put(rescue: Rescue, garment: Path) -> PutAway:
    """Write ``rescue`` of the garment in the folder ``garment`` to the best place that takes it.

    Raises ``NotWritten`` with what the last place said when none does.
    """
    why = "there is no folder to put them in"
    for place in _in_order(garment):
        try:
            if not place.temporary:
                private_folder(place.folder)
            return PutAway(write(rescue, place.folder), place.temporary)
        except NotWritten as error:
            why = str(error)
    raise NotWritten(why)


def rescue_files() -> tuple[Path, ...]:
    """Return whatever is named as rescue files are, in every place; nothing is opened."""
    return tuple(sorted({path for place in places() for path in _named_so(place.folder)}))


def _places() -> Iterator[RescuePlace]:
    from platformdirs import user_state_path  # noqa: PLC0415  (only when it is asked for)

    with suppress(RuntimeError, OSError):
        if (state := user_state_path("finishing", appauthor=False)).is_absolute():
            yield RescuePlace(state / "rescue")
    with suppress(RuntimeError, OSError):  # there is no home
        if (home := Path.home()).is_absolute() and home.is_dir():
            yield RescuePlace(home)
    with suppress(OSError):  # there is no temporary folder that can be written
        yield RescuePlace(Path(tempfile.gettempdir()), temporary=True)


def _in_order(garment: Path) -> list[RescuePlace]:
    inside = Path(os.path.realpath(garment))
    allowed = [place for place in places() if not Path(os.path.realpath(place.folder)).is_relative_to(inside)]
    own = _device(garment)
    return sorted(allowed, key=lambda place: own is not None and _device(place.folder) == own)  # sorting keeps the rest


def _device(folder: Path) -> int | None:
    """Return which device ``folder`` is on, or would be; None where that cannot be known."""
    for one in (folder, *folder.parents):
        with suppress(OSError):
            return one.stat().st_dev
    return None


def _named_so(folder: Path) -> Iterator[Path]:
    with suppress(OSError), os.scandir(folder) as found:
        for _, entry in zip(range(MOST_NAMES), found, strict=False):
            if for_garment(entry.name) is not None:
                yield Path(entry.path)
