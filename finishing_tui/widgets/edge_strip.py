"""The edge, drawn as the hands walk it: right to left, and left to right for a left-handed knitter.

One widget, drawn line by line, for an edge of any length: it looks only at the spots that are on the screen, and
draws only the lines again that changed. What a spot is shows in its shape.
"""

from collections.abc import Collection, Mapping, Sequence
from functools import lru_cache
from types import MappingProxyType

from textual.content import Content

from finishing_tui.glance.values import Edge, SpotSort
from finishing_tui.letters import in_ascii
from finishing_tui.widgets.plain import between, packed, plain
from finishing_tui.widgets.rows import Rows

SHAPES: Mapping[SpotSort, tuple[str, str, str]] = MappingProxyType(
    {
        "picked": ("∩", "n", "bold $count"),
        "doubled": ("m", "m", "bold $count"),
        "skipped": ("═", "=", "$count"),
        "to pick": ("╷", "|", "$foreground"),
        "to double": ("¦", ":", "$foreground"),
        "to skip": (" ", " ", "$quiet"),
    }
)
"""What lies above a row of the edge: a stitch on the needle, the needle alone, a pick to come, nothing; the same in
ASCII, and its look. No sign of it means something else in a chart."""

ROW = ("╵", "'")
"""A row of the edge, whatever lies above it."""

PERHAPS = ("·", ".")
"""A row of an edge that nobody counted, too far ahead to be relied on."""

PINNED = ("▔", "_")
"""The edge below a stitch where it is pinned: nobody knows its rows."""

PIN = "!"
"""A pin in the edge, in every alphabet."""

SURE_AHEAD = 8
"""Rows ahead that are drawn as they are where nobody counted the edge; beyond them it fades."""

LEGEND = (
    "╵ row",
    "∩ picked up",
    "m two from one row",
    "╷ still to pick up",
    "¦ two still to come",
    "▲ off plan",
    "½ halfway",
    "· row, if the edge is that long",
    "! pin",
)
"""What the shapes mean."""

TIPS = {"right": ("◂", "<"), "left": ("▸", ">")}
"""The working tip of the needle, as each hand knits."""

WIDE = 120
"""From so many columns on the spots of a short edge stand further apart."""


class EdgeStrip(Rows):
    """The needle over the edge, a ruler with what is off plan, what lies at both ends; a legend where there is room."""

    def __init__(self) -> None:
        super().__init__()
        self._edge: Edge | None = None
        self._ahead = 0

    def show(self, edge: Edge | None, ahead: int = 0) -> None:
        """Show an edge, or none; so many spots ``ahead`` are skipped before the next one is worked."""
        self._edge, self._ahead = edge, ahead
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the lines for the part of the edge around the next spot; where it is low, help has the legend."""
        del height
        if self._edge is None:
            return ()
        rows = edge_rows(self._edge, width, ascii_only=self.ascii, ahead=self._ahead)
        if self.tallness == "low":
            return rows
        return [*rows, _legend(_EXPLAINED.intersection(rows[0].plain + rows[1].plain + rows[2].plain), width)]


_EXPLAINED = frozenset(part[0] for part in LEGEND) | frozenset(in_ascii(part[0]) for part in LEGEND)
"""The signs that the legend explains, and how they are drawn in ASCII."""


@lru_cache(maxsize=64)
def _legend(drawn: frozenset[str], width: int) -> Content:
    """Return in one line what the signs mean that are ``drawn``; a stitch that is picked up soon will be."""
    return packed(explained({*drawn, SHAPES["picked"][0]}), width, "$quiet")[0]


def explained(drawn: Collection[str]) -> list[str]:
    """Return what the signs mean that are ``drawn``, ours or those for them in ASCII."""
    return [part for part in LEGEND if part[0] in drawn or in_ascii(part[0]) in drawn]


def edge_rows(
    edge: Edge, width: int, *, ascii_only: bool = False, beside: Edge | None = None, ahead: int = 0
) -> list[Content]:
    """Return the four lines of an edge in ``width`` columns: a window of spots around the next one, centered.

    ``beside``: an edge of as many spots that it is laid under; the window is the same, where the next spot is in it.
    ``ahead``: so many spots are skipped before the one that is next worked, which is the brightest.
    """
    room = width - 2 * (len(str(edge.spots)) + 2)
    first, last, step = window(beside or edge, room)
    if not first <= min(edge.at + 1, edge.spots) <= last:
        first, last, step = window(edge, room)
    alphabet = int(ascii_only)
    here = edge.at + 1 + ahead
    dense_tip = edge.at + 1 if step == 1 and edge.at else 0  # no room beside it: the tip stands where the next one goes
    above: list[tuple[str, str]] = []
    gaps = _gaps(edge, first, last, step - 1, alphabet)
    for spot, (sort, right_of_it) in enumerate(zip(edge.sorts(first, last), gaps, strict=True), first):
        *signs, style = SHAPES[sort]
        if spot == dense_tip:
            signs, style = [*TIPS[edge.hand]], "bold $act"
        above.append((signs[alphabet] + right_of_it, "bold $act" if spot == here else style))
    gap = " " * (step - 1)
    sure = min(max(edge.at + SURE_AHEAD - first + 1, 0), len(above)) if edge.uncounted else len(above)
    rows = [(ROW[alphabet] + gap, "$quiet")] * sure + [(PERHAPS[alphabet] + gap, "$quiet")] * (len(above) - sure)
    if edge.pins:
        rows = [_below(edge, spot, step, alphabet) for spot in range(first, last + 1)]
    if first <= here <= last:
        rows[here - first] = (rows[here - first][0], "bold $act reverse")
    ruler = _ruler(edge, first, last, step)
    if edge.hand == "right":
        above.reverse()
        rows.reverse()
    if edge.pins:
        rows = _pins_apart(rows)
    return _framed(edge, (first, last), (_line(above), _line(rows), ruler), width)


def _below(edge: Edge, spot: int, step: int, alphabet: int) -> tuple[str, str]:
    """Return what is below a stitch of a pinned edge, and right of it: a pin stands between two, where there is room.

    Hands come to it after the stitch it is counted at: left of that from right to left.
    """
    line = PINNED[alphabet]
    if step == 1:
        return (PIN, "bold $mark") if spot in edge.pins else (line, "$quiet")
    right = edge.hand == "right"
    pin = PIN if (spot - 1 if right else spot) in edge.pins else line
    gap = pin.rjust(step - 1, line) if right else pin.ljust(step - 1, line)
    return line + gap, "$quiet"


def _pins_apart(rows: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """Return the same signs with the pins in a style of their own, and no more than a stitch's own cell lit."""
    pieces: list[tuple[str, str]] = []
    for text, style in rows:
        pieces += [(text[0], style), *((sign, "bold $mark" if sign == PIN else "$quiet") for sign in text[1:])]
    return pieces


