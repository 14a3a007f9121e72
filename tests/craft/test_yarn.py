from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.lengths import Length, length
from finishing_tui.craft.yarn import (
    CLOSE_A_HOLE,
    OPERATIONS,
    WEAVE_IN,
    in_weight,
    needed,
    rounds_left,
    will_it_close,
    will_it_do,
)

AMOUNTS = st.fractions(Fraction(1, 10), 500, max_denominator=10)
WIDTHS = AMOUNTS.map(lambda cm: length(cm, "cm"))


@given(st.sampled_from(list(OPERATIONS)), WIDTHS)
def test_the_usual_lies_in_the_published_range(operation: str, width: Length) -> None:
    """Lowest, usual and highest are the published multiples of the width; all are said with a unit."""
    need = needed(operation, width)
    assert [each.cm / width.cm for each in (need.least, need.usual, need.most)] == list(OPERATIONS[operation])
    assert need.least <= need.usual <= need.most
    assert "cm" in need.text


@given(st.sampled_from(list(OPERATIONS)), WIDTHS, AMOUNTS)
def test_more_yarn_is_never_judged_worse(operation: str, width: Length, have: Fraction) -> None:
    """Monotony, and the bounds: below the least with its tail it is too short, from the usual on enough."""
    need = needed(operation, width)
    order = ["too short", "tight", "enough"]
    here, more = (will_it_do(need, length(cm, "cm"))[0] for cm in (have, have + 1))
    assert order.index(here) <= order.index(more)
    assert (here == "too short") == (have < need.least.cm + WEAVE_IN.cm)
    assert (here == "enough") == (have >= need.usual.cm + WEAVE_IN.cm)


@given(AMOUNTS)
def test_more_of_a_tail_is_never_judged_worse_for_a_hole(have: Fraction) -> None:
    """Monotony, and the bounds: what only weaves in is too short, from the least that is published on enough."""
    order = ["too short", "tight", "enough"]
    here, more = (will_it_close(length(cm, "cm")) for cm in (have, have + 1))
    assert order.index(here) <= order.index(more)
    assert (here == "too short") == (have < WEAVE_IN.cm + 1)
    assert (here == "enough") == (have >= CLOSE_A_HOLE[0].cm)


@given(AMOUNTS, AMOUNTS, AMOUNTS)
def test_weight_and_length_are_in_proportion(grams: Fraction, ball: Fraction, metres: Fraction) -> None:
    """A whole ball holds what the label says, and twice the weight twice the length."""
    assert in_weight(ball, ball, metres) == metres
    assert in_weight(2 * grams, ball, metres) == 2 * in_weight(grams, ball, metres)


@given(AMOUNTS, AMOUNTS, st.fractions(Fraction(1, 4), 20, max_denominator=4))
def test_rounds_and_bind_off_fit_what_is_left(after: Fraction, used: Fraction, between: Fraction) -> None:
    """The rounds named leave enough for the bind-off, one more would not; the safe ones are never more."""
    found = rounds_left(after + used, after, between)
    assert found.per_round * between == used
    assert found.can_bind_off == (after >= found.bind_off)
    if found.can_bind_off:
        assert found.rounds * found.per_round + found.bind_off <= after
        assert (found.rounds + 1) * found.per_round + found.bind_off > after
    assert 0 <= found.safe_rounds <= found.rounds
    if found.safe_rounds:
        assert found.safe_rounds * found.per_round + found.bind_off_most <= after


def test_a_bind_off_costs_more_than_a_round() -> None:
    """It is its own cost, from a third more than a round to twice as much."""
    found = rounds_left(Fraction(60), Fraction(54), Fraction(1))
    assert [found.per_round, found.bind_off, found.bind_off_most] == [6, 8, 12]


@pytest.mark.parametrize(("name", "known"), [("bind off", "bind-off"), ("Sewn", "sewn bind-off"), ("round", "row")])
def test_operations_are_read_as_people_say_them(name: str, known: str) -> None:
    """Short names will do."""
    assert needed(name, length(10, "cm")).operation == known


def test_what_cannot_be_reckoned_is_refused() -> None:
    """An unknown operation, an endless edge, weights that grow, amounts of nothing."""
    with pytest.raises(Impossible, match="use bind-off"):
        needed("knotting", length(10, "cm"))
    with pytest.raises(Impossible, match="too long"):
        needed("graft", length(5_000, "cm"))
    with pytest.raises(Impossible, match="less than the first"):
        rounds_left(Fraction(20), Fraction(20), Fraction(1))
    with pytest.raises(Impossible, match="between the weighings"):
        rounds_left(Fraction(20), Fraction(10), Fraction(0))
    with pytest.raises(Impossible, match="weight must"):
        rounds_left(Fraction(20), Fraction(0), Fraction(1))
    with pytest.raises(Impossible, match="ball's weight"):
        in_weight(Fraction(20), Fraction(0), Fraction(100))
