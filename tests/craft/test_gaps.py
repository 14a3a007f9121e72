import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.gaps import extra_loops, grafted_gap, undone


@given(st.lists(st.integers(1, 200), min_size=1, max_size=8), st.integers(1, 4), st.integers(1, 2))
def test_extra_loops_go_again(planned: list[int], each: int, decrease_round: int) -> None:
    """What is picked up beyond the plan is exactly what the later round takes away."""
    found = extra_loops(planned, each=each, decrease_round=decrease_round)
    assert sum(found.picked) - found.extra == sum(planned)
    assert all(picked - part == each for part, picked in zip(planned, found.picked, strict=True))
    assert found.decrease_round == decrease_round
    assert f"round {decrease_round}" in found.text


@given(st.integers(1, 200), st.integers(1, 4))
def test_a_graft_takes_its_extra_loops_in_pairs(held: int, each: int) -> None:
    """Both needles hold the same afterwards, and nothing is left to decrease."""
    found = grafted_gap(held, held, each=each)
    assert found.picked == (held + 2 * each, held + 2 * each)
    assert found.extra == sum(found.picked) - 2 * held
    assert found.decrease_round is None


@pytest.mark.parametrize(("planned", "each", "round_"), [([], 1, 2), ([5, 0], 1, 2), ([5], 0, 2), ([5], 1, 3)])
def test_extra_loops_out_of_range_are_refused(planned: list[int], each: int, round_: int) -> None:
    """No part, an empty part, no extra loop, or a round too late."""
    with pytest.raises(Impossible):
        extra_loops(planned, each=each, decrease_round=round_)


def test_unequal_needles_are_not_grafted() -> None:
    """A graft takes pairs; the counts are put right first."""
    with pytest.raises(Impossible, match="same number"):
        grafted_gap(10, 11)


@given(st.integers(2, 10_000))
def test_an_undone_cast_on_gives_one_fewer(cast_on: int) -> None:
    """The loops of the other side lie between the stitches."""
    assert undone(cast_on) == cast_on - 1
