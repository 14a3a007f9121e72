"""Needles with the stitches that are still on them, tips to the right, and beyond the tip those that are done.

Where there are two, what is worked next stands opposite; the longer one sticks out at the far end.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from textual.content import Content

from finishing_tui.widgets.plain import plain, told_apart
from finishing_tui.widgets.rows import Rows


@dataclass(frozen=True, slots=True)
class DrawnNeedle:
    """A needle, or part of one: its name (may be empty), stitches ``done`` and ``left``.

    ``bare``: it is no needle, but the edge of a piece: rows, with nothing under them and no tip.
    """

    name: str
    done: int
    left: int
    bare: bool = False


LEGEND = ("∩ stitch on the needle", "▷ its tip", "■ done", "╵ row of an edge")
"""What the shapes mean."""

WIDE = 100
"""From so many columns on a few stitches stand further apart."""


class Loops(Rows):
    """A line or two for every needle: its name and number, and its stitches as shapes, as many as there is room for."""

    def __init__(self) -> None:
        super().__init__()
        self._needles: tuple[DrawnNeedle, ...] = ()

    def show(self, needles: tuple[DrawnNeedle, ...]) -> None:
        """Show needles, the further one first."""
        self._needles = needles
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the needles one under the other."""
        del height
        called = [needle.name for needle in self._needles]
        called = told_apart(called) if self.tallness == "low" else called
        lefts = [needle.left for needle in self._needles]
        names = [
            plain(f"{left:2}  ", "bold $count") + plain(name, "$quiet")
            for left, name in zip(lefts, called, strict=True)
        ]
        wide = max((name.cell_length for name in names), default=0) + 3
        if not any(needle.name for needle in self._needles):
            return self._opposite(width)
        if self.tallness == "low":
            wide = min(wide, width * 3 // 5)
            names = [name.truncate(wide - 3, ellipsis=True) for name in names]
        if wide < width // 2 or self.tallness == "low":
            drawn = zip(names, self._opposite(width - wide), strict=True)
            return [name.pad_right(wide - name.cell_length) + needle for name, needle in drawn]
        return [line for both in zip(names, self._opposite(width), strict=True) for line in both]

    def _opposite(self, width: int) -> list[Content]:
        """Return the stitches of every needle, with their tips under one another."""
        drawn = [self._stitches(needle, width) for needle in self._needles]
        longest = max((line.cell_length for line in drawn), default=0)
        return [line.pad_left(longest - line.cell_length) for line in drawn]

    def _stitches(self, needle: DrawnNeedle, width: int) -> Content:
        done, left = needle.done, needle.left
        hidden_done, hidden_left = 0, 0
        room = width - 12
        most = max(one.done + one.left for one in self._needles)  # all alike, so that the longer one looks longer
        if most > width - 3 and done + left > room:
            hidden_done = max(min(done - room // 3, done + left - room), 0)
            hidden_left = done + left - room - hidden_done
        gap = " " * (3 if 4 * most <= room and room >= WIDE else 2 * most <= room)
        loop, passed, wire, tip = "∩■═▷"
        if needle.bare:
            loop, wire, tip = "╵", " ", ""
        before = plain(f"{hidden_left}‹ ", "$quiet") if hidden_left > 0 else Content()
        after = plain(f" ›{hidden_done}", "$quiet") if hidden_done else Content()
        between = wire * len(gap)
        on = plain(wire + (loop + between) * (left - max(hidden_left, 0)) + tip, "$foreground")
        off = plain(f" {(passed + gap) * (done - hidden_done)}".rstrip(), "bold $count")
        return before + on + off + after
