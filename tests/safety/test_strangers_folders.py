"""A garment's folder from someone else: whatever is in it, looking at it does no harm and ends in a sentence.

Each of these did harm, hung or ended in a traceback once. They go through the commands, as a person would.
"""

import io
import json
import os
import shutil
import sqlite3
import sys
import tracemalloc
from collections.abc import Callable
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from finishing_tui.cli import main
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal.chain import START, link
from finishing_tui.garment.journal.errors import NotAJournal
from finishing_tui.garment.shelf import on_shelf
from finishing_tui.talk.acts import ACTS
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL

ROOT = Path(__file__).parents[2]

COMMANDS = {
    "record": ["record", "garment"],
    "doctor": ["doctor", "garment"],
    "recover": ["doctor", "garment", "--recover"],
    "shelf": ["shelf", "--json"],
    "plain": ["work", "garment", "--plain"],
}
"""Every way of looking at a garment that needs no screen."""

ROLLBACK = bytes.fromhex("d9d505f920a163d7")


@pytest.fixture
def garment(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Return a garment under way on a shelf, beside a whole one and a file of the user's own."""
    shelf = tmp_path / "shelf"
    shutil.copytree(ROOT / "demo_projects" / "sand-v", shelf / "garment")
    shutil.copytree(ROOT / "demo_projects" / "slate-crew", shelf / "whole")
    (tmp_path / "mine").write_text("mine", encoding="utf-8")
    monkeypatch.setenv("FINISHING_SHELF", str(shelf))
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"where\nd\nb\nq\n")))
    return shelf / "garment"


@pytest.fixture(params=list(COMMANDS))
def asked(request: pytest.FixtureRequest, capfdbinary: pytest.CaptureFixture[bytes]) -> Callable[[], str]:
    """Return what runs one of the commands, shows that it ended in words, and returns those."""

    def run() -> str:
        status = main(COMMANDS[request.param])
        said = capfdbinary.readouterr()
        assert status in {0, 1, 2}
        assert b"Traceback" not in said.err
        assert not {*said.out, *said.err} & ({*range(0x20), 0x7F} - {0x0A})
        return (said.out + said.err).decode()

    return run


def crafted(garment: Path, change: Callable[[list[list[Any]]], None]) -> None:
    """Let ``change`` change the rows of the garment's journal, and chain them again as the program would."""
    path = garment / "journal.sqlite3"
    with closing(sqlite3.connect(path)) as connection:
        rows = [list(row) for row in connection.execute("SELECT * FROM events ORDER BY seq")]
        change(rows)
        triggers = connection.execute("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'").fetchall()
        for name, _ in triggers:
            connection.execute(f"DROP TRIGGER {name}")
        connection.execute("DELETE FROM events")
        connection.execute("DELETE FROM snapshots")
        chain = START
        for number, row in enumerate(rows, 1):
            row[0], row[1] = number, min(row[1], number)
            chain = row[8] = link(chain, *row[:8])
            connection.execute("INSERT INTO events VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)", row)
        for _, sql in triggers:
            connection.execute(sql)
        connection.commit()


def last_body(text: str) -> Callable[[list[list[Any]]], None]:
    """Return a change that puts ``text`` in the place of the body of the last event."""
    return lambda rows: rows[-1].__setitem__(7, text)


def noted(text: str) -> Callable[[list[list[Any]]], None]:
    """Return a change by which the last event is a note, whatever its body."""
    return lambda rows: rows[-1].__setitem__(slice(5, 8), ("Noted", 1, text))


def column(at: int, value: Any) -> Callable[[list[list[Any]]], None]:
    """Return a change of one column of the last event."""
    return lambda rows: rows[-1].__setitem__(at, value)


def first_body(change: Callable[[Any], None]) -> Callable[[list[list[Any]]], None]:
    """Return a change of what the first event says: the plan that was taken. Later events go."""

    def changed(rows: list[list[Any]]) -> None:
        body = json.loads(rows[0][7])
        change(body)
        rows[0][7] = json.dumps(body)
        del rows[1:]

    return changed


def last_step(body: Any) -> Any:
    """Return the last step of the recipe that was taken."""
    return body["plan"]["recipe"]["step"][-1]


def numbers(body: Any) -> Any:
    """Return the numbers of the recipe that was taken."""
    return body["plan"]["recipe"]["number"]


