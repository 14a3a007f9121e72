"""A page of text under headings, as long as it needs to be; the screen around it scrolls."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from textual.content import Content

from finishing_tui.widgets.plain import between, fits_between, plain, wrapped
from finishing_tui.widgets.rows import Rows

WIDEST = 90
"""Longer lines are hard to read."""


@dataclass(frozen=True, slots=True)
class Entered:
    """One line of a page: a short ``left`` part that stands out, the ``text``, and something quiet at its end.

    ``style`` is that of the left part; ``alarm``: what stands at the end is to be noticed.
    """

    left: str
    text: str
    right: str = ""
    style: str = "bold $count"
    alarm: bool = False


@dataclass(frozen=True, slots=True)
class PagePart:
    """A heading and the lines under it."""

    heading: str
    lines: tuple[Entered, ...]


class Pages(Rows):
    """A title, and parts under their headings; the left parts of one heading are as wide as each other."""

    def __init__(self) -> None:
        super().__init__()
        self._title = ("", "")
        self._parts: tuple[PagePart, ...] = ()

    def show(self, title: str, aside: str, parts: Sequence[PagePart]) -> None:
        """Show a page."""
        self._title, self._parts = (title, aside), tuple(parts)
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the page, wrapped."""
        del height
        return list(self._page(min(width, WIDEST)))

    def _page(self, width: int) -> Iterator[Content]:
        title, aside = plain(self._title[0], "bold $count"), plain(self._title[1], "$quiet")
        if fits_between(title, aside, width):
            yield between(title, aside, width)
        else:
            yield from wrapped(title, width)
            yield from wrapped(aside, width)
        for part in self._parts:
            yield Content()
            yield from wrapped(plain(part.heading, "bold $act"), width)
            wide = max((len(line.left) for line in part.lines), default=0)
            for line in part.lines:
                yield from _line(line, wide, width)


def lies_below(lines: int) -> str:
    """Return how much of a page lies below what is shown, for the keys that scroll."""
    if not lines:
        return "this is the end"
    return "1 line more" if lines == 1 else f"{lines} lines more"


def _line(line: Entered, wide: int, width: int) -> Iterator[Content]:
    """Yield one line: the left part right-aligned, the text wrapped beside it, the rest at the end where it fits."""
    gap = 2 if wide else 0
    left, room = plain(line.left.rjust(wide), line.style), width - wide - gap
    right = plain(line.right, "bold $alarm" if line.alarm else "$quiet")
    first, *rest = wrapped(plain(line.text), room) or [Content()]
    if line.right and not rest and first.cell_length + right.cell_length + 2 <= room:
        first = between(first, right, room)
    elif line.right:
        rest = [*rest, *wrapped(right, room)]
    yield left + Content(" " * gap) + first
    yield from (Content(" " * (wide + gap)) + more for more in rest)
