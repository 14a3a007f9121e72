"""The real program told to end while nothing can be saved: what it had is in a rescue file, and comes back."""

import contextlib
import json
import os
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from tests.plain.making import command, environment
from tests.safety.full_disk_child import FULL
from tests.safety.test_journal_disk import mounted
from tests.terminal.terminal import ROOT, Terminal
from tests.terminal.test_killed import GARMENT, RECIPE, settled


@pytest.fixture
def garment(tmp_path: Path) -> Path:
    """Return the folder of a garment that was put down once, on a shelf of its own."""
    folder = tmp_path / "shelf" / "grey-cardigan"
    folder.mkdir(parents=True)
    (folder / "edge.toml").write_text(RECIPE, encoding="utf-8")
    (folder / "garment.toml").write_text(GARMENT, encoding="utf-8")
    plain(folder, tmp_path, "d\n", ends=0)
    return folder


def plain(folder: Path, home: Path, typed: str, *, ends: int) -> subprocess.CompletedProcess[str]:
    """Type lines at the real program, line by line."""
    there = environment(HOME=str(home))
    done = subprocess.run(
        command(folder), cwd=ROOT, input=typed, capture_output=True, text=True, check=False, env=there
    )
    assert done.returncode == ends, done.stderr
    return done


def count(folder: Path) -> int:
    """Return how many loops the journal says there are."""
    record = [sys.executable, "-m", "finishing_tui", "record", str(folder), "--json"]
    found = json.loads(subprocess.run(record, cwd=ROOT, capture_output=True, text=True, check=True).stdout)["count"]
    assert isinstance(found, int)
    return found


def rescue_file(folder: Path, home: Path) -> Path:
    """Return the one rescue file, which is for its owner alone and does not lie with the garment."""
    (found,) = home.rglob("finishing-rescue-*")
    assert found.stat().st_mode & 0o777 == 0o600
    assert not found.is_relative_to(folder)
    return found


@pytest.mark.turns(of=2)
@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP], ids=["terminate", "hang-up"])
def test_told_to_end_while_unsaved(garment: Path, tmp_path: Path, number: signal.Signals) -> None:
    """On the screen: after the signal three presses are in a rescue file; taken in, they are in the count."""
    (tmp_path / "full").touch()
    extra = {FULL: str(tmp_path / "full")}
    module = "tests.safety.full_disk_child"
    with Terminal("work", str(garment), shelf=garment.parent, extra=extra, module=module) as terminal:
        terminal.wait_for("put down")
        terminal.press("enter")
        terminal.wait_for("1 not saved")
        terminal.press("space", "space", "space")
        terminal.wait_for("4 not saved")
        terminal.kill(number)
        assert terminal.wait_for_end() == 2
        assert "Traceback" not in terminal.text
        assert "The last 5 entries could not be saved (the disk is full)." in terminal.text
    assert count(garment) == 1
    file = rescue_file(garment, tmp_path)
    with Terminal("work", str(garment), shelf=garment.parent) as terminal:
        terminal.wait_for("Add the unsaved work?")
        terminal.press("enter")
        terminal.wait_for("put down")
        terminal.press("enter")
        terminal.wait_for("front edge")
        settled(terminal)
    assert count(garment) == 4
    assert not file.exists()


@pytest.mark.turns(of=6)
@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGINT, None], ids=str)
def test_line_by_line(garment: Path, tmp_path: Path, number: signal.Signals | None) -> None:
    """Line by line: a signal or the end of the input names the file in the sentence it ends with; then it is asked."""
    (tmp_path / "full").touch()
    program = [sys.executable, "-m", "tests.safety.full_disk_child", "work", str(garment), "--plain"]
    home = environment(HOME=str(tmp_path), **{FULL: str(tmp_path / "full")})
    pipe = subprocess.PIPE
    with subprocess.Popen(program, cwd=ROOT, stdin=pipe, stdout=pipe, stderr=pipe, text=True, env=home) as child:
        assert child.stdin is not None
        assert child.stdout is not None
        child.stdin.write("d\nd\n")
        child.stdin.flush()
        while not child.stdout.readline().startswith("3 of "):
            pass
        if number is not None:
            child.send_signal(number)
        _, error = child.communicate()
    file = rescue_file(garment, tmp_path)
    assert child.returncode == 2
    lies = f"They are in ~/{file.relative_to(tmp_path)}; "
    assert error.startswith(f"finishing: The last 4 entries could not be saved (the disk is full). {lies}")
    assert error.count("\n") == 1
    assert count(garment) == 1
    plain(garment, tmp_path, "yes\n", ends=0)
    assert count(garment) == 3
    assert not file.exists()


def test_a_disk_that_is_really_full(garment: Path, tmp_path: Path) -> None:
    """A small disk of its own, filled by someone else: the rescue file lies on another disk, and is taken in later."""
    disk = tmp_path / "disk"
    disk.mkdir()
    with mounted(disk, "-t", "tmpfs", "-o", "size=1m", "tmpfs"):
        folder = Path(shutil.copytree(garment, disk / "grey-cardigan"))
        filler = disk / "filler"
        with filler.open("wb", buffering=0) as file, contextlib.suppress(OSError):
            while True:
                file.write(bytes(512))
        # What SQLite needs to open it fits once more; what is written then does not.
        os.truncate(filler, filler.stat().st_size - 40_000)
        done = plain(folder, tmp_path, "d\n" * 40, ends=2)
        assert "(the disk is full)" in done.stderr
        found = rescue_file(folder, tmp_path)
        assert found.stat().st_dev != folder.stat().st_dev
        before = count(folder)
        filler.unlink()
        plain(folder, tmp_path, "yes\n", ends=0)
        assert not found.exists()
        assert before < count(folder) == 41
