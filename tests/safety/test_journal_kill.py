"""A process killed at any moment loses nothing that it had acknowledged."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from finishing_tui.garment.journal import InUse, Journal, check
from tests.garment.journal.making import NOON, press

TREE = Path(__file__).parents[2]

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="there is no such signal there")


def start(folder: Path) -> "subprocess.Popen[str]":
    """Start a process that counts in ``folder``."""
    return subprocess.Popen(
        [sys.executable, "-m", "tests.safety.journal_child", folder],
        stdout=subprocess.PIPE, text=True, cwd=TREE,
    )  # fmt: skip


@pytest.mark.parametrize("lines", [1, 2, 5, 20, 60, 150])
def test_killed_in_mid_stream(tmp_path: Path, lines: int) -> None:
    """Killed with SIGKILL while it saves: every acknowledged group is there, whole, in order, and nothing is torn."""
    Journal.create(tmp_path).close()
    with start(tmp_path) as child:
        assert child.stdout is not None
        acknowledged = 0
        for _ in range(lines):
            acknowledged = int(child.stdout.readline())
        child.send_signal(signal.SIGKILL)
        for line in child.stdout:  # what it said before it died counts too; a last line may be cut short
            if line.endswith("\n"):
                acknowledged = int(line)
    assert child.returncode == -signal.SIGKILL
    assert acknowledged > 0
    assert check(tmp_path).fault is None
    with Journal.open(tmp_path) as journal:  # and the lock is free
        rows = tuple(journal.rows())
        assert [(one.body["group"], one.body["part"]) for one in rows] == [
            (group, part) for group in range(len(rows) // 3) for part in range(3)
        ]
        assert [one.group for one in rows] == [1 + 3 * (at // 3) for at in range(len(rows))]
        assert len(rows) >= 3 * acknowledged
        journal.append([press(1)], at=NOON, sitting=2, after_ms=0)
        assert journal.flush(30)
    assert sorted(one.name for one in tmp_path.iterdir()) == ["journal.lock", "journal.sqlite3"]


def test_the_lock_goes_with_the_process(tmp_path: Path) -> None:
    """While the other process lives, even stopped, this one is kept out; killed, the lock is free at once."""
    Journal.create(tmp_path).close()
    with start(tmp_path) as child:
        assert child.stdout is not None
        child.stdout.readline()
        os.kill(child.pid, signal.SIGSTOP)
        with pytest.raises(InUse):
            Journal.open(tmp_path)
        with Journal.open(tmp_path, look=True) as onlooker:
            assert onlooker.last_seq >= 3
        assert check(tmp_path).in_use
        child.send_signal(signal.SIGKILL)
        child.wait()
        Journal.open(tmp_path).close()


def test_killed_again_and_again(tmp_path: Path) -> None:
    """Killed at once after it was picked up, many times over: what was acknowledged stays, whatever state it left."""
    rows = 0
    with Journal.create(tmp_path) as journal:
        journal.append([press(1)] * 3, at=NOON, sitting=1, after_ms=0)
    for turn in range(8):
        with start(tmp_path) as child:
            assert child.stdout is not None
            child.stdout.readline()
            time.sleep(turn * 0.003)
            child.send_signal(signal.SIGKILL)
        with Journal.open(tmp_path, look=True) as onlooker:
            found = onlooker.last_seq
            assert [one.seq for one in onlooker.rows()] == list(range(1, found + 1))
        assert found > rows
        assert found % 3 == 0
        rows = found
