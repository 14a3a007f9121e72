"""The count and what it counts up to, and beside them what to do next: what is read from two meters.

Each has a cell of its own, the same on every screen of one size: only what stands in it changes.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from textual.content import Content

from finishing_tui.glance.lying import Picture, enlarged
from finishing_tui.letters import in_ascii
from finishing_tui.widgets.figures import big, drawable
from finishing_tui.widgets.grid import GAP, Cells, apart, cells_for, count_wide, letters_for, word_at
from finishing_tui.widgets.plain import between, fits_between, plain, plain_rows, wrapped
from finishing_tui.widgets.rows import Rows

DIGITS = 3
"""The fewest digits there is room for."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What is shown.

    ``count`` (empty: none) ``joiner`` ``of``, both in figures, and small words about them in ``aside``. The ``verb``,
    drawn large in ``style``; ``first``: what comes before it, as a flag; ``then``: what comes after it. ``lay``: how to
    lay the work, drawn in the cell of the count where there is none.
    """

    count: str = ""
    of: str = ""
    aside: tuple[str, ...] = ()
    verb: str = ""
    first: str = ""
    then: str = ""
    style: str = "$act"
    joiner: str = "of"
    lay: Picture | None = None


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
        """Return the rows of the cells."""
        del height
        return in_cells(self._shown, self._digits, cells_for(*self.app.size), width, ascii_only=self.ascii)


def in_cells(shown: Shown, digits: int, cells: Cells, width: int, *, ascii_only: bool = False) -> list[Content]:
    """Return what is shown in its ``cells``, ``width`` columns wide, with room for so many ``digits``."""
    aside, first, then = plain("  ".join(shown.aside)), _first(shown.first, ascii_only), _then(shown.then, ascii_only)
    verb, style = shown.verb.upper(), f"bold {shown.style}"
    figures = _figures(shown, digits, cells, ascii_only)
    if not cells.beside:
        middle = between(first, aside, width) if fits_between(first, aside, width) else first or aside
        word = _word(verb, style, cells, width, ascii_only) if verb else ()
        if shown.lay:
            return [*_to(len(figures) + 1, _laid(shown.lay, width, len(figures) + 1, ascii_only)), *word]
        return [*figures, middle, *word, *(wrapped(then, width, MOST_THEN) if then else [])]
    high, at = cells.count.lines, word_at(cells, digits)
    above: list[Content] = [Content()] * (high - cells.high)
    above[-1] = first
    beside = [*above, *_word(verb, style, cells, width - at, ascii_only), *wrapped(then, width - at, cells.below)]
    if shown.lay:
        figures = _laid(shown.lay, at - GAP, high + cells.below, ascii_only)
    wide = at - max(apart(cells), GAP)  # apart from what comes after the verb, which stands on the same line
    figures += [line.pad_left(wide - line.cell_length) for line in wrapped(aside, wide)]
    return [
        left.pad_right(at - left.cell_length) + right if right else left
        for left, right in zip(_to(high + cells.below, figures), _to(high + cells.below, beside), strict=True)
    ]


MOST_THEN = 2
"""Lines for what comes after the verb, where it stands below it."""


def _figures(shown: Shown, digits: int, cells: Cells, ascii_only: bool) -> list[Content]:  # noqa: FBT001
    """Return the count at the right of its cell, and on its baseline what it counts up to, under the joiner."""
    high, wide = cells.count.lines, count_wide(cells, digits)
    drawn = plain_rows(big(shown.count, cells.count, ascii_only=ascii_only), "bold $count")
    rows = [row.pad_left(max(wide - row.cell_length, 0)) for row in drawn]
    if shown.of:
        of = plain_rows(big(shown.of, cells.of, ascii_only=ascii_only), "$quiet")
        first = high - cells.of.lines
        for row, part in enumerate((plain(shown.joiner, "$quiet"), *of), first - 1):
            rows[row] += part.pad_left(GAP)
    return rows


def _laid(lay: Picture, width: int, height: int, ascii_only: bool) -> list[Content]:  # noqa: FBT001
    """Return how to lay the work, as wide as fits and in the middle of its cell."""
    rows = enlarged(lay, width, height)
    margin = " " * max((width - len(rows[0])) // 2, 0)
    above = [""] * ((height - len(rows)) // 2)
    return plain_rows([*above, *(margin + (in_ascii(row) if ascii_only else row) for row in rows)], "bold $count")


@lru_cache(maxsize=64)
def _word(word: str, style: str, cells: Cells, width: int, ascii_only: bool) -> tuple[Content, ...]:  # noqa: FBT001
    if word and not drawable(word):
        return (*[Content()] * (cells.high - 1), plain(word, style))
    return tuple(plain_rows(big(word, letters_for(word, cells, width), ascii_only=ascii_only), style))


@lru_cache(maxsize=64)
def _first(first: str, ascii_only: bool) -> Content:  # noqa: FBT001
    """Return what comes before the verb as a block, so that it differs in its shape from what comes after."""
    left, right = "[]" if ascii_only else "▐▌"
    style = "bold $alarm"
    return plain(left, style) + plain(first, f"{style} reverse") + plain(right, style) if first else Content()


@lru_cache(maxsize=64)
def _then(then: str, ascii_only: bool) -> Content:  # noqa: FBT001
    return plain("-> " if ascii_only else "→ ", "$quiet") + plain(then, "$foreground") if then else Content()


def _to(many: int, rows: list[Content]) -> list[Content]:
    """Return exactly so many rows."""
    return [*rows, *[Content()] * many][:many]
