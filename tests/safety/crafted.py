"""Garment folders as someone might craft them to do harm, each from a seed, and five ways of looking at one.

    python -m tests.safety.crafted 500 1      # 500 of them from seed 1, each looked at in every way, with the figures

A crafted journal is a real one of ours in which a few things were changed by someone who knows how the chain is made:
values of bodies, whole bodies, columns, rows, snapshots, and the files that lie beside it.
"""

import asyncio
import contextlib
import io
import json
import os
import random
import shutil
import sqlite3
import sys
import tempfile
import tracemalloc
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from unittest import mock

from finishing_tui import cli
from finishing_tui.garment import stored
from finishing_tui.garment.journal import Journal, reader, rows
from finishing_tui.garment.journal.chain import START, link, seal
from finishing_tui.garment.journal.door import beside
from finishing_tui.garment.journal.rows import Raw, raw
from finishing_tui.garment.journal.schema import INSERT, NAME, build
from finishing_tui.screens.app import FinishingApp

ROOT = Path(__file__).parents[2]

REAL = (
    *sorted(ROOT.glob("tests/journals/*.sqlite3")),
    *sorted(ROOT.glob("demo_projects/*/journal.sqlite3")),
)
"""The journals that are changed."""

STEERING = "\x1b]0;owned\x07 \u009b31m \u202eback \u2066 \u2028 \ud800 [red]x[/] [@click=app.quit]"
"""What could steer a terminal, and markup; a body holds it as escapes, as JSON may."""

ODD: tuple[Callable[[random.Random], Any], ...] = (
    lambda _: -1,
    lambda _: 0,
    lambda _: 1,
    lambda _: 2**31,
    lambda _: 10**18,
    lambda _: 99_999,
    lambda _: True,
    lambda _: None,
    lambda _: 1.5,
    lambda _: float("inf"),
    lambda _: float("nan"),
    lambda _: "",
    lambda _: STEERING,
    lambda _: "x" * 5_000,
    lambda _: "yesterday",
    lambda _: "left front neck",
    lambda _: [],
    lambda _: {},
    lambda _: [[1, 2], {"is": "Mark"}],
    lambda chance: chance.randrange(-50, 5_000),
)
"""What is put in the place of a value."""

LINES = b"where\nwords\nsteps\nnext\nedge\nneedles\nledger\nnotes\ntime\nstep 1\nstep\nd\nd\nb\nr\n3\nescape\nw\nescape\nt\nescape\ne\nescape\nx\nf\nf\nq\n"
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


def crafted(folder: Path, seed: str) -> Path:
    """Make the crafted garment of ``seed`` in ``folder`` and return it; the same seed makes the same one."""
    chance = random.Random(seed)  # noqa: S311  (nobody is kept out by it)
    garment = folder / "garment"
    real = chance.choice(REAL)
    garment.mkdir()
    shutil.copyfile(ROOT / "demo_projects" / "slate-crew" / "garment.toml", garment / "garment.toml")
    kept = [list(raw(one)) for one in _rows(real)]
    if chance.random() < 0.5:
        kept = kept[: chance.randrange(1, len(kept) + 1)]  # so that what is changed is not put right by what follows
    for _ in range(chance.choice((1, 1, 1, 2, 5))):
        chance.choice(CHANGES)(kept, chance)
    _write(garment / NAME, _chained(kept), chance)
    if chance.random() < 0.25:
        chance.choice(BESIDE)(garment, chance)
    return garment


def _rows(path: Path) -> tuple[Any, ...]:
    with tempfile.TemporaryDirectory() as folder:
        shutil.copyfile(path, Path(folder) / NAME)
        with Journal.open(Path(folder), look=True) as journal:
            return tuple(journal.rows())


def _chained(kept: list[list[Any]]) -> list[tuple[Any, ...]]:
    """Number the rows and chain them, as the program would."""
    chain, made = START, []
    for number, columns in enumerate(kept, 1):
        columns[0] = number
        if isinstance(columns[1], int):
            columns[1] = min(max(columns[1], 1), number)
        chain = link(chain, *columns[:8])
        made.append((*columns[:8], chain))
    return made


def _write(path: Path, made: list[tuple[Any, ...]], chance: random.Random) -> None:
    build(path)
    with contextlib.closing(sqlite3.connect(path)) as connection:  # not ours: a stranger's own limits are none
        connection.executemany(INSERT, made)
        if chance.random() < 0.3:
            last = made[-1]
            text = json.dumps(_snapshot(path.parent, made, chance))
            connection.execute(
                "INSERT INTO snapshots VALUES (?, ?, ?, ?, ?)",
                (last[0], last[8], 1, text, seal(last[0], last[8], 1, text)),
            )
        connection.commit()


