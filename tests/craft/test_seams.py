import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.seams import stitches_to_rows


@st.composite
def edges(draw: st.DrawFn) -> tuple[int, int]:
    """Return stitches and rows of which neither is more than three times the other."""
    few = draw(st.integers(1, 300))
    more = draw(st.integers(few, 3 * few))
    return draw(st.sampled_from([(few, more), (more, few)]))


@given(edges())
def test_both_edges_end_together(counts: tuple[int, int]) -> None:
    """Each of the fewer takes from 1 to 3 of the others, sizes differing by at most one, and all are taken."""
    found = stitches_to_rows(*counts)
    assert len(found.taken) == min(counts)
    assert sum(found.taken) == max(counts)
    assert max(found.taken) - min(found.taken) <= 1


@given(edges())
def test_the_seam_strays_less_than_a_row(counts: tuple[int, int]) -> None:
    """At every stitch the rows taken are at most 1/3 ahead of the straight line and less than 2/3 behind."""
    found = stitches_to_rows(*counts)
    ratio = Fraction(max(counts), min(counts))
    taken = 0
    for place, take in enumerate(found.taken, 1):
        taken += take
        assert Fraction(-2, 3) < taken - place * ratio <= Fraction(1, 3)


@given(edges())
def test_it_is_the_even_rhythm_turned_round(counts: tuple[int, int]) -> None:
    """In one repeat, stretches of equal length round the repeat differ by at most one row."""
    found = stitches_to_rows(*counts)
    period = min(counts) // math.gcd(*counts)
    twice = found.taken[:period] * 2
    for length in range(1, min(period, 10) + 1):
        sums = {sum(twice[at : at + length]) for at in range(period)}
        assert max(sums) - min(sums) <= 1


@given(edges())
def test_rows_and_stitches_change_places(counts: tuple[int, int]) -> None:
    """Symmetry: the takes do not depend on which edge is the longer."""
    assert stitches_to_rows(*counts).taken == stitches_to_rows(*counts[::-1]).taken


@pytest.mark.parametrize(("stitches", "rows"), [(1, 4), (4, 1), (0, 5), (5, 0), (5, 100_001)])
def test_what_would_pucker_is_refused(stitches: int, rows: int) -> None:
    """More than three to one, nothing at all, or a count nobody sews."""
    with pytest.raises(Impossible):
        stitches_to_rows(stitches, rows)
