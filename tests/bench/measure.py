"""One measurement of one program in a real terminal: its start, its keys, its memory."""

import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from tests.terminal.terminal import Terminal


@dataclass(frozen=True, slots=True)
class Measured:
    """What one run came to.

    ``start``: seconds to the first usable screen; ``keys``: seconds from each key to the changed figure; ``memory``:
    resident memory at the end, in MB.
    """

    start: float
    keys: tuple[float, ...]
    memory: float

    @property
    def median(self) -> float:
        """The median key, in seconds."""
        return statistics.median(self.keys)


def measure(
    run: Callable[[], Terminal],
    ready: str,
    figure: Callable[[str], str],
    presses: int = 200,
    through: tuple[str, str] | None = None,
) -> Measured:
    """Run a program, wait until ``ready`` stands on its screen, and press space ``presses`` times.

    ``figure`` reads the figure off the screen's text; a key is answered when the emulator shows another one.
    ``through``: a key to press first, and the text to wait for after it.
    """
    before = time.perf_counter()
    with run() as terminal:
        terminal.wait_for(ready)
        start = time.perf_counter() - before
        if through is not None:
            terminal.press(through[0])
            terminal.wait_for(through[1])
        while terminal.read(0.5):
            pass
        keys = []
        for _ in range(presses):
            shown = figure(terminal.text)
            pressed = time.perf_counter()
            terminal.press("space")
            while figure(terminal.text) == shown:
                if not terminal.read(5.0):
                    raise RuntimeError(f"the figure never changed from {shown!r}:\n{terminal.text}")
            keys.append(time.perf_counter() - pressed)
        return Measured(start, tuple(keys), _resident(terminal.pid))


def _resident(pid: int) -> float:
    status = Path(f"/proc/{pid}/status").read_text(encoding="ascii")
    line = next(line for line in status.splitlines() if line.startswith("VmRSS"))
    return int(line.split()[1]) / 1024
