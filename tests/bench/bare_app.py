"""A bare Textual app that counts: what the program is measured against, in the same run on the same machine."""

from typing import ClassVar

from textual.app import App, ComposeResult
from textual.binding import BindingType
from textual.widgets import Footer, Static


class BareApp(App[None]):
    """One line with a figure that goes up at every press of space."""

    BINDINGS: ClassVar[list[BindingType]] = [("space", "count", "count"), ("q", "quit", "quit")]
    ENABLE_COMMAND_PALETTE = False

    def __init__(self) -> None:
        super().__init__()
        self.figure = 0

    def compose(self) -> ComposeResult:
        """One line and a footer."""
        yield Static("count 0", id="figure")
        yield Footer()

    def action_count(self) -> None:
        """Count one."""
        self.figure += 1
        self.query_one("#figure", Static).update(f"count {self.figure}", layout=False)


if __name__ == "__main__":
    BareApp().run()
