"""The edge, drawn as the hands walk it: right to left, and left to right for a left-handed knitter.

One widget, drawn line by line, for an edge of any length: it looks only at the spots that are on the screen, and
draws only the lines again that changed. What a spot is shows in its shape.
"""

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from textual.content import Content

from finishing_tui.glance.values import Edge, SpotSort
from finishing_tui.widgets.plain import between, plain
from finishing_tui.widgets.rows import Rows

SHAPES: Mapping[SpotSort, tuple[str, str, str]] = MappingProxyType(
    {
        "picked": ("●", "@", "bold $count"),
        "doubled": ("◆", "%", "bold $count"),
        "skipped": ("–", "-", "$quiet"),
        "to pick": ("○", "o", "$foreground"),
        "to double": ("◇", "8", "$foreground"),
        "to skip": ("·", ".", "$quiet"),
    }
)
"""The shape of each sort of spot, the same in ASCII, and its look."""

LEGEND = "● picked   – skipped   ○ to pick   · to skip   ◆ ◇ two loops   × otherwise than planned   ½ half way"
"""What the shapes mean, for the help."""


class EdgeStrip(Rows):
    """Four lines: the caret and the half mark, the spots, a ruler with what strayed, and what lies at both ends."""

    def __init__(self) -> None:
        super().__init__()
        self._edge: Edge | None = None

    def show(self, edge: Edge) -> None:
        """Show an edge."""
        self._edge = edge
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the lines for the part of the edge around the caret; where it is low, names give way to strays."""
        del height
        if self._edge is None:
            return ()
        rows = edge_rows(self._edge, width, ascii_only=self.ascii)
        if self.tallness != "low":
            return rows
        return [*rows[:2], rows[2] if "×" in rows[2].plain else rows[3]]


def edge_rows(edge: Edge, width: int, *, ascii_only: bool = False, beside: Edge | None = None) -> list[Content]:
    """Return the four lines of an edge in ``width`` columns: a window of spots around the caret, centred.

    ``beside``: an edge of as many spots that it is laid under; the window is the same, where the caret is in it.
    """
    room = width - 2 * (len(str(edge.spots)) + 2)
    first, last, step = window(beside or edge, room)
    if not first <= min(edge.at + 1, edge.spots) <= last:
        first, last, step = window(edge, room)
    shapes = [SHAPES[sort] for sort in edge.sorts(first, last)]
    gap = " " * (step - 1)
    drawn = [((in_ascii if ascii_only else shape) + gap, style) for shape, in_ascii, style in shapes]
    marks, ruler = [(" " + gap, "$mark")] * len(drawn), [(" " + gap, "$quiet")] * len(drawn)
    if edge.half is not None and first <= edge.half <= last:
        marks[edge.half - first] = ("½" + gap, "$mark")
    if first <= edge.at + 1 <= last:
        marks[edge.at + 1 - first] = ("▾" + gap, "bold $act")
    for spot in range(-(-first // 10) * 10, last + 1, 10):
        ruler[spot - first] = ("'" + gap, "$quiet")
    for spot in edge.strayed:
        if first <= spot <= last:
            ruler[spot - first] = ("×" + gap, "bold $alarm")
    if edge.hand == "right":
        for line in (marks, drawn, ruler):
            line.reverse()
    return _framed(edge, (first, last), (_line(marks), _line(drawn), _line(ruler)), width)


def _line(signs: Sequence[tuple[str, str]]) -> Content:
    """Return a line of our own signs, each with its style, in as few pieces as it has changes of style."""
    pieces = [signs[0]]
    for text, style in signs[1:]:
        if style == pieces[-1][1] or text.isspace():
            pieces[-1] = (pieces[-1][0] + text, pieces[-1][1])
        else:
            pieces.append((text, style))
    return Content.assemble(*pieces)


def window(edge: Edge, width: int) -> tuple[int, int, int]:
    """Return the first and last spot to show in ``width`` columns, and the columns a spot takes.

    The window moves by half its width at a time, so that it stands still under most presses.
    """
    width = max(width, 4)
    for step in (3, 2):
        if edge.spots * step <= width:
            return 1, edge.spots, step
    if edge.spots <= width:
        return 1, edge.spots, 1
    half = width // 2
    first = min(max((edge.at // half) * half - half // 2, 0), edge.spots - width)
    return first + 1, first + width, 1


def _framed(edge: Edge, shown: tuple[int, int], lines: tuple[Content, Content, Content], width: int) -> list[Content]:
    """Return the lines centred, with how many spots lie beyond either side and what the section begins and ends at."""
    first, last = shown
    before, after = first - 1, edge.spots - last
    left, right = (after, before) if edge.hand == "right" else (before, after)
    cut_left, cut_right = (f"‹{left}" if left else "", f"{right}›" if right else "")
    wide = lines[1].cell_length
    margin = max((width - wide) // 2, 0)
    pad = Content(" " * margin)
    middle = plain(f"{cut_left} ".rjust(margin), "$quiet") + lines[1] + plain(f" {cut_right}", "$quiet")
    begins = edge.before or "start"
    ends = edge.after or "end"
    if edge.hand == "right":
        names = between(plain(f"‹ {ends}", "$quiet"), plain(begins, "$quiet"), width)
    else:
        names = between(plain(begins, "$quiet"), plain(f"{ends} ›", "$quiet"), width)
    return [pad + lines[0], middle, pad + lines[2], names]