def _snapshot(folder: Path, made: list[tuple[Any, ...]], chance: random.Random) -> Any:
    """Return the state that the rows come to, changed; nonsense where they come to none."""
    del folder
    from finishing_tui.garment.evolve import begun_with, evolve  # noqa: PLC0415
    from finishing_tui.garment.stored import from_row, snapshot_of  # noqa: PLC0415

    try:
        happened = [from_row(rows.row(one)) for one in made]
        state = begun_with(happened[0])
        for one in happened[1:]:
            state = evolve(state, one)
    except Exception:  # noqa: BLE001  (whatever it is, there is no state to change)
        return {"is": "State"}
    body = snapshot_of(state)
    for _ in range(3):
        _spoil(body, chance)
    return body


def _places(value: Any) -> Iterator[tuple[Any, Any]]:
    """Yield (container, key) for every value within."""
    if isinstance(value, dict | list):
        for key in list(value) if isinstance(value, dict) else range(len(value)):
            yield value, key
            yield from _places(value[key])


def _spoil(body: Any, chance: random.Random) -> None:
    """Change one thing in ``body``: mostly a value to another of its type, so that it is read and has to make sense."""
    places = list(_places(body))
    if not places:
        return
    if chance.random() < 0.8:
        leaves = [(within, key) for within, key in places if key != "is" and isinstance(within[key], int | str)]
        if leaves:
            within, key = chance.choice(leaves)
            texts = [one[at] for one, at in leaves if isinstance(one[at], str)]
            within[key] = _another(within[key], texts, chance)
        return
    within, key = chance.choice(places)
    match chance.randrange(6):
        case 0 if isinstance(within, dict):
            del within[key]
        case 1 if isinstance(within, dict):
            within["more"] = within[key]
        case 2 if isinstance(within, list):
            within.extend([within[key]] * chance.choice((1, 300)))
        case 3 if isinstance(within, list):
            del within[key]
        case 4:
            other, there = chance.choice(places)
            with contextlib.suppress(LookupError, ValueError):
                within[key], other[there] = json.loads(json.dumps(other[there])), json.loads(json.dumps(within[key]))
        case _:
            within[key] = chance.choice(ODD)(chance)


def _another(value: bool | int | str, texts: list[str], chance: random.Random) -> bool | int | str:
    if isinstance(value, bool):
        return not value
    if isinstance(value, int):
        return chance.choice((-1, 0, 1, 2, 3, value - 1, value + 1, value * 2, -value, 1000, 99_999, 2**31, 2**53))
    odd = ("", STEERING, "yesterday", "nowhere", "x" * 5_000, "1/0", "-3/4", "9" * 400, "a\nb", f"{value} ", "{0} %s")
    return chance.choice((*odd, chance.choice(texts) if texts else ""))


def _change_values(kept: list[list[Any]], chance: random.Random) -> None:
    columns = kept[0] if chance.random() < 0.3 else chance.choice(kept)
    with contextlib.suppress(ValueError):
        body = json.loads(columns[7])
        for _ in range(chance.choice((1, 1, 3))):
            _spoil(body, chance)
        columns[7] = json.dumps(body)


def _change_body(kept: list[list[Any]], chance: random.Random) -> None:
    chance.choice(kept)[7] = chance.choice(
        (
            "",
            "nonsense",
            "null",
            "[]",
            '{"is":',
            "[" * 100_000,
            '{"a":' * 50_000 + "1" + "}" * 50_000,
            '{"step":' + "9" * 5_000 + "}",
            "NaN",
            '{"text":"' + "x" * 9_000_000 + '","step":null}',
            "[" + "1," * 1_000_000 + "1]",
        )
    )


def _change_column(kept: list[list[Any]], chance: random.Random) -> None:
    columns = chance.choice(kept)
    at = chance.choice((1, 2, 3, 4, 5, 6))
    columns[at] = chance.choice(
        {
            1: (0, -5, 2**62),
            2: (
                "yesterday",
                "",
                "9999-12-31T23:59:59.999Z",
                "0001-01-01T00:00:00.000Z",
                "2024-02-30T00:00:00.000Z",
                STEERING[:14],
            ),
            3: (-1, 2**62, 0),
            4: (-1, 2**62),
            5: ("Dyed", "", "Act", "Taken", "PutDown", "TakenBack", "x" * 9_000_000, "\x1b]0;owned\x07"),
            6: (0, -1, 2, 2**62),
        }[at]
    )


def _change_rows(kept: list[list[Any]], chance: random.Random) -> None:
    at, other = chance.randrange(len(kept)), chance.randrange(len(kept))
    match chance.randrange(4):
        case 0 if len(kept) > 1:
            del kept[at]
        case 1:
            kept.insert(at, list(kept[other]))
        case 2:
            kept[at], kept[other] = kept[other], kept[at]
        case _:
            kept.extend(list(kept[at]) for _ in range(200))


