"""A page that is read and scrolled, and left again: what the ledger, help and others like them have in common."""

from collections.abc import Sequence

from textual.app import ComposeResult

from finishing_tui.screens.keys import bindings, keys_of
from finishing_tui.screens.leaving import Leaving
from finishing_tui.widgets.column import Column
from finishing_tui.widgets.key_line import KeyLine, ShownKey
from finishing_tui.widgets.pages import Pages, lies_below

PAGE = {
    "pages.up": "scroll(-1)",
    "pages.down": "scroll(1)",
    "pages.left": "scroll(-10)",
    "pages.right": "scroll(10)",
    "pages.back": "scroll(-10)",
    "pages.on": "scroll(10)",
    "pages.leave": "leave",
}
"""What the keys of a page do; the arrows alone are enough."""


class PageScreen(Leaving[None]):
    """A page; a subclass shows its text when it is mounted, or lays out another."""

    CSS_PATH = "page.tcss"
    BINDINGS = [*bindings("page", PAGE)]  # noqa: RUF012  (Textual's way)

    def compose(self) -> ComposeResult:
        """Lay out the text in one column that can be scrolled."""
        with Column():
            yield from self.text()
        yield KeyLine()

    def on_column_moved(self) -> None:
        """Say how much lies below now, and how to leave."""
        column, key = self.query_one(Column), keys_of(self).shown
        scroll = [(key("pages.up", "pages.down"), lies_below(column.below))] if column.is_longer else []
        self.query_one(KeyLine).show([*self.other_keys(), *scroll, (key("pages.leave"), "back")])

    def text(self) -> ComposeResult:
        """Lay out what is read."""
        yield Pages()

    def other_keys(self) -> Sequence[ShownKey]:
        """Return the keys that are shown besides those that scroll and leave, with what they do."""
        return ()

    def action_scroll(self, by: int) -> None:
        """Scroll by so many lines; ring where there is nothing more that way."""
        if not self.query_one(Column).scroll(by):
            self.app.bell()

    def action_leave(self) -> None:
        """Go back."""
        self.dismiss()
