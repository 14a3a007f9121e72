"""Cuts every test off from the machine it runs on: its settings, home, colours, animations and clock-bound luck."""

import atexit
import gc
import os
import shutil
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any

# Textual reads these when it is imported, so they must be right before any test module is.
for name in [name for name in os.environ if name == "NO_COLOR" or name.startswith(("TEXTUAL_", "FINISHING_"))]:
    del os.environ[name]
# Some machines forbid keeping what is compiled; what is started two hundred times is compiled once all the same.
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
sys.dont_write_bytecode = False
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

import pytest  # noqa: E402  (after the environment is set)
from hypothesis import HealthCheck, settings  # noqa: E402
from textual.css.stylesheet import Stylesheet  # noqa: E402

from tests.seed import seed_of_commit  # noqa: E402

# No test is timed, and what failed is printed so that it can be run again. Steps that a ledger refuses are passed over
# where they are drawn at random: how many there are hangs on the seed, and says nothing of the program.
settings.register_profile(
    "all",
    deadline=None,
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much],
)
settings.register_profile("local", settings.get_profile("all"), max_examples=25)
settings.register_profile("ci", settings.get_profile("all"), max_examples=100, derandomize=False, database=None)
settings.register_profile("long", settings.get_profile("all"), max_examples=1000)
settings.load_profile("ci")


@pytest.hookimpl(tryfirst=True)  # before hypothesis takes its options
def pytest_configure(config: pytest.Config) -> None:
    """Have CI try other examples at every commit, and the same ones wherever that commit is tested."""
    if (config.option.hypothesis_profile or "ci") == "ci" and config.option.hypothesis_seed is None:
        config.option.hypothesis_seed = str(seed_of_commit())


@pytest.hookimpl(tryfirst=True)  # before those that are long are left out
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Let the cases of some tests take turns: one in so many is tried at a commit, and the others are long there."""
    seed, before = seed_of_commit(), Counter[str]()
    for item in items:
        turns = item.get_closest_marker("turns")
        if turns is not None:
            test = item.nodeid.partition("[")[0]
            if (before[test] + seed) % turns.kwargs["of"]:
                item.add_marker("long")
            before[test] += 1


def pytest_collection_finish() -> None:
    """Keep what all tests share from being looked through again and again for what could be thrown away."""
    gc.freeze()


@pytest.hookimpl(tryfirst=True)  # before the pictures are summed up
def pytest_sessionfinish(session: pytest.Session) -> None:
    """Keep a worker from looking for pictures that no test takes: it finds those of the others, and takes minutes."""
    if hasattr(session.config, "workerinput"):
        pictures = session.config._syrupy  # type: ignore[attr-defined]  # noqa: SLF001  (it has no other way)
        pictures._assertions.clear()  # noqa: SLF001


@pytest.fixture(autouse=True, scope="session")
def _unhurried() -> Iterator[None]:
    """Let as much wait to be saved as there is: a test is faster than any hand, and the disk of a busy machine slow."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("finishing_tui.garment.journal.writer.MOST_UNSAVED", 1_000_000)
        yield


@pytest.fixture(autouse=True, scope="session")
def _style_sheets_read_once() -> Iterator[None]:
    """Share what Textual made of a style sheet between all apps of a process; it took a sixth of their time."""
    read, known = Stylesheet._parse_rules, dict[Any, Any]()  # noqa: SLF001  (it keeps them for one app only)

    def rules(sheet: Stylesheet, *given: Any, **named: Any) -> Any:
        key = (given, *named.items(), *sheet._variables.items())  # noqa: SLF001
        if key not in known:
            known[key] = read(sheet, *given, **named)
        return known[key]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(Stylesheet, "_parse_rules", rules)
        yield


def pytest_report_header(config: pytest.Config) -> str:
    """Say which examples are tried."""
    seed = config.option.hypothesis_seed
    return f"examples: {config.option.hypothesis_profile or 'ci'}, {'new ones' if seed is None else f'seed {seed}'}"