CHANGES = (_change_values, _change_values, _change_values, _change_values, _change_body, _change_column, _change_rows)


def _outside(garment: Path) -> Path:
    return garment.parent / "outside.txt"


def _super(garment: Path, _: random.Random) -> None:
    name = str(_outside(garment)).encode()
    tail = len(name).to_bytes(4) + (sum(name) & 0xFFFFFFFF).to_bytes(4) + bytes.fromhex("d9d505f920a163d7")
    head = bytes.fromhex("d9d505f920a163d7") + bytes(8) + (3).to_bytes(4) + (512).to_bytes(4) + (4096).to_bytes(4)
    beside(garment / NAME, "-journal").write_bytes(head.ljust(512, b"\0") + (1).to_bytes(4) + name + tail)


def _pipe(garment: Path, chance: random.Random) -> None:
    os.mkfifo(_cleared(garment, chance))


def _link(garment: Path, chance: random.Random) -> None:
    _cleared(garment, chance).symlink_to(
        chance.choice((_outside(garment), garment.parent / "missing", Path("/dev/zero")))
    )


def _second_name(garment: Path, chance: random.Random) -> None:
    _cleared(garment, chance).hardlink_to(_outside(garment))


def _directory(garment: Path, chance: random.Random) -> None:
    _cleared(garment, chance).mkdir()


def _huge(garment: Path, chance: random.Random) -> None:
    with _cleared(garment, chance).open("wb") as file:
        file.truncate(2**40)


def _noise(garment: Path, chance: random.Random) -> None:
    _cleared(garment, chance).write_bytes(
        chance.choice((b"", chance.randbytes(5_000), bytes.fromhex("377f0682") + chance.randbytes(9_000)))
    )


def _cleared(garment: Path, chance: random.Random) -> Path:
    """Return one of the names that the program opens in a garment's folder, with nothing under it."""
    name = chance.choice(
        (NAME, f"{NAME}-wal", f"{NAME}-shm", f"{NAME}-journal", "journal.lock", "journal.making", "garment.toml")
    )
    path = garment / name
    path.unlink(missing_ok=True)
    return path


BESIDE = (_super, _super, _pipe, _link, _second_name, _directory, _huge, _noise)


@dataclass(slots=True)
class _Count:
    """What was read while a garment was looked at once."""

    decoded: int = 0
    read: int = 0


@contextlib.contextmanager
def _counted() -> Iterator[_Count]:
    count = _Count()
    decode, proven = stored.decode, reader.proven

    def counting(*given: Any) -> Any:
        count.decoded += 1
        return decode(*given)

    def proving(*given: Any) -> Iterator[Raw]:
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

KEYS = "enter space space x backspace right right left l escape question_mark escape w escape r escape t escape e escape r 3 enter escape enter enter n h i enter p q"
"""The keys that are pressed where a garment is worked on the screens."""

ROWS_PER_LOOK = 6
"""How often a row may be decoded at the most while a garment is looked at in one way, and worked by ``LINES``."""

BYTES_PER_LOOK = 14
"""How often what is in the rows may be read at the most: to prove it, to decode it, and by each way of salvage."""


def look(garment: Path, way: str, figures: Figures) -> None:
    """Look at a copy of ``garment`` in one way, and note every fault: a traceback, raw bytes, a file touched outside."""
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
        figures.most_memory = max(figures.most_memory, tracemalloc.get_traced_memory()[1])
        tracemalloc.stop()
        figures.looks += 1
        figures.statuses.setdefault(way, {}).setdefault(status, 0)
        figures.statuses[way][status] += 1
        said = out.buffer.getvalue() + err.buffer.getvalue()  # type: ignore[attr-defined]
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
            to = os.readlink(path)
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


def looked_at(many: int, seed: int) -> Figures:
    """Craft ``many`` garments from ``seed`` and look at each in every way."""
    figures = Figures()
    for number in range(many):
        with tempfile.TemporaryDirectory() as name:
            folder = Path(name) / "from"
            folder.mkdir()
            (folder / "outside.txt").write_text("mine", encoding="utf-8")
            garment = crafted(folder, f"{seed}/{number}")
            before = len(figures.faults)
            for way in WAYS:
                look(garment, way, figures)
            figures.faults[before:] = [f"{seed}/{number}: {fault}" for fault in figures.faults[before:]]
            figures.crafted += 1
    return figures


if __name__ == "__main__":
    seen = looked_at(int(sys.argv[1]), int(sys.argv[2]))
    print(*seen.faults, sep="\n")
    print(f"{seen.crafted} crafted, {seen.looks} looks, {len(seen.faults)} faults")
    print(f"a row decoded {seen.most_rows:.1f} times at the most, its body read {seen.most_read:.1f} times")
    print(f"memory at the most {seen.most_memory / 2**20:.0f} MB; exit statuses {seen.statuses}")
