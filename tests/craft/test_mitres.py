import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.mitres import inside, outside, vee


@given(st.integers(1, 400), st.integers(1, 40), st.integers(1, 6), st.integers(1, 4), st.integers(1, 10))
def test_inside_and_outside_are_each_other_backwards(
    start: int, rounds: int, corners: int, every: int, first: int
) -> None:
    """Every shaped round changes the count by two a corner, others by none; what one takes the other gives."""
    first = min(first, rounds)
    spread = outside(start, rounds, corners=corners, every=every, first=first)
    count = start
    for number, each in enumerate(spread, 1):
        shaped = number >= first and (number - first) % every == 0
        count += 2 * corners if shaped else 0
        assert (each.number, each.shaped, each.count) == (number, shaped, count)
    assume(start >= corners)
    drawn = inside(count, rounds, corners=corners, every=every, first=first)
    assert drawn[-1].count == start
    assert [each.shaped for each in drawn] == [each.shaped for each in spread]


@given(st.integers(1, 200), st.integers(1, 6), st.integers(1, 150))
def test_inside_is_refused_exactly_when_stitches_run_out(start: int, corners: int, rounds: int) -> None:
    """Each corner keeps its centre stitch; beyond that the band is refused."""
    left = start - 2 * corners * rounds
    if left >= corners:
        assert inside(start, rounds, corners=corners)[-1].count == left
    else:
        with pytest.raises(Impossible):
            inside(start, rounds, corners=corners)


@given(st.integers(1, 100), st.integers(1, 100), st.integers(1, 40), st.integers(1, 3))
def test_both_sides_of_a_vee_lose_alike(left: int, right: int, rounds: int, every: int) -> None:
    """After every round the sides and the centre stitch are the count; the sides stay equally far apart."""
    shaped = len(range(1, rounds + 1, every))
    if (left - right) % 2 or shaped > min(left, right):
        with pytest.raises(Impossible):
            vee(left, right, rounds, every=every)
        return
    found = vee(left, right, rounds, every=every)
    for each, (one, other) in zip(found.rounds, found.sides, strict=True):
        assert one + other + 1 == each.count
        assert one - other == left - right
    assert found.rounds[-1].count == left + right + 1 - 2 * shaped
    assert str(found.rounds[-1].count) in found.text


@pytest.mark.parametrize(("rounds", "every", "first"), [(0, 1, 1), (5, 0, 1), (5, 1, 6), (1_001, 1, 1)])
def test_rounds_out_of_range_are_refused(rounds: int, every: int, first: int) -> None:
    """No round, no rhythm, a first shaping after the last round, or more rounds than any band has."""
    with pytest.raises(Impossible):
        outside(40, rounds, every=every, first=first)
