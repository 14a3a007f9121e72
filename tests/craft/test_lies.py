"""At which end a shoulder join starts."""

from itertools import product

import pytest

from finishing_tui.craft.lies import End, Fabric, Piece, Side, start_of_join

SIXTEEN: tuple[tuple[Side, Piece, Fabric, Side, End], ...] = (
    # shoulder, near piece, sides that touch, hand, end
    ("left", "back", "right", "right", "armhole"),
    ("left", "front", "right", "right", "neck"),
    ("right", "back", "right", "right", "neck"),
    ("right", "front", "right", "right", "armhole"),
    ("left", "back", "wrong", "right", "neck"),
    ("left", "front", "wrong", "right", "armhole"),
    ("right", "back", "wrong", "right", "armhole"),
    ("right", "front", "wrong", "right", "neck"),
    ("left", "back", "right", "left", "neck"),
    ("left", "front", "right", "left", "armhole"),
    ("right", "back", "right", "left", "armhole"),
    ("right", "front", "right", "left", "neck"),
    ("left", "back", "wrong", "left", "armhole"),
    ("left", "front", "wrong", "left", "neck"),
    ("right", "back", "wrong", "left", "neck"),
    ("right", "front", "wrong", "left", "armhole"),
)
"""All ways a shoulder join can lie, written out one by one."""


@pytest.mark.parametrize(("shoulder", "near", "together", "hand", "end"), SIXTEEN)
def test_each_of_the_sixteen_ways(shoulder: Side, near: Piece, together: Fabric, hand: Side, end: End) -> None:
    """Each way starts at the end that the table says."""
    assert start_of_join(shoulder, near, together, hand) == end


def test_the_table_has_every_way_once() -> None:
    """The sixteen rows are sixteen different ways."""
    assert len({row[:4] for row in SIXTEEN}) == len(SIXTEEN) == 16


SIDES: tuple[Side, Side] = ("left", "right")
PIECES: tuple[Piece, Piece] = ("front", "back")
FABRICS: tuple[Fabric, Fabric] = ("right", "wrong")


def test_laid_on_a_table_it_comes_to_the_same() -> None:
    """A model of where things are, with no parity in it, agrees: the end that lies at the hand that starts.

    Seen from behind the wearer, her left is at the left. The back is seen so from outside (its right side), and the
    other way round from inside; of the front it is the reverse. The armhole is the end away from the middle.
    """
    for shoulder, near, together, hand in product(SIDES, PIECES, FABRICS, SIDES):
        seen = "wrong" if together == "right" else "right"  # the side of the near piece towards the knitter
        from_behind = (near == "back") == (seen == "right")
        other = "right" if shoulder == "left" else "left"
        outer = shoulder if from_behind else other  # where the armhole of that shoulder is seen
        assert start_of_join(shoulder, near, together, hand) == ("armhole" if hand == outer else "neck")
