"""Speaks in a thread of its own, the newest text only: it neither holds up a key nor keeps the program from ending."""

import atexit
import contextlib
import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from typing import Literal

from finishing_tui.speech.programs import SpeechProgram

PATIENCE = 60.0
"""Seconds after which a text that is still being spoken is cut off: the longest one takes less, even spoken slowly."""

FAILURES = 3
"""So many in a row, and the program is given up."""

LONGEST = 400
"""Characters of a text that are spoken; far less than a pipe holds, so that giving them to a program cannot block."""

GRACE = 0.2
"""Seconds that a program has to stop by itself once it is told to."""

_LOOKS = 0.04
"""Seconds between looks at whether a program has ended."""

if sys.platform == "win32":
    _FLAGS = subprocess.CREATE_NO_WINDOW  # there a program would open a window of its own
else:
    _FLAGS = 0

_End = Literal["spoken", "failed", "cut off"]


class Speaker:
    """Hands texts to a program, one at a time; ``say`` never waits."""

    def __init__(self, program: SpeechProgram, give_up: Callable[[str], object], *, patience: float = PATIENCE) -> None:
        """``give_up``: called in the thread, once, with a sentence, when the program has failed too often."""
        self._program = program
        self._give_up = give_up
        self._patience = patience
        self._changed = threading.Condition()
        self._text = ""
        self._over = False
        self._failures = 0
        self._thread: threading.Thread | None = None

    def say(self, text: str) -> None:
        """Speak ``text`` instead of whatever is being spoken, or waits to be."""
        spoken = speakable(text)
        with self._changed:
            if not spoken or self._over:
                return
            self._text = spoken
            self._changed.notify()
            if self._thread is None:
                self._thread = threading.Thread(target=self._run, name="speech", daemon=True)
                self._thread.start()
                atexit.register(self.close)  # whatever ends the program leaves nothing talking

    def close(self, patience: float = 0.5) -> None:
        """Be silent, and say nothing more; at most ``patience`` seconds are waited for the program to be gone."""
        with self._changed:
            self._over = True
            self._changed.notify()
        atexit.unregister(self.close)
        if self._thread is not None:
            self._thread.join(patience)

    def _run(self) -> None:
        while True:
            with self._changed:
                self._changed.wait_for(lambda: self._text or self._over)
                text, self._text = self._text, ""
                if self._over:
                    return
            end = self._speak(text)
            self._failures = self._failures + 1 if end == "failed" else 0 if end == "spoken" else self._failures
            if self._failures == FAILURES:
                with self._changed:
                    self._over = True
                name = os.path.basename(self._program.command[0])  # noqa: PTH119  (a name in a sentence)
                self._give_up(f"Nothing is spoken any more: {name} failed {FAILURES} times.")
                return

    def _speak(self, text: str) -> _End:
        command, given = self._program.with_text(text)
        try:
            child = subprocess.Popen(  # noqa: S603  (a program of her own choice, without a shell; a text stands behind --)
                command,
                stdin=subprocess.PIPE,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
                creationflags=_FLAGS,
                start_new_session=True,  # so that what it starts itself is silenced with it
            )
        except (OSError, ValueError):
            return "failed"
        if child.stdin is not None:
            with contextlib.suppress(OSError):
                child.stdin.write(given.encode())
                child.stdin.flush()
            with contextlib.suppress(OSError):
                child.stdin.close()
        return self._ended(child)

    def _ended(self, child: "subprocess.Popen[bytes]") -> _End:
        """Wait until the program has ended, a newer text is there, all is over, or patience is."""
        until = time.monotonic() + self._patience
        while child.poll() is None:
            with self._changed:
                newer = self._changed.wait_for(lambda: self._text or self._over, _LOOKS)
            if newer or time.monotonic() >= until:
                _end(child)
                return "cut off" if newer else "failed"
        return "spoken" if child.returncode == 0 else "failed"


def speakable(text: str) -> str:
    """Return ``text`` on one line without anything that steers a terminal, and no longer than can be listened to."""
    told = " ".join("".join(sign if sign.isprintable() else " " for sign in text).split())
    if len(told) <= LONGEST:
        return told
    whole = told[: LONGEST + 1].rpartition(" ")[0]
    return whole or told[:LONGEST]


def _end(child: "subprocess.Popen[bytes]") -> None:
    """End a program and all that it started: they are told to, and a moment later they are not asked any more."""
    _signal(child, "stop")
    with contextlib.suppress(subprocess.TimeoutExpired):
        child.wait(GRACE)
    _signal(child, "kill")  # whatever it started may be there still
    with contextlib.suppress(subprocess.TimeoutExpired):
        child.wait(1)


def _signal(child: "subprocess.Popen[bytes]", what: Literal["stop", "kill"]) -> None:
    with contextlib.suppress(OSError):
        if sys.platform == "win32":
            child.kill()  # there is nothing gentler there
        else:
            os.killpg(child.pid, signal.SIGTERM if what == "stop" else signal.SIGKILL)
