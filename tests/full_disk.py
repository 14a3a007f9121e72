"""A disk that can be full, for whatever opens a garment; and sittings that had to end while it was."""

import errno
from collections.abc import Iterable
from pathlib import Path

import pytest

from finishing_tui.garment.clock import Clock
from finishing_tui.garment.commands import Press
from finishing_tui.garment.given_up import GivenUp
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import Journal
from finishing_tui.garment.journal.rows import Row
from finishing_tui.garment.journal.store import Store


class FullDisk:
    """Commits fail while it is ``full``, and closing gives up soon."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.full = False
        commit = Store.commit

        def committed(store: Store, rows: Iterable[Row]) -> None:
            if self.full:
                raise OSError(errno.ENOSPC, "no room")
            commit(store, rows)

        monkeypatch.setattr(Store, "commit", committed)
        monkeypatch.setattr(Journal.close, "__defaults__", (0.1,))

    def left_full(
        self, folder: Path, presses: int = 3, where: str = "bag", *, saved: int = 0, clock: Clock | None = None
    ) -> InHand:
        """Sit, press until so many are ``saved``, then so many more on a full disk, and leave; return what was held."""
        hand = InHand.open(folder, clock=clock)
        hand.pick_up()
        for _ in range(saved):
            assert hand.do(Press()) is None
        assert hand.flush(30)
        self.full = True
        for _ in range(presses):
            assert hand.do(Press()) is None
        assert not hand.put_down(where)
        self.full = False
        return hand


def file_of(given_up: GivenUp | None) -> Path:
    """Return the rescue file of what was given up."""
    assert given_up is not None
    assert given_up.kept is not None
    return given_up.kept.file
