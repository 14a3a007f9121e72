"""The even rhythm against what mathematics has published, and against an independent program."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from skimage.draw import line as skimage_line

from finishing_tui.craft.spacing import draw, space


def euclid(picks: int, spots: int) -> str:
    """Return Toussaint's E(picks, spots), by his own account of Bjorklund's algorithm.

    G. T. Toussaint, "The Euclidean algorithm generates traditional musical rhythms", BRIDGES 2005: the sequences
    [x] and [.] are paired off, what is left over is paired with the results, until at most one is left over.
    """
    heads, tails = [["x"]] * picks, [["."]] * (spots - picks)
    while len(tails) > 1:
        pairs = min(len(heads), len(tails))
        joined = [head + tail for head, tail in zip(heads, tails, strict=False)]
        heads, tails = joined, heads[pairs:] or tails[pairs:]
    return "".join("".join(part) for part in heads + tails)


@pytest.mark.parametrize(
    ("picks", "spots", "rhythm"),
    [
        (5, 8, "x.xx.xx."),
        (7, 12, "x.xx.x.xx.x."),
        (9, 16, "x.xx.x.x.xx.x.x."),
        (13, 24, "x.xx.x.x.x.x.xx.x.x.x.x."),
    ],
)
def test_toussaints_rhythms(picks: int, spots: int, rhythm: str) -> None:
    """Printed by Toussaint, 2005: the even rhythm is his, turned round to begin elsewhere, and so is our rendering."""
    assert rhythm in euclid(picks, spots) * 2
    assert rhythm in draw(space(picks, spots, style="even")) * 2


def test_the_even_rhythm_is_toussaints_turned_round() -> None:
    """For every k <= n <= 60, up to where it begins."""
    for spots in range(1, 61):
        for picks in range(1, spots + 1):
            even = draw(space(picks, spots, style="even"))
            assert euclid(picks, spots) in even * 2, (picks, spots)


def bresenham(across: int, up: int) -> list[int]:
    """Return the height at each step, by the algorithm of J. E. Bresenham, IBM Systems Journal 4 (1965), pp. 25-30.

    For ``0 <= up <= across``: the signed quantity starts at ``2 up - across``; below nought the pen moves across and
    ``2 up`` is added, else it moves up as well and ``2 up - 2 across`` is added.
    """
    error, height, heights = 2 * up - across, 0, [0]
    for _ in range(across):
        if error < 0:
            error += 2 * up
        else:
            height += 1
            error += 2 * up - 2 * across
        heights.append(height)
    return heights


@given(st.integers(1, 300), st.data())
def test_the_even_rhythm_is_bresenhams_line(spots: int, data: st.DataObject) -> None:
    """Up to every spot there are as many loops as his line is high: the same line, the same way at a tie."""
    stitches = data.draw(st.integers(1, spots))
    even = space(stitches, spots, style="even")
    assert [even.up_to(spot) for spot in range(spots + 1)] == bresenham(spots, stitches)


@given(st.integers(1, 300), st.data())
def test_the_even_rhythm_is_the_line_that_scikit_image_draws(spots: int, data: st.DataObject) -> None:
    """The same, but at an exact tie between two heights, where that program may take the lower one."""
    stitches = data.draw(st.integers(1, spots))
    even = space(stitches, spots, style="even")
    across, heights = skimage_line(0, 0, spots, stitches)  # type: ignore[no-untyped-call]  # it ships no types
    assert list(across) == list(range(spots + 1))
    for spot, height in enumerate(heights):
        tie = 2 * spot * stitches % (2 * spots) == spots
        assert even.up_to(spot) - int(height) in ({0, 1} if tie else {0}), (stitches, spots, spot)
