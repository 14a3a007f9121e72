"""Figures and words drawn big: in cells by the size of the terminal, each as wide as it is said to be."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.glance.stored_words import ACTS
from finishing_tui.widgets.figures import big, width_of
from finishing_tui.widgets.grid import Cells, cells_for, letters_for, word_at
from finishing_tui.widgets.strokes import GLYPHS
from tests.screens.scenes import SIZES

CELLS = {name: cells_for(*size) for name, size in SIZES.items()}


@given(st.sampled_from(sorted(CELLS)), st.text(sorted(GLYPHS), max_size=9))
def test_the_width_is_known_without_drawing(name: str, text: str) -> None:
    """What is drawn is as wide as its lettering says, in every row."""
    cells = CELLS[name]
    for lettering in (cells.count, cells.of, cells.word, cells.narrow):
        rows = big(text, lettering)
        assert len(rows) == lettering.lines
        assert {len(row) for row in rows} == {width_of(text, lettering)}


@pytest.mark.parametrize("cells", CELLS.values(), ids=CELLS)
def test_all_digits_are_of_one_width_and_no_two_look_alike(cells: Cells) -> None:
    """A 1 is as wide as a 7; and no two signs look alike in any lettering, but nought and O, as in print."""
    for lettering in (cells.count, cells.of, cells.word, cells.narrow):
        assert len({lettering.wide_of(digit) for digit in "0123456789"}) == 1
        for ascii_only in (False, True):
            drawn = {big(sign, lettering, ascii_only=ascii_only) for sign in GLYPHS if sign != "O"}
            assert len(drawn) == len(GLYPHS) - 1


@pytest.mark.parametrize("name", SIZES)
def test_every_word_fits_its_cell(name: str) -> None:
    """Each act, at its one height: digits of six rows and words of five from 80x24 up, of four and three below."""
    width, cells = SIZES[name][0] - 4, CELLS[name]
    assert (cells.count.lines, cells.word.lines) >= ((6, 5) if cells.beside else (4, 3))
    room = width - word_at(cells, 3)
    for word in ACTS.values():
        lettering = letters_for(word, cells, room)
        assert lettering.lines == cells.word.lines
        assert width_of(word, lettering) <= room, (word, lettering)
