"""A box over another screen: while it is open, the keys of what lies behind are not to be read, for they do nothing."""

from textual.await_complete import AwaitComplete
from textual.screen import ModalScreen, ScreenResultType

from finishing_tui.widgets.key_line import KeyLine


class Box(ModalScreen[ScreenResultType]):
    """A box that is answered or left before anything else can be done."""

    def dismiss(self, result: ScreenResultType | None = None) -> AwaitComplete:
        """Leave, once: a key that is held down asks again before the box is gone, and would take what lies below too.

        A line that is written in gets its keys ahead of the box, so several enters may be under way.
        """
        return super().dismiss(result) if self in self.app.screen_stack else AwaitComplete()

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
