import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.buttonholes import bind_off_row
from finishing_tui.craft.errors import Impossible
from tests.craft.row_reader import worked

GROUPS = st.integers(1, 12).flatmap(lambda n: st.lists(st.integers(1, 40), min_size=2 * n + 1, max_size=2 * n + 1))


@given(GROUPS)
def test_the_row_uses_every_stitch_and_keeps_the_kept(groups: list[int]) -> None:
    """Worked from its words, the row takes all the stitches and leaves the kept groups."""
    assert worked(bind_off_row(groups)) == (sum(groups), sum(groups[::2]))


@pytest.mark.parametrize("groups", [[], [5], [5, 2], [5, 2, 5, 2], [5, 0, 5], [0, 2, 5]])
def test_a_row_must_begin_and_end_kept(groups: list[int]) -> None:
    """Kept and bound-off groups by turns, none of them empty."""
    with pytest.raises(Impossible):
        bind_off_row(groups)
