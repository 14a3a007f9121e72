"""Figures and words drawn big, from three lines high to as high as the terminal.

A pixel is half a line high and one column wide, so it is square; ``▀▄█`` show two of them in one cell. In ASCII
they are ``"`` and ``.`` and ``#``. Signs that have no strokes are left out, never guessed.
"""

from functools import cache, lru_cache
from itertools import pairwise

from finishing_tui.widgets.strokes import GLYPHS, SMALL, Point, Stroke

LEAST = 3
"""The fewest lines a figure can have."""

_SPACE = 1.6  # units


def drawable(text: str) -> bool:
    """Return whether every sign of ``text`` can be drawn big."""
    return bool(text) and all(sign == " " or sign in GLYPHS for sign in text)


@lru_cache(maxsize=256)
def big(text: str, lines: int, *, ascii_only: bool = False) -> tuple[str, ...]:
    """Return ``text`` drawn ``lines`` high: as many rows of equal width, without colour."""
    parts = [_glyph(sign, lines, ascii_only) for sign in text if sign == " " or sign in GLYPHS]
    gap = " " * _gap(lines)
    return tuple(gap.join(part[row] for part in parts) for row in range(lines))


@cache
def width_of(text: str, lines: int) -> int:
    """Return how many columns ``text`` takes when drawn ``lines`` high."""
    wide = [_wide(sign, lines) for sign in text if sign == " " or sign in GLYPHS]
    return sum(wide) + (len(wide) - 1) * _gap(lines) if wide else 0


def fitting(texts: tuple[str, ...], width: int, height: int, *, most: int = 15) -> int:
    """Return the most lines at which all ``texts`` fit one under the other, a line apart; 0 when they do not at all."""
    for lines in range(most, LEAST - 1, -1):
        if len(texts) * (lines + 1) - 1 <= height and all(width_of(text, lines) <= width for text in texts):
            return lines
    return 0


def _gap(lines: int) -> int:
    return 1 if lines < 8 else 2


def _pen(lines: int) -> tuple[int, float]:
    """Return how wide the pen is, in pixels, and how many of them a unit of a stroke is."""
    high = 5 if lines == LEAST else 2 * lines
    pen = 1 if high < 8 else max(2, high // 5)
    return pen, (high - pen) / 4


def _wide(sign: str, lines: int) -> int:
    """Return how many columns a sign takes, without drawing it: sizes are chosen among many."""
    if lines == LEAST and sign in SMALL:
        return len(SMALL[sign][0])
    pen, unit = _pen(lines)
    width, strokes = (_SPACE, ()) if sign == " " else GLYPHS[sign]
    return pen + round(width * unit) if strokes else round(width * unit)


def _glyph(sign: str, lines: int, ascii_only: bool) -> tuple[str, ...]:  # noqa: FBT001  (only called above)
    pixels = _pixels(sign, lines)
    cells = _ASCII if ascii_only else _CELLS
    return tuple("".join(cells[pair] for pair in row) for row in pixels)


_CELLS = {(False, False): " ", (True, False): "▀", (False, True): "▄", (True, True): "█"}
_ASCII = {(False, False): " ", (True, False): '"', (False, True): ".", (True, True): "#"}


@cache
def _pixels(sign: str, lines: int) -> tuple[tuple[tuple[bool, bool], ...], ...]:
    """Return the glyph as rows of cells, each its (upper, lower) pixel."""
    if lines == LEAST and sign in SMALL:
        small = [[pixel == "X" for pixel in row] for row in (*SMALL[sign], "." * len(SMALL[sign][0]))]
        return tuple(tuple(zip(small[row], small[row + 1], strict=True)) for row in range(0, 2 * LEAST, 2))
    pen, unit = _pen(lines)
    width, strokes = (_SPACE, ()) if sign == " " else GLYPHS[sign]
    wide = _wide(sign, lines)
    # Columns are stretched a little so that the last stroke ends on a whole pixel.
    across = (wide - pen) / width if width else 0.0
    lit = [[False] * wide for _ in range(2 * lines)]
    for stroke in strokes:
        placed = tuple((round(x * across) + pen / 2, round(y * unit) + pen / 2) for x, y in stroke)
        _draw(lit, placed, pen)
    return tuple(tuple(zip(lit[2 * row], lit[2 * row + 1], strict=True)) for row in range(lines))


def _draw(lit: list[list[bool]], stroke: Stroke, pen: int) -> None:
    for start, end in pairwise(stroke):
        (x1, y1), (x2, y2) = start, end
        # Only pixels that the pen can reach are asked: a glyph has many, and most sizes are only tried.
        for y in range(max(int(min(y1, y2)) - pen, 0), min(int(max(y1, y2)) + pen + 1, len(lit))):
            row = lit[y]
            for x in range(max(int(min(x1, x2)) - pen, 0), min(int(max(x1, x2)) + pen + 1, len(row))):
                if not row[x] and _inked((x + 0.5, y + 0.5), start, end, pen):
                    row[x] = True


def _inked(pixel: Point, start: Point, end: Point, pen: int) -> bool:
    """Return whether the middle of a pixel lies under a square pen that goes from ``start`` to ``end``."""
    (x, y), (x1, y1), (x2, y2) = pixel, start, end
    half = pen / 2
    if x1 == x2 or y1 == y2:
        return min(x1, x2) - half < x < max(x1, x2) + half and min(y1, y2) - half < y < max(y1, y2) + half
    along = ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / ((x2 - x1) ** 2 + (y2 - y1) ** 2)
    along = min(max(along, 0.0), 1.0)
    near_x, near_y = x1 + along * (x2 - x1), y1 + along * (y2 - y1)
    reach = half * 1.05
    return (x - near_x) ** 2 + (y - near_y) ** 2 <= reach**2
