"""The shelf: the folder of garments in hand, and how far each of them is."""

import os
import re
import shutil
import uuid
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.files import (
    NotWritten,
    is_file,
    path_in,
    private_folder,
    reason,
    sync_folder,
    usual_path,
    write_whole,
)
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME as JOURNAL
from finishing_tui.garment.sources import FILE, with_id
from finishing_tui.garment.state import State
from finishing_tui.inert import inert

Stands = Literal["to-come", "under-way", "done", "left-out", "here"]
"""How a step stands; ``here``: it is under the needles."""

NOT_BEGUN = "not begun"
"""What the shelf says of a garment that was never picked up."""

LONGEST_NAME = 60
"""Characters in the name of a folder on the shelf: it must fit with a number after it, on any system."""


@dataclass(frozen=True, slots=True)
class OnShelf:
    """A garment on the shelf.

    ``step`` of ``steps`` as the recipe numbers them (0 of 0: not begun); ``track``: how each step stands that is for
    its size; ``touched``: when it was last worked on, UTC, ISO 8601, empty if never; ``finished``: no step is left;
    ``where``: what was written as it was put down; ``next``: what comes next, in words, where that was asked for;
    ``trouble``: why it cannot be opened, as a sentence, empty if it can.
    """

    folder: Path
    title: str
    size: str = ""
    step: int = 0
    steps: int = 0
    heading: str = ""
    touched: str = ""
    trouble: str = ""
    track: tuple[Stands, ...] = ()
    finished: bool = False
    where: str = ""
    next: str = ""


def shelf_folder() -> Path:
    """Return the folder of garments in hand: ``FINISHING_SHELF``, or in the user's data folder. Raises ``NoHome``."""
    if named := path_in("FINISHING_SHELF"):
        return named
    from platformdirs import user_data_path  # noqa: PLC0415  (only when it is asked for)

    data = usual_path(lambda: user_data_path("finishing", appauthor=False), "the shelf", "FINISHING_SHELF")
    return data / "shelf"


def folders_on(shelf: Path) -> tuple[Path, ...]:
    """Return the folders of the garments on ``shelf`` by name, without opening any: none where there is no shelf."""
    try:
        found = [path for path in shelf.iterdir() if not path.name.startswith(".") and _is_garment(path)]
    except OSError:
        return ()
    return tuple(sorted(found))


@dataclass(frozen=True, slots=True)
class FilesLook:
    """What the files of a garment look like from outside, so that it is read again only when they changed."""

    files: tuple[tuple[str, int, int], ...]

    @property
    def latest(self) -> int:
        """When one of them was written last, in nanoseconds; 0 where there is none."""
        return max((written for _, written, _ in self.files), default=0)


def looks_like(folder: Path) -> FilesLook:
    """Return what the files of a garment look like, without opening any."""
    found = []
    for name in (FILE, JOURNAL, f"{JOURNAL}-wal"):
        try:
            file = (folder / name).stat()
        except OSError:
            continue
        found.append((name, file.st_mtime_ns, file.st_size))
    return FilesLook(tuple(found))


def on_shelf(shelf: Path) -> tuple[OnShelf, ...]:
    """Return the garments on ``shelf``, the one touched last first; a garment in trouble says why."""
    return in_order(seen(folder) for folder in folders_on(shelf))


def in_order(garments: Iterable[OnShelf]) -> tuple[OnShelf, ...]:
    """Return ``garments`` with the one touched last first; those never touched come last, by title."""
    by_title = sorted(garments, key=lambda one: (one.title.casefold(), one.folder.name))
    return tuple(sorted(by_title, key=lambda one: one.touched, reverse=True))


def seen(folder: Path, what_next: Callable[[State], str] = lambda _: "") -> OnShelf:
    """Return what the garment in ``folder`` shows on the shelf; one in trouble says why, whatever the trouble is.

    ``what_next`` says of a garment that was begun and is not finished what comes next.
    """
    try:
        return _seen(folder, what_next)
    except FinishingError as error:
        trouble = str(error).splitlines()[0]
    except Exception as error:  # noqa: BLE001  (a folder may come from anyone, and the others must be seen all the same)
        trouble = f"This garment cannot be read ({type(error).__name__}). Run 'finishing doctor' on it."
    return OnShelf(folder, inert(folder.name, lines=False), trouble=inert(trouble, lines=False))


