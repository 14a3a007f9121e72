"""The real program, whose journals meet a full disk for as long as a file lies there; its name is in the environment.

``python -m tests.safety.full_disk_child work GARMENT ...``
"""

import errno
import os
import sys
from collections.abc import Iterable
from pathlib import Path

from finishing_tui.cli import main
from finishing_tui.garment.journal.rows import Row
from finishing_tui.garment.journal.store import Store

FULL = "TEST_DISK_IS_FULL"
"""The variable with the name of the file."""


def fill() -> None:
    """Let commits fail from now on, while the file is there."""
    commit, full = Store.commit, Path(os.environ[FULL])

    def committed(store: Store, rows: Iterable[Row]) -> None:
        if full.exists():
            raise OSError(errno.ENOSPC, "No space left on device")
        commit(store, rows)

    setattr(Store, "commit", committed)  # noqa: B010  (mypy takes no other method in its place)


if __name__ == "__main__":
    fill()
    sys.exit(main())
