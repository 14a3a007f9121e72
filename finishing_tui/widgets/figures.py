"""Figures and words drawn big, from three lines high to as high as the terminal.

A pixel is half a line high and one column wide, so it is square; ``▀▄█`` show two of them in one cell. In ASCII
they are ``"`` and ``.`` and ``#``. Signs that have no strokes are left out, never guessed.
"""

from functools import cache, lru_cache
from itertools import pairwise, repeat

from finishing_tui.widgets.strokes import GLYPHS, SMALL, Point

LEAST = 3
"""The fewest lines a figure can have."""

_SPACE = 1.6  # units


def drawable(text: str) -> bool:
    """Return whether every sign of ``text`` can be drawn big."""
    return bool(text) and GLYPHS.keys() >= set(text) - {" "}


@lru_cache(maxsize=256)
def big(text: str, lines: int, *, ascii_only: bool = False) -> tuple[str, ...]:
    """Return ``text`` drawn ``lines`` high: as many rows of equal width, without colour."""
    parts = [_glyph(sign, lines, ascii_only) for sign in text if sign == " " or sign in GLYPHS]
    gap = " " * _gap(lines)
    return tuple(map(gap.join, zip(*parts, strict=True))) if parts else ("",) * lines


@cache
def width_of(text: str, lines: int) -> int:
    """Return how many columns ``text`` takes when drawn ``lines`` high."""
    wide = [_wide(sign, lines) for sign in text if sign == " " or sign in GLYPHS]
    return sum(wide) + (len(wide) - 1) * _gap(lines) if wide else 0


def fitting(texts: tuple[str, ...], width: int, height: int, *, most: int = 15) -> int:
    """Return the most lines at which all ``texts`` fit one under the other, a line apart; 0 when they do not at all."""
    for lines in range(most, LEAST - 1, -1):
        if len(texts) * (lines + 1) - 1 <= height and max(map(width_of, texts, repeat(lines)), default=0) <= width:
            return lines
    return 0


def _gap(lines: int) -> int:
    return 1 if lines < 8 else 2


@cache
def _pen(lines: int) -> tuple[int, float]:
    """Return how wide the pen is, in pixels, and how many of them a unit of a stroke is."""
    high = 5 if lines == LEAST else 2 * lines
    pen = 1 if high < 8 else max(2, high // 5)
    return pen, (high - pen) / 4


@cache
def _wide(sign: str, lines: int) -> int:
    """Return how many columns a sign takes, without drawing it: sizes are chosen among many."""
    if lines == LEAST and sign in SMALL:
        return len(SMALL[sign][0])
    pen, unit = _pen(lines)
    width, strokes = (_SPACE, ()) if sign == " " else GLYPHS[sign]
    return pen + round(width * unit) if strokes else round(width * unit)


@cache
def _glyph(sign: str, lines: int, ascii_only: bool) -> tuple[str, ...]:  # noqa: FBT001  (only called above)
    cell = (_ASCII if ascii_only else _CELLS).__getitem__
    return tuple(["".join(map(cell, row)) for row in _pixels(sign, lines)])


_CELLS = {(False, False): " ", (True, False): "▀", (False, True): "▄", (True, True): "█"}
_ASCII = {(False, False): " ", (True, False): '"', (False, True): ".", (True, True): "#"}


@cache
def _pixels(sign: str, lines: int) -> tuple[tuple[tuple[bool, bool], ...], ...]:
    """Return the glyph as rows of cells, each its (upper, lower) pixel."""
    if lines == LEAST and sign in SMALL:
        small = [[pixel == "X" for pixel in row] for row in (*SMALL[sign], "." * len(SMALL[sign][0]))]
        return tuple(map(tuple, map(zip, small[::2], small[1::2])))
    pen, unit = _pen(lines)
    width, strokes = (_SPACE, ()) if sign == " " else GLYPHS[sign]
    wide = _wide(sign, lines)
    # Columns are stretched a little so that the last stroke ends on a whole pixel.
    across = (wide - pen) / width if width else 0.0
    lit = [[False] * wide for _ in range(2 * lines)]
    for stroke in strokes:
        placed = [(round(x * across) + pen / 2, round(y * unit) + pen / 2) for x, y in stroke]
        for start, end in pairwise(placed):
            _draw(lit, start, end, pen)
    return tuple(map(tuple, map(zip, lit[::2], lit[1::2])))


def _draw(lit: list[list[bool]], start: Point, end: Point, pen: int) -> None:
    """Light every pixel whose middle lies under a square pen that goes from ``start`` to ``end``.

    Only pixels that the pen can reach are asked: a glyph has many, and most sizes are only tried.
    """
    (x1, y1), (x2, y2) = start, end
    half = pen / 2
    rows = range(max(int(min(y1, y2)) - pen, 0), min(int(max(y1, y2)) + pen + 1, len(lit)))
    columns = range(max(int(min(x1, x2)) - pen, 0), min(int(max(x1, x2)) + pen + 1, len(lit[0])))
    if x1 == x2 or y1 == y2:
        (top, bottom), (left, right) = sorted((y1, y2)), sorted((x1, x2))
        for y in rows:
            for x in columns:
                if top - half < y + 0.5 < bottom + half and left - half < x + 0.5 < right + half:
                    lit[y][x] = True
        return
    wide, high, reach = x2 - x1, y2 - y1, (half * 1.05) ** 2
    for y in rows:
        for x in columns:
            right, down = x + 0.5 - x1, y + 0.5 - y1
            along = min(max((right * wide + down * high) / (wide**2 + high**2), 0.0), 1.0)
            if (right - along * wide) ** 2 + (down - along * high) ** 2 <= reach:
                lit[y][x] = True
