"""The program with one more screen open over the shelf, so that a picture of it need not be walked to by keys."""

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

from textual.screen import Screen

from finishing_tui import shipped
from finishing_tui.garment.starting import Draft
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.reader import read_recipe
from finishing_tui.screens import app as program
from finishing_tui.screens.app import FinishingApp
from tests.screens.hands import Hours


class Opened(FinishingApp):
    """The program with a screen open."""

    CSS_PATH = str(Path(program.__file__).parent / "app.tcss")

    def __init__(self, shelf: Path, looks: str, screen: Callable[[Path], Screen[Any]]) -> None:
        super().__init__(shelf, looks=looks, clock=Hours().clock())
        self._over = screen

    def on_ready(self) -> None:
        """Open it."""
        self.push_screen(self._over(self.shelf))


@cache
def shipped_recipe(name: str) -> Recipe:
    """Return a recipe that comes with the program, read once."""
    return read_recipe(shipped.recipes()[name])


def draft(name: str = "crew-neck", size: str = "M", **own: int) -> Draft:
    """Return a garment about to be started after a shipped recipe, with numbers of her own."""
    return Draft(recipe=shipped_recipe(name), source=name, size=size, own=own)
