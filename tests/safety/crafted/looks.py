"""The ways of looking at a garment, and what must hold of each however the garment was crafted."""

import asyncio
import contextlib
import io
import os
import shutil
import sqlite3
import sys
import tempfile
import tracemalloc
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from unittest import mock

from finishing_tui import cli
from finishing_tui.garment import stored
from finishing_tui.garment.journal import reader
from finishing_tui.garment.journal.rows import Row
from finishing_tui.garment.journal.schema import NAME
from finishing_tui.garment.stored import decode
from finishing_tui.screens.app import FinishingApp
from tests.safety.crafted.making import crafted

LINES = (
    b"where\nwords\nsteps\nnext\nedge\nneedles\nledger\nnotes\ntime\nstep 1\nstep\nd\nd\nb\nr\n3\nescape\n"
    b"w\nescape\nt\nescape\ne\nescape\nx\nf\nf\nq\n"
)
"""What is typed, line by line, where a garment is worked."""


@dataclass(slots=True)
class Figures:
    """What was seen over all that was looked at."""

    crafted: int = 0
    looks: int = 0
    statuses: dict[str, dict[int, int]] = field(default_factory=dict)
    most_rows: float = 0.0
    most_read: float = 0.0
    most_memory: int = 0
    faults: list[str] = field(default_factory=list)


@dataclass(slots=True)
class _Count:
    """What was read while a garment was looked at once."""

    decoded: int = 0
    read: int = 0


@contextlib.contextmanager
def _counted() -> Iterator[_Count]:
    count = _Count()
    proven = reader.proven

    def counting(*given: Any) -> Any:
        count.decoded += 1
        return decode(*given)

    def proving(*given: Any) -> Iterator[Row]:
        for one in proven(*given):
            count.read += len(one[7])
            yield one

    with mock.patch.object(stored, "decode", counting), mock.patch.object(reader, "proven", proving):
        yield count


WAYS: dict[str, list[str]] = {
    "record": ["record", "{garment}"],
    "record --json": ["record", "{garment}", "--json"],
    "doctor": ["doctor", "{garment}"],
    "doctor --recover": ["doctor", "{garment}", "--recover"],
    "shelf": ["shelf", "--json"],
    "work --plain": ["work", "{garment}", "--plain"],
    "work": ["work", "{garment}"],
}
"""The ways of looking at a garment, to its end by lines and by keys."""

KEYS = (
    "enter space space x backspace right right left l escape question_mark escape w escape r escape t escape e escape "
    "r 3 enter escape enter enter n h i enter p q"
)
"""The keys that are pressed where a garment is worked on the screens."""


def look(garment: Path, way: str, figures: Figures, *, weigh: bool = True) -> None:
    """Look at a copy of ``garment`` in one way; note each fault: a traceback, raw bytes, a file touched outside.

    ``weigh``: note the memory in use as well, which takes several times as long.
    """
    with tempfile.TemporaryDirectory() as name:
        shelf = Path(name) / "shelf"
        _copy(garment.parent, shelf)
        kept = {path: path.read_bytes() for path in _plain_files(shelf) if path.parent == shelf}
        words = [word.format(garment=shelf / "garment") for word in WAYS[way]]
        out, err = io.TextIOWrapper(io.BytesIO(), encoding="utf-8"), io.TextIOWrapper(io.BytesIO(), encoding="utf-8")
        typed = io.TextIOWrapper(io.BytesIO(LINES), encoding="utf-8")
        settings = Path(name) / "settings.toml"
        settings.write_text("")
        surroundings = {"FINISHING_SHELF": str(shelf), "FINISHING_SETTINGS": str(settings)}
        rows_there, bytes_there = _size(shelf / "garment")
        if weigh:
            tracemalloc.start()
        with (
            mock.patch.dict(os.environ, surroundings),
            mock.patch.multiple(sys, stdout=out, stderr=err, stdin=typed),
            _counted() as count,
        ):
            try:
                status = asyncio.run(_on_screens(shelf)) if way == "work" else cli.main(words)
            except Exception as error:  # noqa: BLE001  (that is what is looked for)
                status = -1
                tail = error.__traceback__
                while tail is not None and tail.tb_next is not None:
                    tail = tail.tb_next
                where = f"{Path(tail.tb_frame.f_code.co_filename).name}:{tail.tb_lineno}" if tail else ""
                figures.faults.append(f"{way}: {type(error).__name__} at {where}: {str(error)[:200]}")
            out.flush()
            err.flush()
        if weigh:
            figures.most_memory = max(figures.most_memory, tracemalloc.get_traced_memory()[1])
            tracemalloc.stop()
        figures.looks += 1
        figures.statuses.setdefault(way, {}).setdefault(status, 0)
        figures.statuses[way][status] += 1
        said = out.buffer.getvalue() + err.buffer.getvalue()
        if strange := _strange(said):
            figures.faults.append(f"{way}: {strange!r} went out")
        if len(said) > 5_000_000:
            figures.faults.append(f"{way}: {len(said)} bytes went out")
        after = {path: path.read_bytes() for path in _plain_files(shelf) if path.parent == shelf}
        if after != kept:
            figures.faults.append(f"{way}: a file outside was touched")
        if rows_there:
            figures.most_rows = max(figures.most_rows, count.decoded / rows_there)
            figures.most_read = max(figures.most_read, count.read / max(bytes_there, 1))