def _seen(folder: Path, what_next: Callable[[State], str]) -> OnShelf:
    if not os.path.lexists(folder / JOURNAL):
        from finishing_tui.garment.file import read_garment  # noqa: PLC0415  (the reader; not once it is begun)

        garment, _ = read_garment(folder)
        return OnShelf(folder, garment.title, garment.size, heading=NOT_BEGUN)
    hand = InHand.open(folder, look=True)
    state = hand.state
    hand.close()
    if not state.sittings and not state.top:
        return OnShelf(folder, state.plan.title, state.plan.size, heading=NOT_BEGUN)
    finished = state.current is None
    step = len(state.steps) if state.current is None else state.current + 1
    heading = "finished" if state.current is None else state.plan.step(state.current).title
    last = state.sittings[-1] if state.sittings else None
    touched = state.last_act or (last.began if last else "")
    track = tuple(_stands(state, index) for index in range(len(state.steps)) if state.plan.is_for(index))
    where = last.where if last else ""
    plan = state.plan
    return OnShelf(
        folder,
        plan.title,
        plan.size,
        step,
        len(state.steps),
        heading,
        touched,
        track=track,
        finished=finished,
        where=where,
        next="" if finished else what_next(state),
    )


def _stands(state: State, index: int) -> Stands:
    return "here" if index == state.current else state.steps[index].status


def _is_garment(folder: Path) -> bool:
    return is_file(folder / FILE) or is_file(folder / JOURNAL)


def take_copy(source: Path, shelf: Path) -> Path:
    """Copy the garment in ``source`` onto the shelf under a free name and return the copy's folder.

    The copy gets an id of its own and appears whole or not at all. Raises ``NotWritten``.
    """

    def copied(waiting: Path) -> None:
        shutil.copytree(source, waiting)
        for path in (waiting, *waiting.rglob("*")):
            path.chmod(0o700 if path.is_dir() else 0o600)
        text = (waiting / FILE).read_text(encoding="utf-8")
        write_whole(waiting / FILE, with_id(text, str(uuid.uuid4())))

    return _placed(shelf, source.name, copied, "The garment could not be copied to the shelf")


def put_on_shelf(shelf: Path, called: str, text: str) -> Path:
    """Put a new garment, whose file holds ``text``, on the shelf under a free name like ``called``; return its folder.

    Its recipe is taken into its journal at once, so that from here on it needs nothing but its folder. It appears whole
    or not at all, open to its owner only. Raises ``NotWritten``, and ``BadGarment`` or ``BadRecipe`` where it cannot
    be begun.
    """

    def written(waiting: Path) -> None:
        waiting.mkdir(mode=0o700)
        write_whole(waiting / FILE, text)
        if not InHand.open(waiting).close():
            raise NotWritten("The garment could not be put on the shelf: its journal could not be saved.")

    return _placed(shelf, called, written, "The garment could not be put on the shelf")


def _placed(shelf: Path, called: str, fill: Callable[[Path], None], otherwise: str) -> Path:
    """Let ``fill`` make a folder beside the others, and give it its name once it is whole; else leave nothing of it."""
    private_folder(shelf)
    name = re.sub(r"[^a-z0-9]+", "-", called.lower()).strip("-")[:LONGEST_NAME].strip("-") or "garment"
    waiting = shelf / f".{name}.{uuid.uuid4().hex}"
    try:
        fill(waiting)
        for number in range(1, 1000):
            target = shelf / (name if number == 1 else f"{name}-{number}")
            if not target.exists():
                waiting.rename(target)
                try:
                    sync_folder(shelf)
                except OSError:
                    target.rename(waiting)  # whoever is refused finds nothing there
                    raise
                return target
    except (OSError, UnicodeDecodeError) as error:
        why = reason(error) if isinstance(error, OSError) else f"its {FILE} is not UTF-8 text"
        raise NotWritten(f"{otherwise}: {why}.") from error
    finally:
        shutil.rmtree(waiting, ignore_errors=True)
    raise NotWritten(f"There are too many garments named {name} on the shelf already.")
