"""The number that an answer is about, in the corner of the head: large where the figures have no room."""

from collections.abc import Sequence

from textual.content import Content

from finishing_tui.widgets.figures import Lettering, big, width_of
from finishing_tui.widgets.plain import plain, plain_rows
from finishing_tui.widgets.rows import Rows

DIGITS = Lettering(4, 5, 2)
"""How they are drawn."""


class Corner(Rows):
    """A number at the right, under what it is of; one too long for the corner is written in small."""

    def __init__(self) -> None:
        super().__init__(id="corner")
        self._number, self._what = "", ""

    def show(self, number: str, what: str = "stitches") -> None:
        """Show a number and ``what`` it is of; nothing is room kept."""
        if (number, what) != (self._number, self._what):
            self._number, self._what = number, what
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return its rows."""
        del height
        drawn = plain_rows(big(self._number, DIGITS, ascii_only=self.ascii), "bold $count")
        if width_of(self._number, DIGITS) > width:
            drawn = [plain(self._number, "bold $count")]
        rows = [plain(self._what if self._number else "", "$quiet"), *drawn]
        return [row.pad_left(max(width - row.cell_length, 0)) for row in rows]
