"""What a number counts: a section, or the whole needle that it is on."""

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.glance.counting import FEW, Countable


@given(st.integers(0, 60), st.integers(1, 90), st.integers(-90, 90))
def test_the_whole_needle_stands_for_its_section(expected: int, before: int, off: int) -> None:
    """The needle's own number is right; one near it is as far off in the section; all else is the section's."""
    needle = expected + before
    what = Countable("", "the right front neck", expected, "", section=True, needle=needle)
    counted = max(needle + off, 0)
    meant = what.meant(counted)
    assert what.meant(needle) == expected
    assert what.meant(expected) == expected
    assert meant >= 0
    if counted not in {needle, expected}:
        near = abs(off) <= FEW and abs(off) < abs(counted - expected) and expected + off >= 0
        if near and counted >= before:
            assert meant == expected + off
        if abs(counted - needle) > FEW:
            assert meant == counted
