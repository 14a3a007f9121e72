"""A box over another screen: while it is open, of what lies behind only the head is seen, for nothing else can be done.

What a box covers in part is scraps beside it; and the keys behind it are not to be read, for they do nothing.
"""

from textual.screen import ModalScreen, Screen, ScreenResultType

from finishing_tui.screens.leaving import Leaving
from finishing_tui.widgets.top import Top


class Box(ModalScreen[ScreenResultType], Leaving[ScreenResultType]):
    """A box that is answered or left before anything else can be done.

    ``ModalScreen`` stands first: Textual takes the looks of the first of its bases alone.
    """

    def on_mount(self) -> None:
        """Blank the screens behind."""
        for screen in self._behind():
            _show(screen, seen=False)
        self.refresh()  # what lies behind is drawn through this screen

    def on_unmount(self) -> None:
        """Let that be seen again which is now in front; what lies behind another box stays blank."""
        for screen in self._behind():
            _show(screen, seen=True)
            if isinstance(screen, Box):
                break

    def _behind(self) -> list[Screen[object]]:
        """Return the other screens, the front one first."""
        return [screen for screen in reversed(self.app.screen_stack) if screen is not self]


def _show(screen: Screen[object], *, seen: bool) -> None:
    for widget in screen.children:
        if not isinstance(widget, Top) and not widget.has_class("head"):
            widget.visible = seen
