"""The count and what it counts up to, and beside them what to do next: what is read from two meters.

Each has a cell of its own, the same on every screen of one size: only what stands in it changes.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from textual.content import Content

from finishing_tui.widgets.figures import big, drawable
from finishing_tui.widgets.grid import Cells, cells_for
from finishing_tui.widgets.plain import between, fits_between, plain, plain_rows, wrapped
from finishing_tui.widgets.rows import Rows

DIGITS = 3
"""The fewest digits there is room for."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What is shown.

    ``count`` (empty: none) ``joiner`` ``of``, both in figures, and small words about them in ``aside``. The ``verb``,
    drawn large in ``style``; ``first``: what comes before it, as a flag; ``then``: what comes after it.
    """

    count: str = ""
    of: str = ""
    aside: tuple[str, ...] = ()
    verb: str = ""
    first: str = ""
    then: str = ""
    style: str = "$act"
    joiner: str = "of"


class FigurePair(Rows):
    """Figures left, the word right, on one baseline; the word below the figures where it is narrow."""

    def __init__(self) -> None:
        super().__init__(id="figures")
        self._shown = Shown()
        self._digits = DIGITS

    def show(self, shown: Shown, digits: int = DIGITS) -> None:
        """Show other figures or words; ``digits``: of the largest number this garment comes to."""
        if (shown, digits) != (self._shown, self._digits):
            self._shown, self._digits = shown, max(digits, DIGITS)
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the rows of the cells: as many for every count and word."""
        del height
        cells = cells_for(*self.app.size)
        return self._beside(cells, width) if cells.beside else self._below(cells, width)

    def _beside(self, cells: Cells, width: int) -> list[Content]:
        shown, high = self._shown, cells.count.lines
        at = cells.word_at(self._digits)
        first = [Content()] * (high - cells.word.lines - 1) + [self._first()]
        words = [*first, *self._word(cells, shown.verb, width - at)]
        words += wrapped(self._then(), width - at)[: cells.below]
        figures = [*self._figures(cells), *wrapped(plain("  ".join(shown.aside)), at - cells.between)[: cells.below]]
        rows = high + cells.below
        return [
            left.pad_right(at - left.cell_length) + right if right else left
            for left, right in zip(_to(rows, figures), _to(rows, words), strict=True)
        ]

    def _below(self, cells: Cells, width: int) -> list[Content]:
        shown = self._shown
        aside, first, then = plain("  ".join(shown.aside)), self._first(), self._then()
        lines = shown.verb.split(maxsplit=1) or [""]
        words = [row for line in lines for row in self._word(cells, line, width)]
        middle = between(aside, first, width) if fits_between(aside, first, width) else first or aside
        if len(lines) == 1:
            words += wrapped(then, width)[: cells.word.lines]
        elif then and not first and fits_between(aside, then, width):
            middle = between(aside, then, width)
        return [*self._figures(cells), middle, *_to(2 * cells.word.lines, words)]

    def _figures(self, cells: Cells) -> list[Content]:
        """Return the count at the right of its cell, and what it counts up to on its baseline."""
        shown, high = self._shown, cells.count.lines
        drawn = plain_rows(big(shown.count, cells.count, ascii_only=self.ascii), "bold $count")
        wide = cells.count_wide(self._digits)
        rows = [row.pad_left(max(wide - row.cell_length, 0)) for row in drawn]
        if shown.of:
            of = plain_rows(big(shown.of, cells.of, ascii_only=self.ascii), "$quiet")
            joiner = f" {shown.joiner} "
            above = high - cells.of.lines
            for row, part in enumerate(of, above):
                rows[row] += plain(joiner if row == high - 1 else " " * len(joiner), "$quiet") + part
        return rows

    def _word(self, cells: Cells, word: str, width: int) -> list[Content]:
        style = f"bold {self._shown.style}"
        word = word.upper()
        if word and not drawable(word):
            return _to(cells.word.lines, [*[Content()] * (cells.word.lines - 1), plain(word, style)])
        return plain_rows(big(word, cells.letters(word, width), ascii_only=self.ascii), style)

    def _first(self) -> Content:
        """Return what comes before the verb: a block, so that it differs in its shape from what comes after."""
        first = self._shown.first
        left, right = "[]" if self.ascii else "▐▌"
        style = "bold $alarm"
        return plain(left, style) + plain(first, f"{style} reverse") + plain(right, style) if first else Content()

    def _then(self) -> Content:
        then = self._shown.then
        return plain("-> " if self.ascii else "→ ", "$quiet") + plain(then, "$foreground") if then else Content()


def _to(many: int, rows: list[Content]) -> list[Content]:
    """Return exactly so many rows."""
    return [*rows, *[Content()] * many][:many]
