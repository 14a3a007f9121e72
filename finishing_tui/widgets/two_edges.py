"""An edge as it was planned over the edge as it would go, spot under spot, and under both a mark where they differ."""

from collections.abc import Collection

from textual.content import Content

from finishing_tui.glance.values import Edge
from finishing_tui.widgets.edge_strip import SHAPES
from finishing_tui.widgets.plain import plain

ROWS = 3
"""So many rows it always takes."""

_LABELS = ("planned  ", "now      ", "changed  ")
_MARK = "^"


def two_edges(planned: Edge, now: Edge, changed: Collection[int], width: int, *, ascii_only: bool) -> list[Content]:
    """Return both edges around where ``now`` is, with every spot of ``changed`` marked."""
    room = width - len(_LABELS[0]) - 2 * (len(str(now.spots)) + 2)
    first, last, step = _window(now, max(room, 4))
    signs = [_signs(edge, min(last, edge.spots), first, step, ascii_only=ascii_only) for edge in (planned, now)]
    signs.append([((_MARK if spot in changed else " ").ljust(step), "bold $mark") for spot in range(first, last + 1)])
    if now.hand == "right":
        for one in signs:
            one.reverse()
    before, after = first - 1, now.spots - last
    left, right = (after, before) if now.hand == "right" else (before, after)
    cut = plain(f"‹{left} " if left else "", "$quiet")
    rows = []
    for label, one, framed in zip(_LABELS, signs, (True, True, False), strict=True):
        drawn = Content().join([plain(text, style) for text, style in one])
        rows.append(
            plain(label, "$quiet" if one is signs[0] else "bold $mark" if one is signs[2] else "bold $foreground")
            + (cut if framed else Content(" " * cut.cell_length))
            + drawn
            + plain(f" {right}›" if right and framed else "", "$quiet")
        )
    return rows


def _window(edge: Edge, room: int) -> tuple[int, int, int]:
    """Return the first and last spot to show, and the columns a spot takes: mostly what is still to come."""
    for step in (2, 1):
        if edge.spots * step <= room:
            return 1, edge.spots, step
    first = min(max(edge.at - room // 4, 0), edge.spots - room)
    return first + 1, first + room, 1


def _signs(edge: Edge, last: int, first: int, step: int, *, ascii_only: bool) -> list[tuple[str, str]]:
    shapes = [SHAPES[sort] for sort in edge.sorts(first, last)]
    return [((in_ascii if ascii_only else shape).ljust(step), style) for shape, in_ascii, style in shapes]
