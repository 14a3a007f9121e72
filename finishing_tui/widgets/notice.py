"""One sentence about the last key: a refusal with its mark, or what was done. It lies over the words until the next."""

from collections.abc import Sequence

from textual.content import Content

from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows

MARGINS = 2
"""The columns beside it."""


class Notice(Rows):
    """A sentence, or nothing at all."""

    def __init__(self) -> None:
        super().__init__(id="notice")
        self._text = ""
        self._alarm = False

    @property
    def text(self) -> str:
        """The sentence shown."""
        return self._text

    def tall(self, width: int) -> int:
        """Return how many lines it takes on a screen of this width."""
        return len(self.rows(width - MARGINS, None)) if self._text else 0

    def show(self, text: str, *, alarm: bool = False) -> None:
        """Show a sentence, as an alarm when it is a refusal; nothing, when it is empty."""
        if (text, alarm) == (self._text, self._alarm):
            return
        self._text, self._alarm = text, alarm
        self.display = bool(text)
        self.redraw()
        self.refresh(layout=True)

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the sentence, wrapped, with its mark."""
        del height
        if not self._text:
            return ()
        mark, style = ("! ", "bold $alarm") if self._alarm else ("· ", "$good")
        lines = wrapped(plain(self._text, style), width - 2)
        return [plain(mark if not at else "  ", style) + line for at, line in enumerate(lines)]
