from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.head import CAUTION, opening, over_the_head, wide_and_deep_enough
from finishing_tui.craft.lengths import Length, length

CM = st.fractions(1, 120, max_denominator=10).map(lambda cm: length(cm, "cm"))
STRETCH = st.fractions(1, 4, max_denominator=20)


@given(CM, CM, STRETCH)
def test_it_goes_over_exactly_when_long_enough_stretched(relaxed: Length, head: Length, stretch: Fraction) -> None:
    """The opening passes when it is as long, stretched, as the head is round; a child's caution is always said."""
    found = over_the_head(relaxed, head, stretch)
    assert found.goes == (relaxed.cm * stretch >= head.cm)
    assert ("it won't go over" in found.text) == (not found.goes)
    assert ("it should go over" in found.text and "Try it on." in found.text) == found.goes
    assert CAUTION in found.text


@given(st.integers(1, 400), st.fractions(5, 60, max_denominator=4))
def test_more_stitches_never_make_a_tighter_neck(stitches: int, per_10_cm: Fraction) -> None:
    """Monotony, and exactness: the opening is stitches divided by the gauge."""
    assert opening(stitches, per_10_cm).cm * per_10_cm == stitches * 10
    assert opening(stitches + 1, per_10_cm) > opening(stitches, per_10_cm)


@given(CM, CM)
def test_width_and_depth_change_places(width: Length, depth: Length) -> None:
    """Only their sum matters."""
    assert wide_and_deep_enough(width, depth) == wide_and_deep_enough(depth, width)
    assert wide_and_deep_enough(width, depth) == (width.cm + depth.cm >= Fraction("25.5"))


def test_what_is_unknown_is_refused() -> None:
    """A gauge of nothing, a stretch that shrinks."""
    with pytest.raises(Impossible, match="gauge"):
        opening(100, Fraction(0))
    with pytest.raises(Impossible, match="stretch"):
        over_the_head(length(40, "cm"), length(50, "cm"), Fraction(1, 2))
