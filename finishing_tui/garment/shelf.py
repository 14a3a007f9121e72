"""The shelf: the folder of garments in hand, and how far each of them is."""

import os
import re
import shutil
import uuid
from dataclasses import dataclass
from pathlib import Path

from finishing_tui.craft.errors import FinishingError
from finishing_tui.files import NotWritten, private_folder, reason, write_whole
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME as JOURNAL
from finishing_tui.garment.sources import FILE, with_id


@dataclass(frozen=True, slots=True)
class OnShelf:
    """A garment on the shelf.

    ``step`` of ``steps`` (0 of 0: not begun); ``touched``: when it was last worked on, UTC, ISO 8601, empty if never;
    ``trouble``: why it cannot be opened, as a sentence, empty if it can.
    """

    folder: Path
    title: str
    size: str
    step: int
    steps: int
    heading: str
    touched: str
    trouble: str


def shelf_folder() -> Path:
    """Return the folder of garments in hand: ``FINISHING_SHELF``, or in the user's data folder."""
    named = os.environ.get("FINISHING_SHELF")
    if named:
        return Path(named).expanduser()
    from platformdirs import user_data_path  # noqa: PLC0415  (only when it is asked for)

    return user_data_path("finishing", appauthor=False) / "shelf"


def on_shelf(folder: Path) -> tuple[OnShelf, ...]:
    """Return the garments in ``folder``, the one touched last first; a garment in trouble says why."""
    try:
        folders = [path for path in folder.iterdir() if (path / FILE).is_file() or (path / JOURNAL).is_file()]
    except OSError:
        return ()
    garments = [_seen(path) for path in folders]
    return tuple(sorted(garments, key=lambda one: (one.touched, one.title), reverse=True))


def _seen(folder: Path) -> OnShelf:
    try:
        if not (folder / JOURNAL).exists():
            from finishing_tui.garment.file import read_garment  # noqa: PLC0415  (the reader; not once it is begun)

            garment, _ = read_garment(folder)
            return OnShelf(folder, garment.title, garment.size, 0, 0, "not begun", "", "")
        hand = InHand.open(folder, look=True)
    except FinishingError as error:
        return OnShelf(folder, folder.name, "", 0, 0, "", "", str(error).splitlines()[0])
    state = hand.state
    hand.close()
    step = len(state.steps) if state.current is None else state.current + 1
    heading = "finished" if state.current is None else state.plan.step(state.current).title
    last = state.sittings[-1] if state.sittings else None
    touched = state.last_act or (last.began if last else "")
    return OnShelf(folder, state.plan.title, state.plan.size, step, len(state.steps), heading, touched, "")


def take_copy(source: Path, shelf: Path) -> Path:
    """Copy the garment in ``source`` onto the shelf under a free name and return the copy's folder.

    The copy gets an id of its own and appears whole or not at all. Raises ``NotWritten``.
    """
    private_folder(shelf)
    name = re.sub(r"[^a-z0-9]+", "-", source.name.lower()).strip("-") or "garment"
    waiting = shelf / f".{name}.{uuid.uuid4().hex}"
    try:
        shutil.copytree(source, waiting)
        for path in (waiting, *waiting.rglob("*")):
            path.chmod(0o700 if path.is_dir() else 0o600)
        text = (waiting / FILE).read_text(encoding="utf-8")
        write_whole(waiting / FILE, with_id(text, str(uuid.uuid4())))
        for number in range(1, 1000):
            target = shelf / (name if number == 1 else f"{name}-{number}")
            if not target.exists():
                waiting.rename(target)
                return target
    except (OSError, UnicodeDecodeError) as error:
        shutil.rmtree(waiting, ignore_errors=True)
        why = reason(error) if isinstance(error, OSError) else f"its {FILE} is not UTF-8 text"
        raise NotWritten(f"The garment could not be copied to the shelf: {why}.") from error
    shutil.rmtree(waiting, ignore_errors=True)
    raise NotWritten(f"There are too many garments named {name} on the shelf already.")
