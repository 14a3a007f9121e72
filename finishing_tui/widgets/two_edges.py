"""An edge as it was planned over the edge as it would go, spot under spot, and under both a mark where ways differ."""

from collections.abc import Collection, Mapping, Sequence

from textual.content import Content

from finishing_tui.glance.values import Edge
from finishing_tui.widgets.edge_strip import SHAPES
from finishing_tui.widgets.edge_strip import explained as meant
from finishing_tui.widgets.plain import packed, plain

BOTH = 2
"""So many rows it takes, and one more for each way whose changes are marked."""

_LABELS = 11
_MARK = "^"
BEHIND = 8
"""So many spots behind at most are shown of an edge that has no room; where they are, hands can tell."""


def two_edges(
    planned: Edge,
    ways: Sequence[Edge],
    changed: Mapping[int, Collection[int]],
    at: int,
    width: int,
    *,
    numbered: bool,
    explained: int,
    ascii_only: bool,
) -> list[Content]:
    """Return the planned edge and that of the way at ``at``, with the spots that ways change marked, a row each.

    ``changed``: those spots, by the place of the way among ``ways``. What is to be seen of the edge is the same for all
    of them. ``explained``: in so many more rows, what the signs mean.
    """
    now = ways[at]
    first, last, step = _window(planned, now, changed, width)
    edges = [planned, now] if numbered or now != planned else [planned]
    signs = [_signs(edge, last, first, step, ascii_only=ascii_only) for edge in edges]
    drawn = {sign[0] for one in signs for sign, _ in one}
    for way, spots in changed.items():
        style = "bold $mark" if way == at else "$quiet"
        signs.append([((_MARK if spot in spots else " ").ljust(step), style) for spot in range(first, last + 1)])
    if now.hand == "right":
        for one in signs:
            one.reverse()
    before, after = first - 1, now.spots - last
    left, right = (after, before) if now.hand == "right" else (before, after)
    cut = plain(f"‹{left} " if left else "", "$quiet")
    labels = [("planned", "$quiet"), (f"way {at + 1}" if numbered else "if so", "bold $foreground")][: len(edges)]
    labels += [
        (f"changed {way + 1}" if numbered else "changed", "bold $mark" if way == at else "$quiet") for way in changed
    ]
    rows = []
    for row, ((label, style), one) in enumerate(zip(labels, signs, strict=True)):
        line = Content().join([plain(text, styled) for text, styled in one])
        if row >= len(edges) and not line.plain.strip():
            line = plain("nothing", "$quiet")
        rows.append(
            plain(label.ljust(_LABELS), style)
            + (cut if row < BOTH else Content(" " * cut.cell_length))
            + line
            + plain(f" {right}›" if right and row < BOTH else "", "$quiet")
        )
    if explained:
        marked = [f"{_MARK} not as planned"] if any(changed.values()) else []
        beside = ["‹ › more that way"] if left or right else []
        rows += packed([*marked, *meant(drawn), *beside], width, "$quiet")[:explained]
    return rows


def all_seen(planned: Edge, ways: Sequence[Edge], changed: Mapping[int, Collection[int]], width: int) -> bool:
    """Return whether something of what each way changes is seen, whichever way is drawn."""
    windows = [_window(planned, one, changed, width) for one in ways]
    return all(any(first <= spot <= last for spot in spots) for first, last, _ in windows for spots in changed.values())


def _window(planned: Edge, now: Edge, changed: Mapping[int, Collection[int]], width: int) -> tuple[int, int, int]:
    """Return the first and last spot to show, and the columns a spot takes: from what changes first on, if anything."""
    room = width - _LABELS - 2 * (len(str(now.spots)) + 2)
    at = min([min(spots) - 1 for spots in changed.values() if spots] or [planned.at])
    return seen(now.spots, at, max(room, 4))


def seen(spots: int, at: int, room: int) -> tuple[int, int, int]:
    """Return the first and last spot to show, and the columns a spot takes: what is after ``at`` before the rest."""
    for step in (2, 1):
        if spots * step <= room:
            return 1, spots, step
    first = min(max(at - min(room // 6, BEHIND), 0), spots - room)
    return first + 1, first + room, 1


def _signs(edge: Edge, last: int, first: int, step: int, *, ascii_only: bool) -> list[tuple[str, str]]:
    """Return the signs of an edge from ``first`` to ``last``; where it is not that long, none, so that spots align."""
    shapes = [SHAPES[sort] for sort in edge.sorts(first, min(last, edge.spots))]
    none = [(" " * step, "$quiet")] * max(last - max(edge.spots, first - 1), 0)
    signs = [((in_ascii if ascii_only else shape).ljust(step), style) for shape, in_ascii, style in shapes]
    return [*signs, *none]
