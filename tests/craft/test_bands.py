import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.ribs import added
from finishing_tui.craft.totals import Repeat

PARTS = st.lists(st.integers(0, 200), min_size=1, max_size=12).filter(any)


@given(PARTS, st.integers(1, 12), st.integers(-3, 3))
def test_a_wrong_print_is_told_with_its_difference(parts: list[int], of: int, off: int) -> None:
    """The total is the parts' own, the difference to the print is said exactly when there is one."""
    found = added(parts, Repeat(of, 0), printed=sum(parts) + off)
    assert found.total == sum(parts)
    assert found.fits == (sum(parts) % of == 0)
    assert ("prints" in found.text) == (off != 0)
    assert (f"{abs(off)} too" in found.text) == (off != 0)


@pytest.mark.parametrize("parts", [[], [0], [-1, 5]])
def test_nothing_is_not_added_up(parts: list[int]) -> None:
    """No parts, no stitches, or fewer than none."""
    with pytest.raises(Impossible):
        added(parts)
