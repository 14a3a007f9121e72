"""A garment in outline: a sweater laid flat, its edges double where they are finished, and what is done there."""

import re
from collections.abc import Sequence

from textual.content import Content

from finishing_tui.widgets.plain import plain
from finishing_tui.widgets.rows import Rows

WORDED = (32, 11)
"""From so many columns and lines on the drawing has its words."""

LARGEST = (76, 36)
"""It is drawn no larger, in columns and lines."""

_PARTS = re.compile(r"(?P<edge>[═║╔╗╚╝╞╡]+)|(?P<word>[a-z]+)|(?P<rest>[^═║╔╗╚╝╞╡a-z]+)")
_STYLES = {"edge": "bold $count", "word": "$act", "rest": "$quiet"}


class Schematic(Rows):
    """The drawing, as large as there is room for, in the middle of it."""

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the drawing with what is beside and above it."""
        if height is None:
            return ()
        wide = min(width - 2, LARGEST[0], 5 * height // 2)
        high = min(height, LARGEST[1], max(9 * wide // 20, 7))
        above = [Content()] * ((height - high) // 2)
        left = Content(" " * ((width - wide) // 2))
        return [*above, *(left + _styled(row) for row in drawn(wide, high))]


def drawn(width: int, height: int) -> list[str]:
    """Return ``height`` rows, each of ``width`` columns: at least 24 and 7."""
    worded = width >= WORDED[0] and height >= WORDED[1]
    high = height - 2 if worded else height
    grid = [[" "] * width for _ in range(high)]
    sleeve, shoulder = width // 5, width // 3
    deep, under, hem, last = max(high // 6, 1), max(2 * high // 5, 2), high - 2, width - 1

    def line(row: int, first: int, signs: str, end: int) -> None:
        """Draw from column ``first`` to ``end``: the first sign, the second between, the third at the end."""
        grid[row][first : end + 1] = [signs[0], *signs[1] * (end - first - 1), signs[2]]

    line(0, 0, "╭─╗", shoulder)
    line(0, last - shoulder, "╔─╮", last)
    for row in range(1, under):
        grid[row][0] = grid[row][last] = "║"
    for row in range(1, deep):
        grid[row][shoulder] = grid[row][last - shoulder] = "║"
    line(deep, shoulder, "╚═╝", last - shoulder)
    line(under, 0, "╰─╮", sleeve)
    line(under, last - sleeve, "╭─╯", last)
    for row in range(under + 1, high):
        grid[row][sleeve] = grid[row][last - sleeve] = "│"
    line(hem, sleeve, "╞═╡", last - sleeve)
    line(high - 1, sleeve, "╰─╯", last - sleeve)
    rows = ["".join(row) for row in grid]
    return _with_words(rows, width, shoulder, deep, under) if worded else rows


def _with_words(rows: list[str], width: int, shoulder: int, deep: int, under: int) -> list[str]:
    """Return the drawing with what is done at its edges."""
    neck, sleeve = width - 2 * shoulder - 2, width // 5
    join = "join".center(shoulder + 1)
    rows[deep - 1] = _put(rows[deep - 1], shoulder + 1, "pick up".center(neck))
    rows[under + 1] = _put(rows[under + 1], sleeve + 2, "seam")
    rows[under + 1] = _put(rows[under + 1], width - sleeve - 6, "seam")
    return [f"{join}{' ' * neck}{join}".ljust(width), *rows, "bind off".center(width)]


def _put(row: str, at: int, word: str) -> str:
    return row[:at] + word + row[at + len(word) :]


def _styled(row: str) -> Content:
    """Return a row with edges and words brighter than the outline."""
    return Content("").join([plain(part[0], _STYLES[part.lastgroup or "rest"]) for part in _PARTS.finditer(row)])
