"""Figures and words drawn big: in cells by the size of the terminal, each as wide as it is said to be."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.glance.stored_words import ACTS
from finishing_tui.widgets.figures import big, width_of
from finishing_tui.widgets.grid import Cells, cells_for, letters_for, word_at
from finishing_tui.widgets.strokes import GLYPHS
from tests.screens.scenes import SIZES
from tests.screens.test_grid import OFFSETS

DIGITS = "0123456789"

WORDS = {*ACTS.values(), "CHANGE", "FINISHED", "SKIPPED", "RIP BACK", "GO ON", "PICK 12", "LIFT"}
"""What the hands do, and what else may stand there."""

CELLS = {name: cells_for(*size) for name, size in SIZES.items()}


@given(st.sampled_from(sorted(CELLS)), st.text(sorted(GLYPHS), max_size=9))
def test_the_width_is_known_without_drawing(name: str, text: str) -> None:
    """What is drawn is as wide as its lettering says, in every row."""
    cells = CELLS[name]
    for lettering in (cells.count, cells.of, *cells.words):
        rows = big(text, lettering)
        assert len(rows) == lettering.lines
        assert {len(row) for row in rows} == {width_of(text, lettering)}


@pytest.mark.parametrize("cells", CELLS.values(), ids=CELLS)
def test_all_digits_are_of_one_width_and_no_two_look_alike(cells: Cells) -> None:
    """A 1 is as wide as a 7; and no two signs look alike in any lettering, but nought and O, as in print."""
    for lettering in (cells.count, cells.of, *cells.words):
        assert len({lettering.wide_of(digit) for digit in "0123456789"}) == 1
        for ascii_only in (False, True):
            drawn = {big(sign, lettering, ascii_only=ascii_only) for sign in GLYPHS if sign != "O"}
            assert len(drawn) == len(GLYPHS) - 1


@pytest.mark.parametrize("cells", CELLS.values(), ids=CELLS)
def test_no_two_digits_of_a_target_differ_by_one_pixel(cells: Cells) -> None:
    """From two meters a 6 is no 8: wherever two digits differ, they do so by two half lines at the least."""
    halves = {" ": (0, 0), "▀": (1, 0), "▄": (0, 1), "█": (1, 1)}
    lit = {digit: [half for row in big(digit, cells.of) for sign in row for half in halves[sign]] for digit in DIGITS}
    for one, other in combinations(DIGITS, 2):
        assert sum(here != there for here, there in zip(lit[one], lit[other], strict=True)) > 1, (one, other)


@pytest.mark.parametrize("name", SIZES)
def test_every_word_fits_its_cell(name: str) -> None:
    """Each act, at its one height: digits of six rows and words of five from 80x24 up, of four and three below.

    Its strokes are two columns thick; of all words the longest alone may have thin ones, where it is narrow.
    """
    width, cells = SIZES[name][0] - 2 * OFFSETS[name][0], CELLS[name]
    assert (cells.count.lines, cells.high) >= ((6, 5) if cells.beside else (4, 3))
    room = width - word_at(cells, 3)
    thin = set[str]()
    for word in WORDS:
        lettering = letters_for(word, cells, room)
        assert lettering.lines == cells.high
        assert width_of(word, lettering) <= room, (word, lettering)
        if lettering.pen == 1:
            thin.add(word)
    assert thin <= {"DECREASE", *(["RIP BACK"] if name == "40x20" else [])}
