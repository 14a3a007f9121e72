"""The face of a checklist: what is ticked off, what is next, what is to come."""

from collections.abc import Sequence

from textual.content import Content
from textual.widget import Widget

from finishing_tui.glance.values import ItemFace
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown
from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows


class Checklist(Rows):
    """The items; the one that is next is always among those shown."""

    def __init__(self) -> None:
        super().__init__(id="checklist")
        self._items: tuple[str, ...] = ()
        self._done = 0

    def show(self, items: tuple[str, ...], done: int) -> None:
        """Show the items, with ``done`` of them ticked off."""
        self._items, self._done = items, done
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the items, each with its mark; those before give way where there is no room."""
        lines: list[Content] = []
        begins: list[int] = []
        for index, item in enumerate(self._items):
            mark, style = ("■ ", "$quiet") if index < self._done else ("□ ", "$foreground")
            if index == self._done:
                mark, style = "▸ ", "bold $act"
            begins.append(len(lines))
            text = wrapped(plain(item, style), width - 2)
            lines += [plain(mark if not row else "  ", style) + line for row, line in enumerate(text)]
        if height is None or len(lines) <= height:
            return lines
        first = first_line(begins, min(self._done, len(begins) - 1), len(lines), height)
        shown, end = lines[first : first + height], first + height
        below = sum(begin >= end - 1 for begin in begins)  # with the one whose place tells of them
        if end < len(lines) and end not in begins:
            shown[-1] = wrapped(shown[-1], max(width - 2, 1))[0].rstrip() + plain(" …", "$quiet")
        elif end < len(lines) and begins[self._done] < end - 1:
            shown[-1] = plain(f"  … and {below} more", "$quiet")
        return shown


def first_line(begins: Sequence[int], at: int, lines: int, height: int) -> int:
    """Return the line to begin with, the first of an item: that before the next one, where both have room.

    ``begins``: the first lines of all items; ``at``: which item is next.
    """
    ends = [*begins[1:], lines]
    before = next((line for line in begins if lines - line <= height), lines)  # from here on all have room
    fitting = [line for line in begins[max(at - 1, 0) : at + 1] if ends[at] - line <= height] or [begins[at]]
    return min(fitting[0], before)


class Items(FaceView[ItemFace]):
    """A checklist."""

    def more(self) -> Sequence[Widget]:
        """Return the list."""
        return (Checklist(),)

    def figures(self, face: ItemFace) -> Shown:
        """Return how many are ticked off, and the word; of the only one there is nothing to count."""
        if len(face.items) == 1:
            return Shown(verb=face.act, lay=face.lay)
        return Shown(str(face.done), str(len(face.items)), (), face.act)

    def sentences(self, face: ItemFace) -> tuple[tuple[str, str], ...]:
        """Return what this is about, where it is more than its only item says."""
        style = "$foreground" if face.items == (face.words,) else "$quiet"
        return ((face.words, style),)

    def show_more(self, face: ItemFace) -> None:
        """Show the list."""
        checklist = self.query_one(Checklist)
        checklist.display = len(face.items) > 1 or face.items[0] != face.words
        checklist.show(face.items, face.done)
