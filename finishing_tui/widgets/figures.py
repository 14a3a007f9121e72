"""Figures and words drawn big, each in cells of its own: what changes is what stands in a cell, never where it stands.

A pixel is half a line high and one column wide, so it is square; ``▀▄█`` show two of them in one cell. In ASCII
they are ``"`` and ``.`` and ``#``. Signs that have no strokes are left out, never guessed.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import pairwise

from finishing_tui.widgets.drawn import DRAWN, NONE
from finishing_tui.widgets.strokes import GLYPHS, Point

LEAST = 3
"""The fewest lines a sign can have."""

_WIDER = frozenset("MW")
_THIN = frozenset("I.")
_TIGHT = {"E": 2, "F": 2, "L": 2, "C": 1, "S": 1}


@dataclass(frozen=True, slots=True)
class Lettering:
    """How signs are drawn: ``lines`` high, a usual one ``wide`` columns, with a ``pen`` of so many pixels.

    All digits are as wide as each other; M and W are wider than other letters, I and the point as wide as the pen.
    ``tight``: some letters are narrower, so that a long word can have thick strokes.
    """

    lines: int
    wide: int
    pen: int
    tight: bool = False

    @property
    def gap(self) -> int:
        """Columns between two signs."""
        return 1 if self.lines < 10 else 2

    def wide_of(self, sign: str) -> int:
        """Return how many columns a sign takes."""
        if rows := DRAWN.get((self.lines, self.wide), NONE).get(sign):
            return len(rows[0])
        if sign in _THIN:
            return self.pen
        if sign == " ":
            return max(self.wide // 2, 1)
        if self.tight and sign in _TIGHT:
            return self.wide - _TIGHT[sign]
        return self.wide + (max(self.pen, 2) if sign in _WIDER else 0)


@cache
def width_of(text: str, lettering: Lettering) -> int:
    """Return how many columns ``text`` takes when drawn."""
    wide = [lettering.wide_of(sign) for sign in text if sign == " " or sign in GLYPHS]
    return sum(wide) + (len(wide) - 1) * lettering.gap if wide else 0


def drawable(text: str) -> bool:
    """Return whether every sign of ``text`` can be drawn big."""
    return bool(text) and GLYPHS.keys() >= set(text) - {" "}


@lru_cache(maxsize=256)
def big(text: str, lettering: Lettering, *, ascii_only: bool = False) -> tuple[str, ...]:
    """Return ``text`` drawn: as many rows of equal width as the lettering is high, without color."""
    parts = [_glyph(sign, lettering, ascii_only) for sign in text if sign == " " or sign in GLYPHS]
    gap = " " * lettering.gap
    return tuple(map(gap.join, zip(*parts, strict=True))) if parts else ("",) * lettering.lines


@cache
def _glyph(sign: str, lettering: Lettering, ascii_only: bool) -> tuple[str, ...]:  # noqa: FBT001  (only called above)
    if rows := DRAWN.get((lettering.lines, lettering.wide), NONE).get(sign):
        return tuple([row.translate(_IN_ASCII) for row in rows]) if ascii_only else rows
    cell = (_ASCII if ascii_only else _CELLS).__getitem__
    return tuple(["".join(map(cell, row)) for row in _pixels(sign, lettering)])


_CELLS = {(False, False): " ", (True, False): "▀", (False, True): "▄", (True, True): "█"}
_ASCII = {(False, False): " ", (True, False): '"', (False, True): ".", (True, True): "#"}

_IN_ASCII = str.maketrans({_CELLS[lit]: sign for lit, sign in _ASCII.items()})


@cache
def _pixels(sign: str, lettering: Lettering) -> tuple[tuple[tuple[bool, bool], ...], ...]:
    """Return the glyph as rows of cells, each its (upper, lower) pixel."""
    wide, lines, pen = lettering.wide_of(sign), lettering.lines, lettering.pen
    high = 2 * lines - (1 if lines == LEAST else 0)  # an odd height has a middle for a thin pen
    width, strokes = (0.0, ()) if sign == " " else GLYPHS[sign]
    unit, across = (high - pen) / 4, (wide - pen) / width if width else 0.0
    lit = [[False] * wide for _ in range(2 * lines)]
    for stroke in strokes:
        placed = [(round(x * across) + pen / 2, round(y * unit) + pen / 2) for x, y in stroke]
        _draw(lit, placed, pen)
    return tuple(map(tuple, map(zip, lit[::2], lit[1::2])))


def _draw(lit: list[list[bool]], stroke: Sequence[Point], pen: int) -> None:
    """Light every pixel whose middle lies under a square pen that goes along ``stroke``, from point to point.

    Only pixels that the pen can reach are asked: a glyph has many.
    """
    half, high, across = pen / 2, len(lit), len(lit[0])
    for (x1, y1), (x2, y2) in pairwise(stroke):
        rows = range(max(int(min(y1, y2)) - pen, 0), min(int(max(y1, y2)) + pen + 1, high))
        columns = range(max(int(min(x1, x2)) - pen, 0), min(int(max(x1, x2)) + pen + 1, across))
        if x1 == x2 or y1 == y2:
            (top, bottom), (left, right) = sorted((y1, y2)), sorted((x1, x2))
            for y in rows:
                for x in columns:
                    if top - half < y + 0.5 < bottom + half and left - half < x + 0.5 < right + half:
                        lit[y][x] = True
            continue
        wide, tall, reach = x2 - x1, y2 - y1, (half * 1.05) ** 2
        for y in rows:
            for x in columns:
                right_by, down = x + 0.5 - x1, y + 0.5 - y1
                along = min(max((right_by * wide + down * tall) / (wide**2 + tall**2), 0.0), 1.0)
                if (right_by - along * wide) ** 2 + (down - along * tall) ** 2 <= reach:
                    lit[y][x] = True
