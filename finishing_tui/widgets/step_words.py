"""The words of a step: how it is done, how to count, how it should look, what goes wrong, what to take care of."""

from collections.abc import Sequence

from textual.content import Content

from finishing_tui.glance.values import Line
from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows


class StepWords(Rows):
    """As much of the words as there is room for; where that is not all, the last line says how to see the rest."""

    def __init__(self) -> None:
        super().__init__(id="words")
        self._lines: tuple[Line, ...] = ()

    def show(self, lines: tuple[Line, ...]) -> None:
        """Show the words of a step."""
        if lines != self._lines:
            self._lines = lines
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the words in lines, those of care first among what follows the first."""
        most = _MOST[self.tallness]
        lines = all_words(self._lines, min(width, 96))
        del height
        if len(lines) <= most or not most:
            return lines[:most]
        more = plain(" … ? shows all", "$quiet")
        last = lines[most - 1].truncate(max(min(width, 96) - more.cell_length, 0))
        return [*lines[: most - 1], last.rstrip() + more]


_MOST = {"tall": 10, "high": 4, "middling": 2, "low": 0}
"""How many lines of words there is room for, by the height of the screen."""


def all_words(lines: Sequence[Line], width: int) -> list[Content]:
    """Return the words of a step, wrapped, each with its heading; a caution stands out by its heading."""
    found: list[Content] = []
    for line in lines:
        style = "bold $alarm" if line.heading == "take care" else "bold $quiet"
        head = plain(f"{line.heading}: ", style) if line.heading else Content()
        found += wrapped(head + plain(line.text, "$foreground"), width)
    return found
