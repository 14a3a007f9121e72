"""The garment in outline, whatever room there is for it."""

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.letters import in_ascii
from finishing_tui.widgets.schematic import WORDED, drawn

WIDTHS, HEIGHTS = st.integers(24, 120), st.integers(7, 60)
_MIRRORED = str.maketrans("╭╮╰╯╔╗╚╝╞╡", "╮╭╯╰╗╔╝╚╡╞")


@given(WIDTHS, HEIGHTS)
def test_the_drawing_fills_its_room_and_is_its_own_mirror(width: int, height: int) -> None:
    """As many rows of as many columns as asked for; but for its words, left and right are alike."""
    rows = drawn(width, height)
    assert [len(row) for row in rows] == [width] * height
    bare = ["".join(" " if sign.isalpha() else sign for sign in row) for row in rows]
    assert bare == [row[::-1].translate(_MIRRORED) for row in bare]


@given(WIDTHS, HEIGHTS)
def test_every_edge_is_closed_and_every_word_whole(width: int, height: int) -> None:
    """Two shoulders, one neck and one hem; the words are there together or not at all; none of it is a chart's sign."""
    text = "\n".join(drawn(width, height))
    assert [text.count(sign) for sign in "╔╗╚╝╞╡╭╮╰╯"] == [1, 1, 1, 1, 1, 1, 2, 2, 2, 2]
    worded = width >= WORDED[0] and height >= WORDED[1]
    words = ("join", 2), ("pick up", 1), ("seam", 2), ("bind off", 1)
    assert [text.count(word) for word, _ in words] == [many if worded else 0 for _, many in words]
    assert set(text) <= set("╔═╗║╚╝╞╡╭─╮│╰╯ \n") | set("".join(word for word, _ in words))


@given(WIDTHS, HEIGHTS)
def test_in_ascii_edges_and_outline_stay_apart(width: int, height: int) -> None:
    """Sign for sign, and none is lost."""
    for row in drawn(width, height):
        assert len(in_ascii(row)) == len(row)
        assert "?" not in in_ascii(row)
