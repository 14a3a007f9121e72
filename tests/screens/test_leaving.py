"""Screens are left once, and lines take what is typed at once: keys are faster than screens come and go."""

import importlib
import pkgutil
from pathlib import Path

from textual.screen import Screen

from finishing_tui import screens
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.leaving import Leaving
from finishing_tui.screens.too_small import TooSmall
from finishing_tui.widgets.entry import EntryBox

NEVER_BY_A_KEY = {TooSmall}
"""What covers a terminal that is too small goes by its size alone."""


def ours() -> set[type]:
    """Return every screen class of the program."""
    for module in pkgutil.walk_packages(screens.__path__, f"{screens.__name__}."):
        importlib.import_module(module.name)
    found: set[type] = set()
    waiting: list[type] = [Screen]
    while waiting:
        waiting += (below := waiting.pop().__subclasses__())
        found |= {one for one in below if one.__module__.startswith(screens.__name__)}
    return found


def test_every_screen_that_a_key_leaves_is_left_once() -> None:
    """Each has the guard against keys that are held down, but for the one that no key leaves."""
    assert {one for one in ours() if not issubclass(one, Leaving)} == NEVER_BY_A_KEY


async def test_an_entry_has_the_focus_once_it_is_asked(tmp_path: Path) -> None:
    """Without waiting for a refresh, and all that stands there is marked."""
    app = FinishingApp(tmp_path)
    async with app.run_test() as pilot:
        entry = EntryBox()
        await app.screen.mount(entry)
        app.screen.set_focus(None)
        entry.ask("32", 4)
        assert app.focused is entry
        assert entry.selected_text == "32"
        await pilot.press("7")
        assert entry.value == "7"
