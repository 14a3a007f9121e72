"""A program that speaks for tests: it writes down what it is given, and misbehaves on request."""

import json
import sys
import time
from collections.abc import Callable
from pathlib import Path

from finishing_tui.speech import SpeechProgram

SCRIPT = """
import json, os, signal, subprocess, sys, time
log, how = sys.argv[1], sys.argv[2]
def wrote(kind, text=""):
    with open(log, "a", encoding="utf-8") as file:
        file.write(json.dumps([kind, text, sys.argv[3:]]) + chr(10))
if how == "deaf":
    signal.signal(signal.SIGTERM, signal.SIG_IGN)
    signal.signal(signal.SIGINT, signal.SIG_IGN)
if how == "unread":
    wrote("begun")
    time.sleep(60)
text = sys.stdin.buffer.read().decode()
wrote("begun", text)
wrote("process", str(os.getpid()))
if how == "noisy":
    sys.stdout.write("x" * 1000000)
    sys.stderr.write("y" * 1000000)
if how in ("deaf", "slow"):
    time.sleep(60)
if how == "family":
    child = subprocess.Popen([sys.executable, "-c", "import time; time.sleep(60)"])
    wrote("child", str(child.pid))
    child.wait()
if how == "fails":
    sys.exit(3)
wrote("ended", text)
"""


class Talk:
    """The program, and what it wrote down."""

    def __init__(self, at: Path, how: str = "well") -> None:
        """``how`` it behaves: see the script."""
        self._log = at / "talk.jsonl"
        self._script = at / "talk.py"
        self._script.write_text(SCRIPT)
        self.command = (sys.executable, "-I", str(self._script), str(self._log), how)

    @property
    def program(self) -> SpeechProgram:
        """The program, as one that reads its standard input."""
        return SpeechProgram(self.command)

    def heard(self, kind: str = "begun") -> list[str]:
        """Return the texts it was given, in order."""
        return [text for one, text, _ in self._lines() if one == kind]

    def arguments(self) -> list[list[str]]:
        """Return what it was started with besides, each time."""
        return [arguments for one, _, arguments in self._lines() if one == "begun"]

    def _lines(self) -> list[tuple[str, str, list[str]]]:
        if not self._log.exists():
            return []
        whole = self._log.read_text(encoding="utf-8").split("\n")[:-1]
        return [(kind, text, arguments) for kind, text, arguments in map(json.loads, whole)]


def until(true: Callable[[], object], seconds: float = 20) -> bool:
    """Wait until something is so; return whether it became so."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if true():
            return True
        time.sleep(0.01)
    return False
