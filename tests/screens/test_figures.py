"""Figures and words drawn big: as wide as they are said to be, at every size there is."""

import pytest

from finishing_tui.widgets.figure_pair import HIGHEST
from finishing_tui.widgets.figures import LEAST, big, width_of


@pytest.mark.parametrize("text", ["PICK", "0123456789", "SKIP 1  PICK", "BIND OFF 3/4", ""])
def test_the_width_is_known_without_drawing(text: str) -> None:
    """What is drawn is as wide as ``width_of`` says, in every row."""
    for lines in range(LEAST, HIGHEST + 1):
        rows = big(text, lines)
        assert len(rows) == lines
        assert {len(row) for row in rows} == {width_of(text, lines)}
