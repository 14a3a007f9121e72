"""The real program in a real terminal, killed and hung up: nothing that was shown as kept is lost."""

import json
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from tests.recipe_texts import along, place, recipe, step
from tests.terminal.terminal import ROOT, Terminal

RECIPE = recipe(
    "One long edge",
    place("band"),
    step("pick up and knit", "Pick up the edge", along("front edge", 64, 48), onto="band"),
    step("bind off", "Bind off", from_="band"),
)

GARMENT = """
format = 1
id = "killed"
title = "grey cardigan"
recipe = "edge.toml"
size = "one"
"""


@pytest.fixture
def garment(tmp_path: Path) -> Path:
    """Return the folder of a garment that was not begun yet, on a shelf of its own."""
    folder = tmp_path / "shelf" / "grey-cardigan"
    folder.mkdir(parents=True)
    (folder / "edge.toml").write_text(RECIPE, encoding="utf-8")
    (folder / "garment.toml").write_text(GARMENT, encoding="utf-8")
    return folder


def record(folder: Path) -> dict[str, object]:
    """Return what ``finishing record`` says of the garment."""
    command = [sys.executable, "-m", "finishing_tui", "record", str(folder), "--json"]
    said = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    found: dict[str, object] = json.loads(said.stdout)
    return found


def settled(terminal: Terminal) -> str:
    """Return the screen once nothing is written to it any more, and nothing on it is marked as not saved."""
    terminal.wait_for(lambda text: "not saved" not in text)
    while terminal.read(0.5):
        pass
    return terminal.wait_for(lambda text: "not saved" not in text)


def figures(text: str) -> list[str]:
    """Return the part of the screen that holds the figures, the next word, and the edge."""
    return text.splitlines()[3:18]


def test_killed_after_twenty_presses_the_count_is_what_it_was(garment: Path) -> None:
    """20 loops, then kill -9 and start again: the same count, the same figures, the same edge."""
    with Terminal("work", str(garment), shelf=garment.parent) as terminal:
        terminal.wait_for("front edge")
        terminal.press(*["space"] * 20)
        terminal.wait_for(lambda text: "row 26" in text)
        shown = figures(settled(terminal))
        terminal.kill()
        assert terminal.wait_for_end() == -signal.SIGKILL
    assert (record(garment)["count"], record(garment)["target"]) == (20, 48)
    with Terminal("work", str(garment), shelf=garment.parent) as terminal:
        terminal.wait_for(lambda text: "20" in text and "row 27" in text)  # coming back: the next row is named
        terminal.press("enter")
        terminal.wait_for("front edge")
        assert figures(settled(terminal)) == shown


@pytest.mark.parametrize("number", [signal.SIGHUP, signal.SIGTERM], ids=["hang-up", "terminate"])
def test_hung_up_or_told_to_end_it_is_put_down_properly(garment: Path, number: signal.Signals) -> None:
    """The sitting has an end, one file is left, and the garment can be taken up at once."""
    with Terminal("work", str(garment), shelf=garment.parent) as terminal:
        terminal.wait_for("front edge")
        terminal.press(*["space"] * 5)
        terminal.wait_for(lambda text: "row 6" in text)
        settled(terminal)
        terminal.kill(number)
        terminal.wait_for_end()
    found = record(garment)
    assert found["count"] == 5
    sittings = found["sittings"]
    assert isinstance(sittings, list)
    assert sittings[-1]["ended"]
    assert sorted(path.name for path in garment.glob("journal.sqlite3*")) == ["journal.sqlite3"]


def test_a_second_window_is_told_and_looks_only(garment: Path) -> None:
    """While one window has the garment in hand, another says so; what it shows cannot be changed there."""
    with Terminal("work", str(garment), shelf=garment.parent) as first:
        first.wait_for("front edge")
        first.press("space", "space", "space")
        settled(first)
        with Terminal("work", str(garment), shelf=garment.parent) as second:
            second.wait_for(lambda text: "window" in text or "in hand" in text)
            second.press("enter")
            second.wait_for("front edge")
            second.press("space")
            while second.read(0.5):
                pass
        assert record(garment)["count"] == 3


def test_a_garment_that_is_not_there_is_a_sentence(tmp_path: Path) -> None:
    """A folder without a garment: one sentence on stderr, exit status 2, and never a traceback."""
    command = [sys.executable, "-m", "finishing_tui", "work", str(tmp_path)]
    said = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert said.returncode == 2
    assert said.stderr.count("\n") == 1
    assert "Traceback" not in said.stderr
