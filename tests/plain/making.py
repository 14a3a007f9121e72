"""Garments for the line-by-line mode, lines typed at the real command, and a twin worked by commands alongside."""

import io
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

from finishing_tui.garment.clock import Clock
from finishing_tui.garment.commands import Command, Finish, Press, TakeCount, TakeMeasure
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import Journal
from finishing_tui.garment.stops import due
from finishing_tui.plain.running import work

TREE = Path(__file__).parents[2]


def garment(folder: Path, recipe: str, size: str, *more: str) -> Path:
    """Make a garment of ``recipe`` in ``folder`` and return the folder."""
    folder.mkdir()
    lines = ("format = 1", 'id = "under-test"', 'title = "under test"', f'recipe = "{recipe}"', f'size = "{size}"')
    (folder / "garment.toml").write_text("\n".join((*lines, *more)) + "\n")
    return folder


def crew(folder: Path) -> Path:
    """Make the smallest crew neck."""
    return garment(folder, "crew-neck", "2 years")


def command(folder: Path) -> list[str]:
    """Return the real command for the line-by-line mode."""
    return [sys.executable, "-m", "finishing_tui", "work", str(folder), "--plain"]


def environment(**more: str) -> dict[str, str]:
    """Return the environment of the real command, cut off from the machine."""
    return {"PATH": os.environ["PATH"], "LANG": "C.UTF-8", "PYTHONPATH": str(TREE), "HOME": "/nowhere", **more}


def typed(folder: Path, *lines: str) -> str:
    """Type ``lines`` at the real command in a process of its own, and return all it says."""
    text = "".join(f"{line}\n" for line in lines)
    done = subprocess.run(
        command(folder), input=text, capture_output=True, text=True, check=False, env=environment(), encoding="utf-8"
    )
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout


def talked(folder: Path, *lines: str, clock: Clock | None = None) -> list[str]:
    """Type ``lines`` at the mode in this process, and return the lines it says."""
    sink = io.BytesIO()
    work(folder, io.BytesIO("".join(f"{line}\n" for line in lines).encode()), sink, clock=clock)
    return sink.getvalue().decode().splitlines()


def events(folder: Path) -> list[tuple[str, int, Any]]:
    """Return the kind, version and body of every event in the journal of ``folder``."""
    with Journal.open(folder, look=True) as journal:
        return [(row.kind, row.version, row.body) for row in journal.rows()]


class Twin:
    """A garment worked by commands, while the lines that should do the same are written down."""

    def __init__(self, folder: Path) -> None:
        self.hand = InHand.open(folder)
        self.hand.pick_up()
        self.lines: list[str] = []

    def does(self, command: Command, *lines: str) -> None:
        """Carry out a command that must not be refused, for which these lines stand."""
        if self.hand.unsaved > 100:  # no hand is faster than a disk, but a test is, and 500 waiting are refused
            assert self.hand.flush(60)
        assert self.hand.do(command) is None
        self.lines += lines

    def works_on(self) -> None:
        """Do what comes next, the way the recipe goes."""
        work = self.hand.state.standing.work if self.hand.state.standing else None
        if work is not None and work.complete and (expected := due(self.hand.state)) is not None:
            self.does(TakeCount(expected), "f")
        elif work is None or work.complete:
            self.does(Finish(), "enter")
        elif work.stages[work.at].unit == "value":
            self.does(TakeMeasure("42.5"), "42.5")
        else:
            self.does(Press(), "d")

    def works_to(self, step: int, part: int = 0, units: int = 0) -> None:
        """Work on until ``units`` units of a part of a step (both from 0) are done."""
        while True:
            state = self.hand.state
            work = state.standing.work if state.standing else None
            at = (state.current, work.at, work.progress[work.at].mark.units) if work and not work.complete else None
            if at is not None and at >= (step, part, units):
                return
            self.works_on()

    def loops(self, step: int) -> int:
        """Return how many loops of the first part of a step there are by presses."""
        work = self.hand.state.steps[step].work
        assert work is not None
        return work.progress[0].mark.loops

    def takes_back(self, *lines: str) -> None:
        """Take the last thing back, for which these lines stand."""
        assert self.hand.take_back() is None
        self.lines += lines

    def puts_back(self) -> None:
        """Put back what was taken back."""
        assert self.hand.put_back() is None
        self.lines.append("u")

    def puts_down(self, where: str) -> None:
        """Put it down."""
        assert self.hand.put_down(where)
        self.lines += ["q", where]
