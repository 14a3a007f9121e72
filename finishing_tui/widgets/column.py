"""A column that is scrolled; it tells whenever more or less of it lies below."""

from textual.containers import VerticalScroll
from textual.message import Message


class Column(VerticalScroll, can_focus=False):
    """What is laid out in it is read from top to bottom; the keys that scroll it are the screen's."""

    class Moved(Message):
        """It was scrolled, or what it holds or the room for it became longer or shorter."""

    def __init__(self) -> None:
        super().__init__(id="page")

    @property
    def is_longer(self) -> bool:
        """Whether it does not fit on the screen whole."""
        return bool(self.max_scroll_y)

    @property
    def below(self) -> int:
        """So many lines lie below what is seen."""
        return max(self.max_scroll_y - round(self.scroll_y), 0)

    def scroll(self, by: int) -> bool:
        """Scroll by so many lines; return whether there was anything more that way."""
        end = 0 if by < 0 else self.max_scroll_y
        there_is_more = round(self.scroll_y) != end
        self.scroll_relative(y=by, animate=False)
        return there_is_more

    def on_resize(self) -> None:
        """Tell of more or less room."""
        self.post_message(self.Moved())

    def watch_virtual_size(self) -> None:
        """Tell of more or less text: no resize comes for it."""
        self.post_message(self.Moved())

    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        """Tell of it."""
        super().watch_scroll_y(old_value, new_value)
        self.post_message(self.Moved())
