"""A real terminal for the tests: a pseudo-terminal with the program in it, its screen read by a terminal emulator.

Tests wait for what stands on the screen, with a generous deadline, and never for a time.
"""

import contextlib
import fcntl
import os
import pty
import select
import signal
import struct
import sys
import termios
import time
from collections.abc import Callable, Mapping
from pathlib import Path
from types import TracebackType
from typing import Self

import pyte

DEADLINE = 60.0
"""Seconds to wait for a screen before a test gives up: a busy machine is slow, which is no fault of the program."""

ROOT = Path(__file__).parents[2]


class Terminal:
    """The program ``finishing`` with ``arguments``, running in a terminal of ``columns`` by ``lines``."""

    def __init__(
        self,
        *arguments: str,
        shelf: Path,
        columns: int = 100,
        lines: int = 30,
        extra: Mapping[str, str] | None = None,
        module: str = "finishing_tui",
    ) -> None:
        self.screen = pyte.Screen(columns, lines)
        self._stream = pyte.ByteStream(self.screen)
        self.status: int | None = None
        environment = {
            "PATH": os.environ["PATH"],
            "HOME": str(shelf.parent),
            "TERM": "xterm-256color",
            "LANG": "C.UTF-8",
            "PYTHONPATH": str(ROOT),
            "FINISHING_SHELF": str(shelf),
            "TEXTUAL_ANIMATIONS": "none",
            **(extra or {}),
        }
        self.pid, self._pty = pty.fork()
        if self.pid == 0:  # pragma: no cover  (the child)
            os.execve(sys.executable, [sys.executable, "-m", module, *arguments], environment)
        self.resize(columns, lines)

    def resize(self, columns: int, lines: int) -> None:
        """Give the terminal another size, as dragging its window does."""
        fcntl.ioctl(self._pty, termios.TIOCSWINSZ, struct.pack("HHHH", lines, columns, 0, 0))
        self.screen.resize(lines, columns)

    @property
    def text(self) -> str:
        """What stands on the screen, line by line."""
        return "\n".join(line.rstrip() for line in self.screen.display)

    def press(self, *keys: str) -> None:
        """Type ``keys``: names of a few special ones, and anything else as it is."""
        for key in keys:
            os.write(self._pty, KEYS.get(key, key).encode())

    def wait_for(self, wanted: str | Callable[[str], bool], deadline: float = DEADLINE) -> str:
        """Read until ``wanted`` stands on the screen (or holds of its text), and return the text."""
        holds = wanted if callable(wanted) else lambda text: wanted in text
        end = time.monotonic() + deadline
        while not holds(self.text):
            if time.monotonic() > end:
                raise AssertionError(f"never on the screen: {wanted!r}; there is:\n{self.text}")
            if not self.read(0.2) and self.status is not None:
                raise AssertionError(f"the program ended ({self.status}) before {wanted!r}; there is:\n{self.text}")
        return self.text

    def wait_for_end(self, deadline: float = DEADLINE) -> int:
        """Read until the program has ended, and return its exit status (negative: the signal that killed it)."""
        end = time.monotonic() + deadline
        while self.status is None:
            if time.monotonic() > end:
                raise AssertionError(f"the program did not end; there is:\n{self.text}")
            self.read(0.2)
            self._reap()
        return self.status

    def read(self, seconds: float) -> bool:
        """Feed what the program wrote within ``seconds`` to the screen; say whether there was anything."""
        ready, _, _ = select.select([self._pty], [], [], seconds)
        if not ready:
            self._reap()
            return False
        try:
            raw = os.read(self._pty, 65536)
        except OSError:  # Linux: the other end is closed
            raw = b""
        if not raw:
            self._reap()
            return False
        self._stream.feed(raw)
        return True

    def kill(self, number: int = signal.SIGKILL) -> None:
        """Send the program a signal."""
        os.kill(self.pid, number)

    def _reap(self) -> None:
        if self.status is None:
            pid, status = os.waitpid(self.pid, os.WNOHANG)
            if pid:
                self.status = os.waitstatus_to_exitcode(status)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self.status is None:
            with contextlib.suppress(ProcessLookupError):
                self.kill()
            while self.status is None:
                self._reap()
                time.sleep(0.01)
        os.close(self._pty)


KEYS = {
    "enter": "\r",
    "backspace": "\x7f",
    "escape": "\x1b",
    "space": " ",
    "left": "\x1b[D",
    "right": "\x1b[C",
    "up": "\x1b[A",
    "down": "\x1b[B",
}
"""What a terminal sends for keys that are not a character."""
