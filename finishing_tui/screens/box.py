"""A box over another screen: while it is open, the keys of what lies behind are not to be read, for they do nothing."""

from textual.screen import ModalScreen, ScreenResultType

from finishing_tui.screens.leaving import Leaving
from finishing_tui.widgets.key_line import KeyLine


class Box(ModalScreen[ScreenResultType], Leaving[ScreenResultType]):
    """A box that is answered or left before anything else can be done.

    ``ModalScreen`` stands first: Textual takes the looks of the first of its bases alone.
    """

    def on_mount(self) -> None:
        """Blank the keys of the screen behind."""
        self._blank_behind(blank=True)
        self.refresh()  # what lies behind is drawn through this screen

    def on_unmount(self) -> None:
        """Let them be read again."""
        self._blank_behind(blank=False)

    def _blank_behind(self, *, blank: bool) -> None:
        for screen in self.app.screen_stack:
            if screen is not self:
                for keys in screen.query(KeyLine):
                    keys.blank(blank=blank)
