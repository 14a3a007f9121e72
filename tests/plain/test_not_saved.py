import io
from pathlib import Path

import pytest

from finishing_tui.plain import running
from tests.full_disk import FullDisk
from tests.plain.making import crew, events, talked


class Disk(FullDisk):
    """A disk that is full for a while."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        super().__init__(monkeypatch)
        self._monkeypatch = monkeypatch

    def fill(self, full: bool) -> None:  # noqa: FBT001  (full or not is all there is)
        """Fill the disk, or empty it; an answer waits long enough for an emptied one."""
        self.full = full
        for name in ("WAIT", "WAIT_IN_TROUBLE"):
            self._monkeypatch.setattr(running, name, 0.5 if full else 30)


class Lines(io.BytesIO):
    """Lines typed while a disk is full from the second line until the fourth."""

    def __init__(self, disk: Disk, raw: bytes) -> None:
        super().__init__(raw)
        self._disk = disk
        self._read = 0

    def readline(self, size: int | None = -1, /) -> bytes:
        """Return the next line."""
        self._read += 1
        self._disk.fill(2 <= self._read < 4)
        return super().readline(size)


def test_what_is_not_saved_is_said(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """While the disk is full each answer says how much is not saved and why; after that, that all is saved again."""
    folder = crew(tmp_path / "crew")
    talked(folder)
    sink = io.BytesIO()
    running.work(folder, Lines(Disk(monkeypatch), b"d\nd\nd\nsaved\nd\n"), sink)
    said = sink.getvalue().decode().splitlines()
    wanted = ("not saved yet: 1.", "not saved yet: 2.", "saved: everything is on the disk again.")
    told = [said.index(line) for line in wanted]
    assert told == sorted(told)
    assert said[told[0] + 1] == "  The disk is full."
    assert said[told[0] + 2] == "  Free some space; the rest saves itself."
    assert said[told[0] + 3] == "2 of 5."
    assert said[told[1] + 3] == "3 of 5."
    assert sum(kind == "Worked" for kind, _, _ in events(folder)) == 4
