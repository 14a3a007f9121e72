from itertools import combinations, pairwise

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.even_parts import across, around, spread


def marks(gaps: tuple[int, ...]) -> list[int]:
    """Return the running sums of the gaps."""
    return [sum(gaps[:end]) for end in range(1, len(gaps))]


@given(st.integers(0, 5_000), st.integers(1, 300))
def test_spread_adds_up_within_half_of_the_line(total: int, parts: int) -> None:
    """Every boundary is within 1/2 of the straight line, the gaps differ by at most one and add up."""
    gaps = spread(total, parts)
    assert sum(gaps) == total
    assert len(gaps) == parts
    assert max(gaps) - min(gaps) <= 1
    assert all(abs(2 * (mark * parts - i * total)) <= parts for i, mark in enumerate(marks(gaps), 1))


@given(st.integers(0, 5_000), st.integers(1, 300))
def test_spread_reads_the_same_from_both_ends(total: int, parts: int) -> None:
    """It is its own mirror whenever one exists: an even number of gaps cannot share an odd total alike."""
    gaps = spread(total, parts)
    if parts % 2 or total % 2 == 0:
        assert gaps == gaps[::-1]


def test_no_arrangement_strays_less() -> None:
    """Against every arrangement of up to 9 stitches in up to 6 gaps: none has a smaller worst distance."""
    for total in range(10):
        for parts in range(2, 7):
            best = min(
                max(abs(mark * parts - i * total) for i, mark in enumerate(cut, 1))
                for cut in (
                    tuple(place - at for at, place in enumerate(places))
                    for places in combinations(range(total + parts - 1), parts - 1)
                )
            )
            found = max(abs(mark * parts - i * total) for i, mark in enumerate(marks(spread(total, parts)), 1))
            assert found == best


@given(st.integers(0, 2_000), st.integers(1, 100))
def test_a_round_is_balanced(total: int, parts: int) -> None:
    """Whatever stretch of neighbouring gaps is taken round the round, stretches as long differ by at most one."""
    gaps = around(total, parts)
    assert sum(gaps) == total
    twice = gaps + gaps
    for length in range(1, min(parts, 12) + 1):
        stretches = {sum(twice[at : at + length]) for at in range(parts)}
        assert max(stretches) - min(stretches) <= 1


@given(st.integers(0, 5_000), st.integers(1, 200), st.integers(0, 20))
def test_margins_are_halves_of_one_more_gap(total: int, shapings: int, margin: int) -> None:
    """Margins differ by at most one and together make one more gap, unless a wider margin was asked for."""
    total += 2 * margin
    gaps = across(total, shapings, margin)
    assert sum(gaps) == total
    assert len(gaps) == shapings + 1
    assert min(gaps[0], gaps[-1]) >= margin
    assert 0 <= gaps[-1] - gaps[0] <= 1
    inner = gaps[1:-1]
    if inner:
        assert max(inner) - min(inner) <= 1
        if gaps[0] + gaps[-1] > 2 * margin:
            assert max(*inner, gaps[0] + gaps[-1]) - min(*inner, gaps[0] + gaps[-1]) <= 1


@given(st.integers(2, 3_000), st.integers(2, 100))
def test_unequal_margins_only_where_the_gaps_leave_no_choice(total: int, shapings: int) -> None:
    """Margins differ only when every gap is of one odd size."""
    gaps = across(total, shapings, 0)
    if gaps[0] != gaps[-1]:
        assert set(gaps[1:-1]) == {gaps[0] + gaps[-1]}


def test_more_stitches_never_narrow_a_gap_in_a_round() -> None:
    """Monotony: one stitch more widens some boundary and pulls none back."""
    for parts in range(1, 12):
        for few, more in pairwise(range(40)):
            assert all(b >= a for a, b in zip(marks(around(few, parts)), marks(around(more, parts)), strict=True))