async def _on_screens(shelf: Path) -> int:
    app = FinishingApp(shelf, garment=shelf / "garment")
    async with app.run_test(size=(80, 24)) as pilot:
        for key in KEYS.split():
            await pilot.press(key)
    return app.return_code or 0


def _copy(source: Path, target: Path) -> None:
    """Copy a folder as it is: links, pipes and holes in files too; what leads to the outside leads to its copy."""
    target.mkdir()
    shutil.copyfile(source / "outside.txt", target / "outside.txt")
    (target / "garment").mkdir()
    for path in (source / "garment").iterdir():
        copy = target / "garment" / path.name
        if path.is_symlink():
            to = str(path.readlink())
            copy.symlink_to(to.replace(str(source), str(target)))
        elif path.is_fifo():
            os.mkfifo(copy)
        elif path.is_dir():
            copy.mkdir()
        elif path.stat().st_nlink > 1:
            copy.hardlink_to(target / "outside.txt")
        elif path.stat().st_size > 2**35:
            with copy.open("wb") as file:
                file.truncate(path.stat().st_size)
        else:
            data = path.read_bytes()
            if path.name.endswith("-journal"):
                old, new = str(source).encode(), str(target).encode()
                data = data if old not in data else _renamed(data, old, new)
            copy.write_bytes(data)


def _renamed(data: bytes, old: bytes, new: bytes) -> bytes:
    """Let a super-journal record name the copy of the file outside."""
    name = data[516 : data.rindex(bytes.fromhex("d9d505f920a163d7")) - 8].replace(old, new)
    tail = len(name).to_bytes(4) + (sum(name) & 0xFFFFFFFF).to_bytes(4) + bytes.fromhex("d9d505f920a163d7")
    return data[:516] + name + tail


def _plain_files(folder: Path) -> list[Path]:
    return [path for path in folder.iterdir() if path.is_file() and not path.is_symlink()]


def _size(garment: Path) -> tuple[int, int]:
    """Return how many rows the journal holds and how many bytes their bodies have; 0 where that is not to be seen."""
    path = garment / NAME
    if path.is_symlink() or not path.is_file() or path.stat().st_size > 2**30 or path.stat().st_nlink > 1:
        return 0, 0
    with tempfile.TemporaryDirectory() as name, contextlib.suppress(sqlite3.Error):
        shutil.copyfile(path, Path(name) / "copy")
        with contextlib.closing(sqlite3.connect(Path(name) / "copy")) as connection:
            found = connection.execute("SELECT count(*), sum(length(body)) FROM events").fetchone()
            return found[0], found[1] or 0
    return 0, 0


def _strange(said: bytes) -> str:
    """Return the first character in what went out that could steer; empty if there is none."""
    for char in set(said.decode("utf-8", "surrogateescape")) - {"\n", "\u200c", "\u200d"}:
        if unicodedata.category(char) in {"Cc", "Cf", "Cs", "Zl", "Zp"}:
            return char
    return ""


def looked_at(many: int, seed: int, *, screens_every: int = 1, weigh_every: int = 1) -> Figures:
    """Craft ``many`` garments from ``seed`` and look at each in every way; on the screens at every so many-th.

    ``weigh_every``: at every so many-th the memory in use is noted.
    """
    figures = Figures()
    for number in range(many):
        with tempfile.TemporaryDirectory() as name:
            folder = Path(name) / "from"
            folder.mkdir()
            (folder / "outside.txt").write_text("mine", encoding="utf-8")
            garment = crafted(folder, f"{seed}/{number}")
            before = len(figures.faults)
            for way in WAYS:
                if way != "work" or number % screens_every == 0:
                    look(garment, way, figures, weigh=number % weigh_every == 0)
            figures.faults[before:] = [f"{seed}/{number}: {fault}" for fault in figures.faults[before:]]
            figures.crafted += 1
    return figures
