"""Makes the journals of the demo garments: ``python -m tests.demos.make [NAME ...]``. See README.md beside it."""

import shutil
import sqlite3
import sys
import tempfile
from contextlib import closing
from datetime import datetime, timedelta
from pathlib import Path

from finishing_tui import shipped
from finishing_tui.garment.clock import Clock
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME
from finishing_tui.garment.sources import FILE
from tests.demos.scripts import SCRIPTS

PACE = (4, 6, 3, 5, 9, 4, 7)
"""Seconds from one act to the next, over and over: a hand that is neither hurried nor even."""


class Watch:
    """A watch that goes on a little with every act."""

    def __init__(self, began: datetime) -> None:
        self._began = began
        self._acts = 0
        self._seconds = 0

    def clock(self) -> Clock:
        """Return the clock that a garment in hand reads."""
        return Clock(self._now, lambda: 1000 * self._seconds)

    def _now(self) -> datetime:
        self._seconds += PACE[self._acts % len(PACE)]
        self._acts += 1
        return self._began + timedelta(seconds=self._seconds)


def worked(name: str, folder: Path) -> Path:
    """Work the script of a demo garment in ``folder``, which gets its file, and return its journal."""
    shutil.copy(shipped.demo(name) / FILE, folder / FILE)
    for sitting in SCRIPTS[name]:
        hand = InHand.open(folder, clock=Watch(sitting.began).clock())
        assert hand.pick_up() is None
        sitting.done(hand)
        assert hand.put_down(sitting.where)
    journal = folder / NAME
    with closing(sqlite3.connect(journal)) as database:  # snapshots are only a cache, and half of the file
        database.execute("DELETE FROM snapshots")
        database.commit()
        database.execute("VACUUM")
    return journal


def main(names: list[str]) -> int:
    """Make the journals named, or all of them, anew."""
    for name in names or SCRIPTS:
        with tempfile.TemporaryDirectory() as folder:
            shutil.copy(worked(name, Path(folder)), shipped.demo(name) / NAME)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
