"""Says how small the terminal can be, when it is smaller; what lies below works again when it grows."""

from textual.app import ComposeResult
from textual.events import Resize
from textual.screen import ModalScreen
from textual.widgets import Static

from finishing_tui.widgets.plain import plain

LEAST = (40, 20)
"""The least columns and lines."""


class TooSmall(ModalScreen[None]):
    """Lies over everything until there is room."""

    def compose(self) -> ComposeResult:
        """Say what is needed."""
        yield Static(
            plain(f"Too small: {LEAST[0]} x {LEAST[1]} at least. Nothing is lost; no key counts here.", "bold")
        )

    def on_resize(self, event: Resize) -> None:
        """Go when there is room again."""
        if fits(*event.size) and self.is_active:
            self.dismiss()


def fits(width: int, height: int) -> bool:
    """Return whether there is room."""
    return width >= LEAST[0] and height >= LEAST[1]
