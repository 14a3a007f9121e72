"""A process whose files may not grow for a while; started as a program of its own, on systems with such a limit.

It prints what it saw as one JSON object.
"""

import json
import resource
import signal
import sys
from pathlib import Path
from typing import Any

from finishing_tui.garment.journal import Journal, NewEvent
from tests.garment.journal.making import NOON, read


def count(folder: Path) -> dict[str, Any]:
    """Count a hundred while files may not grow beyond 60,000 bytes, then let them grow again; return what was seen."""
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    seen: dict[str, Any] = {}
    _, most = resource.getrlimit(resource.RLIMIT_FSIZE)
    with Journal.open(folder) as journal:
        resource.setrlimit(resource.RLIMIT_FSIZE, (60_000, most))
        for number in range(100):
            entry = NewEvent("pressed", 1, {"n": number, "text": "x" * 3000})
            journal.append([entry], at=NOON, sitting=1, after_ms=number)
        seen["flushed when full"] = journal.flush(1.0)
        seen["unsaved"], seen["trouble"] = journal.unsaved, journal.trouble
        seen["on disk"] = len(read(folder))
        resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))
        seen["flushed when back"] = journal.flush(60)
        seen["unsaved when back"] = journal.unsaved
    seen["trouble at the end"] = journal.trouble
    return seen


if __name__ == "__main__":
    sys.stdout.write(json.dumps(count(Path(sys.argv[1]))))
