"""Garment folders as someone might craft them to do harm, each from a seed.

A crafted journal is a real one of ours in which a few things were changed by someone who knows how the chain is made:
values of bodies, whole bodies, columns, rows, snapshots, and the files that lie beside it.
"""

import contextlib
import json
import os
import random
import shutil
import sqlite3
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.evolve import begun_with, evolve
from finishing_tui.garment.journal import Journal
from finishing_tui.garment.journal.chain import START, link, seal
from finishing_tui.garment.journal.door import beside
from finishing_tui.garment.journal.rows import Row
from finishing_tui.garment.journal.schema import INSERT, NAME, build
from finishing_tui.garment.stored import from_row, snapshot_of

ROOT = Path(__file__).parents[3]

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


def crafted(folder: Path, seed: str) -> Path:
    """Make the crafted garment of ``seed`` in ``folder`` and return it; the same seed makes the same one."""
    chance = random.Random(seed)  # noqa: S311  (nobody is kept out by it)
    garment = folder / "garment"
    real = chance.choice(REAL)
    garment.mkdir()
    shutil.copyfile(ROOT / "demo_projects" / "slate-crew" / "garment.toml", garment / "garment.toml")
    kept = [list(one) for one in _rows(real)]
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
    """Return the rows numbered and chained, as the program would do it."""
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
            text = json.dumps(_snapshot(made, chance))
            connection.execute(
                "INSERT INTO snapshots VALUES (?, ?, ?, ?, ?)",
                (last[0], last[8], 1, text, seal(last[0], last[8], 1, text)),
            )
        connection.commit()


def _snapshot(made: list[tuple[Any, ...]], chance: random.Random) -> Any:
    """Return the state that the rows come to, changed; nonsense where they come to none."""
    try:
        first, *rest = (from_row(Row._make(one)) for one in made)
        state = begun_with(first)
        for happening in rest:
            state = evolve(state, happening)
    except FinishingError:
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


def _another(value: int | str, texts: list[str], chance: random.Random) -> int | str:
    if isinstance(value, bool):
        return not value
    if isinstance(value, int):
        return chance.choice((-1, 0, 1, 2, 3, value - 1, value + 1, value * 2, -value, 1000, 99_999, 2**31, 2**53))
    odd = ("", STEERING, "yesterday", "nowhere", "x" * 5_000, "1/0", "-3/4", "9" * 400, "a\nb", f"{value} ", "{0} %s")
    return chance.choice((*odd, chance.choice(texts) if texts else ""))


def _change_values(kept: list[list[Any]], chance: random.Random) -> None:
    columns = kept[0] if chance.random() < 0.3 else chance.choice(kept)
    with contextlib.suppress(
        ValueError, RecursionError
    ):  # a body that was spoiled before may be nested as deep as that
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
