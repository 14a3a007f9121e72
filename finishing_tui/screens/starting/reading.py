"""A recipe read through before it is chosen."""

from textual.app import ComposeResult

from finishing_tui.glance.reading import reading
from finishing_tui.recipe.model import Recipe
from finishing_tui.screens.page import PageScreen
from finishing_tui.widgets.chapters import Chapters
from finishing_tui.widgets.size_table import SizeTableRows


class ReadingScreen(PageScreen):
    """All of a recipe, scrolled by arrows and page keys."""

    CSS_PATH = "../page.tcss"

    def __init__(self, recipe: Recipe) -> None:
        super().__init__()
        self._reading = reading(recipe)

    def text(self) -> ComposeResult:
        """Lay out what it is for, the table of its sizes, and its steps."""
        yield Chapters()
        yield SizeTableRows()
        yield Chapters()

    def on_mount(self) -> None:
        """Show the recipe."""
        text = self._reading
        first, last = self.query(Chapters)
        first.show(text.before, text.title, text.aside)
        self.query_one(SizeTableRows).show(text.table)
        last.show(text.steps)
