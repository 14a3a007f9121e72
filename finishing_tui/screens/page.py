"""A page that is read and scrolled, and left again: what the ledger and others like it have in common."""

from textual.app import ComposeResult
from textual.containers import VerticalScroll

from finishing_tui.screens.keys import bindings, keys_of
from finishing_tui.screens.leaving import Leaving
from finishing_tui.widgets.key_line import KeyLine
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
    """A page; a subclass shows its text when it is mounted."""

    CSS_PATH = "page.tcss"
    BINDINGS = [*bindings("page", PAGE)]  # noqa: RUF012  (Textual's way)

    def compose(self) -> ComposeResult:
        """Lay out the text in one column that can be scrolled."""
        with VerticalScroll(id="page", can_focus=False):
            yield Pages()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show how to scroll and leave, once it is known how long the text is."""
        self.call_after_refresh(self.say_keys)

    def on_resize(self) -> None:
        """See how much there is to scroll now."""
        self.call_after_refresh(self.say_keys)

    def action_scroll(self, by: int) -> None:
        """Scroll by so many lines; ring where there is nothing more that way."""
        page = self.query_one("#page")
        end = 0 if by < 0 else page.max_scroll_y
        if round(page.scroll_y) == end:
            self.app.bell()
        page.scroll_relative(y=by, animate=False)
        self.call_after_refresh(self.say_keys)

    def action_leave(self) -> None:
        """Go back."""
        self.dismiss()

    def say_keys(self) -> None:
        """Say how much lies below, and how to leave."""
        page = self.query_one("#page")
        below = max(page.max_scroll_y - round(page.scroll_y), 0)
        key = keys_of(self).shown
        scroll = [(key("pages.up", "pages.down"), lies_below(below))]
        back = (key("pages.leave"), "back")
        self.query_one(KeyLine).show([*(scroll if page.max_scroll_y else []), back])