def many_steps(body: Any) -> None:
    """Give the recipe that was taken a hundred times its steps."""
    body["plan"]["recipe"]["step"] *= 100
    body["steps"] *= 100
    if "ids" in body["plan"]:
        body["plan"]["ids"] = [str(number) for number in range(1, body["steps"] + 1)]


STILL_READ = {"a title that steers", "half a character"}
"""What is shown, with a stand-in for what could steer."""

CRAFTED: dict[str, Callable[[list[list[Any]]], None]] = {
    "no JSON": last_body("nonsense"),
    "too deep": last_body("[" * 100_000),
    "too many digits": last_body('{"step":' + "9" * 5_000 + "}"),
    "a large number": last_body('{"is":"SittingBegan","sitting":' + "9" * 4_000 + "}"),
    "not a table": last_body("[]"),
    "half a character": noted('{"is":"Noted","text":"\\ud800","step":null}'),
    "version 0": column(6, 0),
    "version -1": column(6, -1),
    "yesterday": column(2, "yesterday"),
    "the last day there is": column(2, "9999-12-31T23:59:59.999Z"),
    "a kind nobody wrote": column(5, "Dyed"),
    "a kind that steers": column(5, "\x1b]0;owned\x07"),
    "an abstract kind": column(5, "Act"),
    "no size": first_body(lambda body: body["plan"].__setitem__("size", "nowhere")),
    "a title that steers": first_body(lambda body: body["plan"].__setitem__("title", "\x1b[2J\x07\u202e\u2066\u009b")),
    "a repeat of 0": first_body(lambda body: last_step(body).__setitem__("repeat", {"of": 0, "plus": 0})),
    "a sum of nonsense": first_body(lambda body: numbers(body).__setitem__("shoulder", {"text": "x", "is_": "2 *"})),
    "steps without end": first_body(many_steps),
}  # fmt: skip
"""What a journal was made to say, in rows that the chain proves whole."""


@pytest.mark.parametrize("what", CRAFTED)
def test_whatever_a_journal_says(garment: Path, what: str, asked: Callable[[], str]) -> None:
    """It ends in words that name what is wrong, or is shown with nothing in it that could steer."""
    crafted(garment, CRAFTED[what])
    asked()


def test_a_sum_that_nobody_could_have_written(garment: Path) -> None:
    """A count of a step that is no sum at all is a sentence where it is asked for, not the end of the program."""

    def change(body: Any) -> None:
        for step in body["plan"]["recipe"]["step"][1:]:
            for one in [step, *step.get("section", ())]:
                for key in {"count", "stitches", "rounds", "rows"} & one.keys():
                    one[key] = "" if one[key] is not None else None

    crafted(garment, first_body(change))
    hand = InHand.open(garment)
    talk = Talk(hand, "", USUAL)
    for step in range(1, len(hand.state.steps)):
        talk.looking = step
        ask_for(talk, "numbers")
        talk.leave()
        for act in ACTS:
            ask_for(talk, act.id)
            talk.leave()
    hand.close()


def test_names_that_cannot_be_looked_at(garment: Path, asked: Callable[[], str]) -> None:
    """A link to a name that is too long for the disk: one garment says so, or is none, and the others are there."""
    whole = {one.folder.name for one in on_shelf(garment.parent)}
    (garment / "garment.toml").unlink()
    (garment / "garment.toml").symlink_to("a" * 300)
    assert {one.folder.name for one in on_shelf(garment.parent)} == whole
    (garment / "journal.sqlite3").unlink()
    (garment / "journal.sqlite3").symlink_to("a" * 300)
    assert {one.folder.name for one in on_shelf(garment.parent)} >= whole - {garment.name}
    asked()
    with pytest.raises(NotAJournal):
        InHand.open(garment)


@pytest.mark.parametrize("what", CRAFTED)
def test_the_others_on_the_shelf_are_there(garment: Path, what: str) -> None:
    """The shelf's row says why, and the others work."""
    crafted(garment, CRAFTED[what])
    found = {one.folder.name: one for one in on_shelf(garment.parent)}
    assert not found["whole"].trouble
    assert bool(found["garment"].trouble) == (what not in STILL_READ)
    assert found["garment"].title.isprintable()


