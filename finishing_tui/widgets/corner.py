"""The number that an answer is about, in the corner of the head: large where the figures have no room."""

from collections.abc import Sequence

from textual.content import Content

from finishing_tui.widgets.figures import Lettering, big, width_of
from finishing_tui.widgets.plain import plain, plain_rows
from finishing_tui.widgets.rows import Rows

DIGITS = Lettering(4, 5, 2)
"""How they are drawn."""


class Corner(Rows):
    """A number at the right; one too long for the corner is written in small."""

    def __init__(self) -> None:
        super().__init__(id="corner")
        self._number = ""

    def show(self, number: str) -> None:
        """Show a number; nothing is room kept."""
        if number != self._number:
            self._number = number
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return its rows."""
        del height
        if width_of(self._number, DIGITS) > width:
            return [plain(self._number, "bold $count")]
        drawn = plain_rows(big(self._number, DIGITS, ascii_only=self.ascii), "bold $count")
        return [row.pad_left(max(width - row.cell_length, 0)) for row in drawn]
