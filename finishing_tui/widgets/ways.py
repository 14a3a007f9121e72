"""The ways to go on after a recount, one above the other: how the edge was planned, and how it would be."""

from collections.abc import Sequence

from textual.content import Content

from finishing_tui.glance.recounts import RecountView, WayView
from finishing_tui.glance.values import Edge
from finishing_tui.widgets.edge_strip import edge_rows
from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows

_AT_THE_CARET = ((0, 3, 0, 0), (0, 2, 0, 1), (0, 1, 0, 1))
"""Ways to draw only the way at the caret: by its number of lines of words, and those of the rhythm before."""


class Ways(Rows):
    """Before and after, aligned spot by spot. Where there is no room for all, only the way at the caret is drawn."""

    def __init__(self) -> None:
        super().__init__(id="ways")
        self._view: RecountView | None = None
        self.at = 0

    @property
    def view(self) -> RecountView | None:
        """What is shown."""
        return self._view

    def show(self, view: RecountView | None, at: int = 0) -> None:
        """Show what a count leads to, with the caret at one way; None shows nothing."""
        self._view, self.at = view, at
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the edge before, and the ways."""
        view, height = self._view, height or 0
        if view is None:
            return ()
        head = plain("before  ", "bold $quiet") + plain(view.rhythm, "$quiet")
        lines: list[Content] = []
        # From all in full to only the way at the caret in brief: the labels of all of them are always there.
        for drawn, words, gap, rhythm in ((None, 3, 1, 0), (None, 3, 0, 0), (None, 1, 0, 0), *_AT_THE_CARET):
            lines = [*wrapped(head, width, rhythm), *self._edge(view.before, width)]
            for index, way in enumerate(view.ways):
                lines += [Content()] * gap
                lines += self._way(index, way, width, words if drawn is None or index == self.at else 0, view.before)
            if len(lines) <= height:
                break
        return lines[:height]

    def _way(self, index: int, way: WayView, width: int, words: int, before: Edge) -> list[Content]:
        here = index == self.at
        head = plain("▸ " if here else "  ", "bold $act") + plain(f"{index + 1}  ", "bold $act")
        label_drawn = plain(way.label, "bold $count" if here else "bold $foreground")
        rhythm = plain(f"   {way.rhythm}", "$foreground")
        if words == 1 and label_drawn.cell_length + rhythm.cell_length <= width - 5:
            label_drawn += rhythm
        label = wrapped(label_drawn, width - 5)
        lines = [(head if not at else Content("     ")) + line for at, line in enumerate(label)]
        if words:
            lines += self._edge(way.edge, width, before)
        if words > 1:
            text = way.text if way.text else way.rhythm
            lines += [Content("     ") + line for line in wrapped(plain(text, "$foreground"), width - 5, words)]
        return lines

    def _edge(self, edge: Edge, width: int, before: Edge | None = None) -> list[Content]:
        return edge_rows(edge, width, ascii_only=self.ascii, beside=before)[:2]