def test_whatever_happens_in_one(garment: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Even where the program itself is at fault with one garment, the others are there."""
    opened = InHand.open

    def fails(folder: Path, **given: Any) -> InHand:
        if folder == garment:
            raise KeyError(folder)
        return opened(folder, **given)

    monkeypatch.setattr(InHand, "open", fails)
    found = {one.folder.name: one for one in on_shelf(garment.parent)}
    assert not found["whole"].trouble
    assert "KeyError" in found["garment"].trouble


def test_a_section_that_mirrors_nothing(garment: Path) -> None:
    """A stage that names a section there is not is found when the garment is opened, not when its screen is drawn."""

    def change(rows: list[list[Any]]) -> None:
        for row in rows:
            if '"mirrors":"' in row[7]:
                row[7] = row[7].replace('"mirrors":"', '"mirrors":"no ')

    shutil.copyfile(ROOT / "demo_projects" / "rust-crew" / "journal.sqlite3", garment / "journal.sqlite3")
    crafted(garment, change)
    (one,) = (one for one in on_shelf(garment.parent) if one.folder == garment)
    assert "does not make sense" in one.trouble


def test_a_file_of_the_user_is_not_deleted(garment: Path, tmp_path: Path, asked: Callable[[], str]) -> None:
    """A rollback journal that ends in a super-journal record names a file that SQLite would delete."""
    name = str(tmp_path / "mine").encode()
    head = ROLLBACK + bytes(8) + ((garment / "journal.sqlite3").stat().st_size // 4096).to_bytes(4)
    head += (512).to_bytes(4) + (4096).to_bytes(4)
    record = (1).to_bytes(4) + name + len(name).to_bytes(4) + sum(name).to_bytes(4) + ROLLBACK
    (garment / "journal.sqlite3-journal").write_bytes(head.ljust(512, b"\0") + record)
    asked()
    assert (tmp_path / "mine").read_text(encoding="utf-8") == "mine"
    assert (garment / "journal.sqlite3-journal").exists(), "nothing was changed"


@pytest.mark.parametrize("suffix", ["-wal", "-shm", "-journal"])
@pytest.mark.parametrize("kind", ["link", "second name", "pipe"])
def test_strange_files_beside_a_journal(
    garment: Path, tmp_path: Path, asked: Callable[[], str], suffix: str, kind: str
) -> None:
    """Nobody waits for a pipe, and nothing is written where a link leads; it is refused before anything is begun."""
    beside = garment / f"journal.sqlite3{suffix}"
    if kind == "link":
        beside.symlink_to(tmp_path / "mine")
    elif kind == "pipe":
        os.mkfifo(beside)
    else:
        beside.hardlink_to(tmp_path / "mine")
    before = (garment / "journal.sqlite3").read_bytes()
    said = asked()
    assert beside.name in said
    assert (tmp_path / "mine").read_text(encoding="utf-8") == "mine"
    assert (garment / "journal.sqlite3").read_bytes() == before


def test_a_lock_that_leads_elsewhere(garment: Path, tmp_path: Path, asked: Callable[[], str]) -> None:
    """A lock that is a dangling link: no file is made where it leads."""
    (garment / "journal.lock").unlink(missing_ok=True)
    (garment / "journal.lock").symlink_to(tmp_path / "made")
    asked()
    assert not (tmp_path / "made").exists()


def test_a_garment_file_that_leads_to_a_gigabyte(garment: Path, tmp_path: Path, asked: Callable[[], str]) -> None:
    """Of a begun garment's file only as much is read as shows that it is another now."""
    with (tmp_path / "large").open("wb") as file:
        file.truncate(2**30)
    (garment / "garment.toml").unlink()
    (garment / "garment.toml").symlink_to(tmp_path / "large")
    tracemalloc.start()
    try:
        asked()
        assert tracemalloc.get_traced_memory()[1] < 100_000_000
    finally:
        tracemalloc.stop()


def test_a_linked_folder_goes_on_working(garment: Path, tmp_path: Path, asked: Callable[[], str]) -> None:
    """Where the garment's folder is a link itself, everything is as it is without."""
    garment.rename(tmp_path / "elsewhere")
    garment.symlink_to(tmp_path / "elsewhere")
    assert "is a link" not in asked()