def _gaps(edge: Edge, first: int, last: int, wide: int, alphabet: int) -> list[str]:
    """Return what stands right of each spot: the needle as far as it reaches, its tip, or nothing."""
    many = last - first + 1
    if not wide:
        return [""] * many
    needle, right = SHAPES["skipped"][alphabet], edge.hand == "right"
    reaches = edge.at if right else edge.at - 1  # the last spot with the needle at its right
    passed = min(max(reaches - first + 1, 0), many)
    gaps = [needle * wide] * passed + [" " * wide] * (many - passed)
    at_tip = edge.at + 1 if right else edge.at
    if 0 < edge.at < edge.spots and first <= at_tip <= last:
        tip = TIPS[edge.hand][alphabet]
        gaps[at_tip - first] = tip + needle * (wide - 1) if right else needle * (wide - 1) + tip
    return gaps


def _ruler(edge: Edge, first: int, last: int, step: int) -> Content:
    """Return the line below: a number at every tenth spot, the half, and what is off plan, which hides the others.

    A number that the half would touch gives way, so that nobody reads 50½.
    """
    wide = (last - first + 1) * step
    signs, styles = [" "] * wide, ["$quiet"] * wide

    def at(spot: int) -> int:
        return (last - spot if edge.hand == "right" else spot - first) * step

    def put(spot: int, text: str, style: str) -> None:
        for place, sign in enumerate(text, at(spot)):
            if place < wide:
                signs[place], styles[place] = sign, style

    for pin in edge.pins:
        start = at(pin) + (0 if step == 1 else -1 if edge.hand == "right" else 1)  # under the pin
        ends = start + len(str(pin))
        beside = "".join(signs[max(start - 1, 0) : ends + 1])
        if first <= pin <= last and ends <= wide and not beside.strip():  # else it gives way
            signs[start:ends], styles[start:ends] = str(pin), ["$mark"] * (ends - start)
    for spot in () if edge.pins else range(-(-first // 10) * 10, last + 1, 10):
        if edge.half is None or not -1 <= at(edge.half) - at(spot) <= len(str(spot)):
            put(spot, str(spot), "$quiet")
    if edge.half is not None and first <= edge.half <= last:
        put(edge.half, "½", "bold $mark")
    for spot in edge.strayed:
        if first <= spot <= last:
            put(spot, "▲", "bold $alarm")
    return _line(list(zip(signs, styles, strict=True)))


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
    for step in (4, 3, 2) if width >= WIDE else (3, 2):
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
    before, after = str(first - 1 or ""), "…" if edge.uncounted else str(edge.spots - last or "")
    left, right = (after, before) if edge.hand == "right" else (before, after)
    cut_left, cut_right = (f"‹{left}" if left else "", f"{right}›" if right else "")
    wide = lines[1].cell_length
    margin = max((width - wide) // 2, 0)
    pad = Content(" " * margin)
    middle = plain(f"{cut_left} ".rjust(margin), "$quiet") + lines[1] + plain(f" {cut_right}", "$quiet")
    begins = edge.before or "start"
    ends = edge.after or "end"
    first_name, last_name = (f"‹ {ends}", begins) if edge.hand == "right" else (begins, f"{ends} ›")
    both = len(first_name) + len(last_name) + 2
    margin, wide = (margin, wide) if both <= wide else (max((width - both) // 2, 0), min(both, width))
    names = between(plain(first_name, "$quiet"), plain(last_name, "$quiet"), wide)
    name_pad = Content(" " * margin)
    return [pad + lines[0], middle, pad + lines[2], name_pad + names]
