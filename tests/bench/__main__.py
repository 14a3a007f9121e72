"""Measures the program against a bare Textual app, both in a real terminal, in one run, and prints ratios.

    python -m tests.bench [EVENTS]      a journal of EVENTS events behind the garment (2,000 when not given)

The bounds named are those of the design; nothing here fails when one is not met, for a busy machine is no fault.
"""

import os
import statistics
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

from tests.bench.garments import long_edge
from tests.bench.measure import Measured, measure
from tests.terminal.terminal import Terminal

ROUNDS = 3
"""Each program is measured so often, in turn; the best start and the median of the keys count."""


def main() -> None:
    """Measure, and print."""
    events = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    with tempfile.TemporaryDirectory() as place:
        shelf = Path(place) / "shelf"
        print(f"making a garment with an edge of 2,000 spots and {events} events ...", flush=True)
        folder = long_edge(shelf / "bench", events)
        bare, ours = [], []
        for _ in range(ROUNDS):
            bare.append(measure(lambda: Terminal(shelf=shelf, module="tests.bench.bare_app"), "count 0", _bare))
            ours.append(
                measure(lambda: Terminal("work", str(folder), shelf=shelf), "bench", _needles, through=("enter", "row"))
            )
    _ratio("start to the first usable screen", bare, ours, lambda one: one.start * 1000, "ms", "1.3 x")
    _ratio("key to the changed figure, median", bare, ours, lambda one: one.median * 1000, "ms", "2 x or 5 ms")
    _ratio("key, slowest of 200", bare, ours, lambda one: max(one.keys) * 1000, "ms", "under 50 ms")
    _ratio("memory", bare, ours, lambda one: one.memory, "MB", "1.3 x")


def _bare(text: str) -> str:
    return next((line for line in text.splitlines() if line.startswith("count ")), "")


def _needles(text: str) -> str:
    return "\n".join(text.splitlines()[3:14])


def _ratio(
    what: str, bare: list[Measured], ours: list[Measured], of: Callable[[Measured], float], unit: str, bound: str
) -> None:
    one, other = statistics.median(map(of, bare)), statistics.median(map(of, ours))
    print(f"{what:36} bare {one:8.1f} {unit}   ours {other:8.1f} {unit}   ratio {other / one:5.2f}   (bound: {bound})")


if __name__ == "__main__":
    os.environ.setdefault("TEXTUAL_ANIMATIONS", "none")
    main()
