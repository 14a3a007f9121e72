from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.rhythm import draw
from finishing_tui.craft.spacing import space
from finishing_tui.craft.walked import rhythm_of


@given(st.lists(st.sampled_from((0, 1, 2)), min_size=1, max_size=60))
def test_a_rhythm_makes_just_the_loops_that_were_made(loops: list[int]) -> None:
    """Whatever was picked, spot by spot, the rhythm read off it picks the same, and mirrored it is the reverse."""
    rhythm = rhythm_of(loops)
    assert [rhythm.at(spot) for spot in range(1, len(loops) + 1)] == loops
    assert draw(rhythm.mirrored()) == draw(rhythm)[::-1]


def test_a_regular_edge_is_read_as_one_run() -> None:
    """What was picked as 3 of every 4 is said as 3 of every 4, and not loop by loop."""
    planned = space(24, 32)
    assert rhythm_of([planned.at(spot) for spot in range(1, 33)]) == planned
