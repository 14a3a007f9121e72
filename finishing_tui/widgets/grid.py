"""The cells that count, target and word are drawn in: by the size of the terminal alone, so that nothing moves."""

from dataclasses import dataclass
from functools import cache

from finishing_tui.widgets.figures import LEAST, Lettering, width_of

SHORT = 5
"""A word of more letters is drawn in narrow ones, never in smaller ones."""


@dataclass(frozen=True, slots=True)
class Cells:
    """How large everything at the needles is in a terminal of one size.

    ``count``, ``of``: the digits of the count and of its target; ``word`` and ``narrow``: the letters of the word, up
    to ``SHORT`` of them and more. ``beside``: the word stands beside the count, on its baseline; else below it.
    ``below``: rows below the baseline, for what is said in small.
    """

    count: Lettering
    of: Lettering
    word: Lettering
    narrow: Lettering
    beside: bool = True
    below: int = 1


@cache
def count_wide(cells: Cells, digits: int) -> int:
    """Return the columns of the cell of a count of so many digits."""
    return width_of("0" * digits, cells.count)


@cache
def apart(cells: Cells) -> int:
    """Return the columns between the target and the word."""
    return 2 if cells.count.lines < 8 else 4


@cache
def word_at(cells: Cells, digits: int, joiner: str = "of") -> int:
    """Return the column that the word begins at, for counts and targets of so many digits."""
    if not cells.beside:
        return 0
    return count_wide(cells, digits) + len(joiner) + 2 + width_of("0" * digits, cells.of) + apart(cells)


def letters_for(word: str, cells: Cells, width: int) -> Lettering:
    """Return the letters for a word in a cell of ``width`` columns."""
    usual = len(word) <= SHORT and width_of(word, cells.word) <= width
    return cells.word if usual else cells.narrow


_SMALL = Lettering(LEAST, 3, 1)

_BELOW = Cells(Lettering(4, 5, 2), _SMALL, _SMALL, _SMALL, beside=False, below=0)

_BESIDE = (
    (76, 0, Cells(Lettering(6, 6, 2), _SMALL, Lettering(5, 6, 2), Lettering(5, 4, 1))),
    (96, 28, Cells(Lettering(8, 8, 2), _SMALL, Lettering(7, 8, 2), Lettering(7, 5, 1))),
    (140, 38, Cells(Lettering(12, 12, 3), Lettering(5, 5, 1), Lettering(10, 10, 3), Lettering(10, 7, 2), below=2)),
)
"""From so many columns and lines on; the last that fits."""


@cache
def cells_for(width: int, height: int) -> Cells:
    """Return the cells for a terminal of so many columns and lines."""
    fit = [cells for columns, lines, cells in _BESIDE if width >= columns and height >= lines]
    return fit[-1] if fit else _BELOW
