"""Cuts every test off from the machine it runs on: its settings, home, colours, animations and clock-bound luck."""

import atexit
import os
import shutil
import tempfile
import time
from pathlib import Path

# Textual reads these when it is imported, so they must be right before any test module is.
for name in [name for name in os.environ if name == "NO_COLOR" or name.startswith(("TEXTUAL_", "FINISHING_"))]:
    del os.environ[name]
os.environ["TEXTUAL_ANIMATIONS"] = "none"
os.environ["FINISHING_SETTINGS"] = str(Path(__file__).parent / "settings" / "usual.toml")
os.environ |= {"TERM": "xterm-256color", "COLORTERM": "truecolor"}  # how many colours there are to draw with
# A home of its own for each process: what cannot be saved in a garment's folder is put there.
HOME = tempfile.mkdtemp(prefix="finishing-home-")
atexit.register(shutil.rmtree, HOME, ignore_errors=True)
os.environ["HOME"] = HOME
for name in [name for name in os.environ if name.startswith("XDG_")]:
    del os.environ[name]
os.environ["TZ"] = "UTC"
if hasattr(time, "tzset"):
    time.tzset()

from hypothesis import HealthCheck, settings  # noqa: E402  (after the environment is set)

settings.register_profile(
    "suite",
    deadline=None,  # no test is timed
    derandomize=True,  # the same examples on every machine; a new case is written down as a test of its own
    max_examples=100,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("suite")
