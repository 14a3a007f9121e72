import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.shoulders import stepped, steps


@given(st.integers(1, 60), st.integers(0, 400))
def test_steps_add_up_and_the_larger_come_last(count: int, more: int) -> None:
    """Steps differ by at most one, never shrink, add up to the shoulder; turns are one fewer."""
    found = steps(count + more, count)
    assert sum(found.steps) == count + more
    assert list(found.steps) == sorted(found.steps)
    assert found.steps[-1] - found.steps[0] <= 1
    assert found.turns == len(found.steps) - 1 == count - 1


@given(st.integers(1, 40), st.integers(1, 15), st.integers(0, 200))
def test_short_rows_keep_what_bind_offs_would_take(each: int, side: int, middle: int) -> None:
    """Both shoulders and the middle are all the stitches; the last row leaves a whole shoulder unworked."""
    total = 2 * side * each + middle
    found = stepped(total, each, 2 * side)
    assert 2 * found.live + found.middle == total
    assert found.left_unworked == tuple(range(each, side * each + 1, each))
    assert found.left_unworked[-1] == found.live


@pytest.mark.parametrize(("total", "each", "rows"), [(103, 10, 5), (50, 10, 6), (0, 1, 2), (20, 0, 2), (20, 1, 0)])
def test_steps_that_do_not_fit_are_refused(total: int, each: int, rows: int) -> None:
    """Unequal sides, more than there is, or nothing."""
    with pytest.raises(Impossible):
        stepped(total, each, rows)


def test_more_steps_than_stitches_are_refused() -> None:
    """A step holds a stitch at least."""
    with pytest.raises(Impossible, match="3 steps at most"):
        steps(3, 4)
