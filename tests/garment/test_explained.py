"""Published: "23 where 15 should be, neck 37: 16 too many = 8 a side" (anonyknits, 2006; trade.md, section 5)."""

import pytest

from finishing_tui.garment.explained import explained
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import number, place, recipe, step

ARMHOLES = recipe(
    "A back with armholes",
    number("underarm", "stitches bound off at each underarm", by_size=8),
    number("shoulder", "stitches of one shoulder", by_size=15),
    number("neck", "stitches of the back neck", by_size=21),
    place("back", "holder", live="2 * shoulder + neck"),
    step("count", "Count the back", place="back"),
)


def test_two_underarms_that_were_never_bound_off() -> None:
    """16 too many are 8 a side: the bind-offs at the underarms were left out (anonyknits, 2006)."""
    state = Paper(plan_for(ARMHOLES)).state
    assert explained(state, 16) == (
        "A guess: 16 is twice 8 stitches: stitches bound off at each underarm; was that left out?",
    )


@pytest.mark.parametrize("off", [-2, -1, 1, 2])
def test_one_or_two_are_not_guessed_at(off: int) -> None:
    """Too many numbers are as small, and a dropped stitch was looked for before."""
    assert explained(Paper(plan_for(ARMHOLES)).state, off) == ()


def test_what_is_as_large_as_nothing_is_not_guessed_at() -> None:
    """13 is no number of this recipe, nor half of one."""
    assert explained(Paper(plan_for(ARMHOLES)).state, 13) == ()
