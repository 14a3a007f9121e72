"""A disk that is full: marked, said, tried again, and never called saved."""

import contextlib
import json
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from finishing_tui.garment.journal import Journal, NewEvent, check
from finishing_tui.garment.journal.errors import Unreachable
from tests.garment.journal.making import NOON, press, read

TREE = Path(__file__).parents[2]


@pytest.mark.skipif(sys.platform == "win32", reason="the system has no such limit")
def test_files_that_may_not_grow(tmp_path: Path) -> None:
    """The system refuses to let files grow, for a superuser too: what is called saved is on the disk, the rest waits.

    When it lets them grow again, all of it is saved without being asked.
    """
    Journal.create(tmp_path).close()
    run = subprocess.run(
        [sys.executable, "-m", "tests.safety.journal_child_full", tmp_path],
        capture_output=True, text=True, cwd=TREE, check=False,
    )  # fmt: skip
    assert run.returncode == 0, run.stderr
    seen = json.loads(run.stdout)
    assert not seen["flushed when full"]
    assert seen["unsaved"] > 0
    assert seen["on disk"] >= 100 - seen["unsaved"]
    assert seen["trouble"].endswith(".")
    assert seen["flushed when back"]
    assert seen["unsaved when back"] == 0
    assert seen["trouble at the end"] is None
    assert [one.body["n"] for one in read(tmp_path)] == list(range(100))
    assert check(tmp_path).fault is None


@contextlib.contextmanager
def mounted(place: Path, *options: str) -> Iterator[None]:
    """Mount something at ``place``, or skip the test where that is not allowed."""
    made = subprocess.run(["mount", *options, place], capture_output=True, check=False) if os.name == "posix" else None
    if made is None or made.returncode:
        pytest.skip("only a superuser can mount a disk")
    try:
        yield
    finally:
        subprocess.run(["umount", "-l", place], check=True)


def test_a_full_disk(tmp_path: Path) -> None:
    """A real small disk, filled by someone else: said in words, nothing lost, and saved when there is room again."""
    with mounted(tmp_path, "-t", "tmpfs", "-o", "size=1m", "tmpfs"):
        folder = tmp_path / "garment"
        folder.mkdir()
        with Journal.create(folder) as journal:
            rows = journal.append([press(1)], at=NOON, sitting=1, after_ms=0)
            assert journal.flush(30)
            with (tmp_path / "filler").open("wb", buffering=0) as filler, contextlib.suppress(OSError):
                while True:
                    filler.write(bytes(512))
            for number in range(40):
                rows += journal.append(
                    [NewEvent("a", 1, {"n": number, "t": "x" * 900})], at=NOON, sitting=1, after_ms=1
                )
            assert not journal.flush(1)
            assert "full" in str(journal.trouble)
            assert journal.unsaved > 0
            saved = len(read(folder))
            assert saved >= 41 - journal.unsaved
            assert tuple(journal.rows()) == rows
            (tmp_path / "filler").unlink()
            assert journal.flush(60)
            assert read(folder) == rows
        assert journal.trouble is None
        assert read(folder) == rows


def test_no_room_to_begin(tmp_path: Path) -> None:
    """No room for a new journal: one sentence, and nothing half made is left."""
    with mounted(tmp_path, "-t", "tmpfs", "-o", "size=8k", "tmpfs"):
        with pytest.raises(Unreachable, match="No journal can be begun"):
            Journal.create(tmp_path)
        assert [one.name for one in tmp_path.iterdir()] == ["journal.lock"]


def test_a_disk_that_can_only_be_read(tmp_path: Path) -> None:
    """A read-only disk: refused in a sentence, and looked at, though the garment was never put down."""
    disk = tmp_path / "disk"
    disk.mkdir()
    with mounted(disk, "-t", "tmpfs", "-o", "size=4m", "tmpfs"):
        with Journal.create(disk) as journal:
            rows = journal.append([press(1)], at=NOON, sitting=1, after_ms=0)
            assert journal.flush(30)
            subprocess.run(["cp", "-r", disk, tmp_path / "copy"], check=True)
        subprocess.run(["rm", "-r", disk / "journal.sqlite3"], check=True)
        subprocess.run(["cp", "-r", f"{tmp_path}/copy/.", disk], check=True)
        (disk / "journal.sqlite3-shm").unlink()
        subprocess.run(["mount", "-o", "remount,ro", disk], check=True)
        with pytest.raises(Unreachable, match="You can only look here"):
            Journal.open(disk)
        assert read(disk) == rows
        assert check(disk).fault is None
