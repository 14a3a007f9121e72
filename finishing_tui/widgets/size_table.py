"""Numbers by size as a table; where not all sizes fit beside each other, the rest stand below, under their own head."""

from collections.abc import Iterator, Sequence

from textual.content import Content

from finishing_tui.glance.reading import SizeTable
from finishing_tui.widgets.pages import WIDEST
from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows

LABEL = 34
"""Columns that the words of a number take at most."""


class SizeTableRows(Rows):
    """The table under its heading."""

    def __init__(self) -> None:
        super().__init__()
        self._table = SizeTable((), ())

    def show(self, table: SizeTable) -> None:
        """Show a table."""
        self._table = table
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the table, in as many parts as the width needs."""
        del height
        return list(self._all(min(width, WIDEST))) if self._table.rows else []

    def _all(self, width: int) -> Iterator[Content]:
        table = self._table
        yield Content()
        yield plain("sizes and their numbers", "bold $act")
        label = min(LABEL, width // 2)
        cells = [plain(size).cell_length for size in table.sizes]
        cells += [len(figure) for _, figures in table.rows for figure in figures]
        wide = min(max(cells, default=1), width - label - 2) + 2
        many = max((width - label) // wide, 1)
        for first in range(0, len(table.sizes), many):
            if first:
                yield Content()
            sizes = table.sizes[first : first + many]
            heads = [_right(plain(size, "bold $count"), wide) for size in sizes]
            yield _joined(plain("size", "$quiet"), label, heads)
            for text, figures in table.rows:
                start, *rest = wrapped(plain(text), label)
                yield _joined(start, label, [_right(plain(one), wide) for one in figures[first : first + many]])
                yield from (plain("  ") + line for line in rest)


def _joined(label: Content, wide: int, cells: Sequence[Content]) -> Content:
    line = label.pad_right(max(wide - label.cell_length, 0))
    for cell in cells:
        line += cell
    return line


def _right(content: Content, wide: int) -> Content:
    content = content if content.cell_length < wide else content.truncate(wide - 1, ellipsis=True)
    return Content(" " * (wide - content.cell_length)) + content
