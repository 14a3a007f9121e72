"""A checklist on a low screen: it begins with a whole item, and the next one is always there."""

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.widgets.faces.items import first_line


@given(st.lists(st.integers(1, 3), min_size=1, max_size=12), st.integers(1, 12), st.data())
def test_a_list_begins_with_a_whole_item(lines: list[int], height: int, data: st.DataObject) -> None:
    """The next item is shown from its first line, whole where it has room; no line is left blank for nothing."""
    at = data.draw(st.integers(0, len(lines) - 1))
    begins = [sum(lines[:item]) for item in range(len(lines))]
    first = first_line(begins, at, sum(lines), height)
    assert first in begins
    assert first <= begins[at] < first + height
    assert lines[at] > height or begins[at] + lines[at] <= first + height
    assert first == 0 or sum(lines) - begins[begins.index(first) - 1] > height
