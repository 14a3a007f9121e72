from fractions import Fraction
from itertools import accumulate

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.pace import FEWEST, RECENT, pace_between, pace_of, said

STEADY = st.lists(st.integers(1_000, 2_000), min_size=FEWEST, max_size=RECENT)


@given(STEADY)
def test_without_pauses_it_is_the_average(stretches: list[int]) -> None:
    """Presses that vary by less than a pause give their own average, and the time left is that many of it."""
    found = pace_between(list(accumulate(stretches, initial=0)))
    assert found is not None
    assert found.ms_per_unit == Fraction(sum(stretches), len(stretches))
    assert found.time_left(len(stretches)) == sum(stretches)


@given(STEADY, st.data())
def test_pauses_are_left_out(stretches: list[int], data: st.DataObject) -> None:
    """Any number of long stretches, fewer than half, changes nothing at all."""
    pauses = data.draw(st.lists(st.integers(10_000, 10**9), max_size=(len(stretches) - 1) // 2))
    mixed = data.draw(st.permutations(stretches + pauses))
    if len(mixed) <= RECENT:
        assert pace_of([(ms, 1) for ms in mixed]) == pace_of([(ms, 1) for ms in stretches])


@given(st.lists(st.tuples(st.integers(-(10**9), 10**12), st.integers(-2, 50)), max_size=60))
def test_whatever_the_clock_does_it_answers(stretches: list[tuple[int, int]]) -> None:
    """A clock set back, no units, years between presses: a pace above nothing, or silence."""
    found = pace_of(stretches)
    assert found is None or (found.ms_per_unit > 0 and found.stretches >= FEWEST)


@given(st.lists(st.integers(1, 10**6), max_size=FEWEST - 1))
def test_silence_where_it_cannot_know(stretches: list[int]) -> None:
    """Too few stretches: nothing is said."""
    assert pace_of([(ms, 1) for ms in stretches]) is None


@given(STEADY, st.integers(2, 9))
def test_many_units_in_one_stretch_count_as_many(stretches: list[int], units: int) -> None:
    """A run of units taken with one press is no slower a pace than the same units one by one."""
    one = pace_of([(ms, 1) for ms in stretches])
    many = pace_of([(ms * units, units) for ms in stretches])
    assert one is not None
    assert many is not None
    assert one.ms_per_unit == many.ms_per_unit


def test_only_the_latest_stretches_count() -> None:
    """How it went an hour ago does not say how it goes."""
    found = pace_of([(9_000, 1)] * 100 + [(3_000, 1)] * RECENT)
    assert found is not None
    assert found.ms_per_unit == 3_000


@pytest.mark.parametrize(
    ("ms", "words"),
    [
        (0, "less than a minute"),
        (-5, "less than a minute"),
        (125_000, "about 2 min"),
        (725_000, "about 10 min"),
        (3_590_000, "about 1 hour"),
        (9_000_000, "about 2 hours 30 min"),
    ],
)
def test_time_left_is_said_no_finer_than_it_is_known(ms: int, words: str) -> None:
    """Minutes below ten, then fives, then hours."""
    assert said(ms) == words


@given(st.integers(0, 10**9), st.integers(0, 10**7))
def test_no_number_of_units_shortens_the_time(ms: int, more: int) -> None:
    """Monotony of the time left."""
    found = pace_of([(ms + 1, 1)] * FEWEST)
    if found:
        assert found.time_left(more) <= found.time_left(more + 1)
    assert (found is None) == (ms + 1 > 1_800_000)
