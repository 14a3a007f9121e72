"""The cells that count, target and word are drawn in: by the size of the terminal alone, so that nothing moves."""

from dataclasses import dataclass
from functools import cache

from finishing_tui.widgets.figures import LEAST, Lettering, width_of

GAP = 3
"""Columns between the count and its target."""


@dataclass(frozen=True, slots=True)
class Cells:
    """How large everything at the needles is in a terminal of one size.

    ``count``, ``of``: the digits of the count and of its target; ``words``: the letters of the word, all of one height,
    those for short words first. ``beside``: the word stands beside the count, on its baseline; else below it.
    ``below``: rows below the baseline, for what is said in small.
    """

    count: Lettering
    of: Lettering
    words: tuple[Lettering, ...]
    beside: bool = True
    below: int = 1

    @property
    def high(self) -> int:
        """The lines of the word."""
        return self.words[0].lines


@cache
def count_wide(cells: Cells, digits: int) -> int:
    """Return the columns of the cell of a count of so many digits."""
    return width_of("0" * digits, cells.count)


@cache
def of_at(cells: Cells, digits: int) -> int:
    """Return the column that the target begins at."""
    return count_wide(cells, digits) + GAP


@cache
def apart(cells: Cells) -> int:
    """Return the columns between the target and the word."""
    return 1 if cells.count.lines < 8 else 2


@cache
def word_at(cells: Cells, digits: int) -> int:
    """Return the column that the word begins at, for counts and targets of so many digits."""
    return of_at(cells, digits) + width_of("0" * digits, cells.of) + apart(cells) if cells.beside else 0


def letters_for(word: str, cells: Cells, width: int) -> Lettering:
    """Return the letters for a word in a cell of ``width`` columns: the widest that fit, of the one height."""
    return next((one for one in cells.words if width_of(word, one) <= width), cells.words[-1])


_THICK = Lettering(LEAST, 5, 2)

_BELOW = Cells(Lettering(4, 5, 2), _THICK, (_THICK, Lettering(LEAST, 3, 1)), beside=False, below=0)

_BESIDE = (
    (
        76,
        0,
        Cells(
            Lettering(6, 6, 2),
            Lettering(5, 4, 1),
            (Lettering(5, 6, 2), Lettering(5, 5, 2), Lettering(5, 4, 1)),
        ),
    ),
    (
        96,
        28,
        Cells(Lettering(8, 8, 2), Lettering(5, 5, 2), (Lettering(7, 8, 2), Lettering(7, 6, 2, tight=True))),
    ),
    (
        140,
        48,
        Cells(
            Lettering(16, 14, 4),
            Lettering(8, 7, 2),
            (Lettering(14, 12, 4), Lettering(14, 9, 3, tight=True), Lettering(14, 8, 3, tight=True)),
            below=2,
        ),
    ),
)
"""From so many columns and lines on; the last that fits."""


@cache
def cells_for(width: int, height: int) -> Cells:
    """Return the cells for a terminal of so many columns and lines."""
    fit = [cells for columns, lines, cells in _BESIDE if width >= columns and height >= lines]
    return fit[-1] if fit else _BELOW
