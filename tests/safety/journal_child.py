"""A process that counts until it is killed; started as a program of its own.

It adds groups of three as fast as they are taken in, and writes a line with how many groups it knows to be saved each
time that it is told of a change.
"""

import sys
from pathlib import Path

from finishing_tui.garment.journal import Journal, NewEvent, NotSaved
from tests.garment.journal.making import NOON


def count(folder: Path) -> None:
    """Count in the journal in ``folder``, for ever."""
    added = [0]

    def say() -> None:
        # First what was added, then what waits: what is said to be saved is never too much.
        sys.stdout.write(f"{added[0] - journal.unsaved}\n")
        sys.stdout.flush()

    with Journal.open(folder, on_change=say) as journal:
        while True:
            here = added[0]
            group = [NewEvent("pressed", 1, {"group": here, "part": part, "text": "x" * 300}) for part in range(3)]
            try:
                journal.append(group, at=NOON, sitting=1, after_ms=here)
            except NotSaved:
                journal.flush(0.1)
            else:
                added[0] += 1
            if journal.unsaved > 20:
                journal.flush(0.1)


if __name__ == "__main__":
    count(Path(sys.argv[1]))
