"""``seam``."""

from typing import Literal, get_args

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.pairing import rows_to_rows
from finishing_tui.craft.seams import stitches_to_rows
from finishing_tui.recipe.kinds.seam import Seam, Side, two_at_once
from finishing_tui.recipe.stage import Stage
from tests.recipe.kinds.beginning import after, here, refused

Unit = Literal["row", "ridge", "chain", "stitch"]
START = here({}, ["side seam"])


def seam(one: int, other: int, *units: Unit) -> Seam:
    """Return a seam of two edges."""
    first, second = units or ("row", "row")
    sides = (Side(spots=one, unit=first, along="front edge"), Side(spots=other, unit=second, along="back edge"))
    return Seam(title="Sew the side seam", sides=sides, tail="side seam")


def stage_of(one: int, other: int, *units: Unit) -> Stage:
    """Return the only stage of such a seam."""
    (stage,) = seam(one, other, *units).stages(START)
    return stage


def test_a_difference_of_one_row_is_eased() -> None:
    """Sides may differ by one row (L. Neatby; Knitting Robin 2013): one pair takes two bars of the longer one."""
    stage = stage_of(84, 85)
    assert stage.units == 84
    assert [len(taken) for taken in stage.bars] == [84, 84]
    assert [sum(taken) for taken in stage.bars] == [84, 85]
    assert len(stage.said) == 1
    assert stage.said[0][1] == "two at once from the back edge"


@pytest.mark.parametrize("unit", get_args(Unit))
@given(st.integers(1, 200), st.integers(1, 200))
def test_edges_of_one_nature_are_eased_where_the_sum_has_it(unit: Unit, one: int, other: int) -> None:
    """The pairs, and those that take two bars of the longer side, are those of ``rows_to_rows``; all bars are used."""
    assume(max(one, other) <= 2 * min(one, other))
    stage = stage_of(one, other, unit, unit)
    assert stage.units == min(one, other)
    assert tuple(sum(taken) for taken in stage.bars) == (one, other)
    longer = stage.bars[0] if one > other else stage.bars[1]
    assert tuple(place for place, taken in enumerate(longer, 1) if taken == 2) == rows_to_rows(one, other).double_at
    assert [place for place, _ in stage.said] == list(rows_to_rows(one, other).double_at)


def test_published_stitches_to_rows() -> None:
    """60 stitches to 84 rows is 5 to 7: rows taken 1, 2, 1, 1, 2 (H. Yeoh 2009; Knitting For Dummies)."""
    stage = stage_of(60, 84, "stitch", "row")
    assert stage.bars == ((1,) * 60, (1, 2, 1, 1, 2) * 12)
    assert stage.bars[1] == stitches_to_rows(60, 84).taken
    assert stitches_to_rows(60, 84).text in stage.words
    assert stage_of(84, 60, "row", "stitch").bars == (stage.bars[1], stage.bars[0])


def test_a_seam_shortens_its_tail_and_moves_no_stitch() -> None:
    """The tail is shorter, not ended; live stitches stay where they are."""
    start = here({"neck": 7}, ["side seam"])
    done = after(seam(40, 40), start)
    assert done.tails == {"side seam": 1}
    assert done.live == {"neck": 7}


@given(st.integers(2, 60), st.integers(2, 60), st.data())
def test_two_at_once_against_the_plan_still_uses_every_bar_once(one: int, other: int, data: st.DataObject) -> None:
    """Two bars of one side at any pair: those before stand, that one is as it was done, and all bars are used."""
    assume(max(one, other) <= 2 * min(one, other))
    stage = stage_of(one, other)
    pair = data.draw(st.integers(1, stage.units))
    side = data.draw(st.integers(0, 1))
    name = (stage.front, stage.back)[side]
    try:
        changed = two_at_once(stage, pair, name)
    except Impossible:
        left = [sum(taken[pair - 1 :]) - (2 if index == side else 1) for index, taken in enumerate(stage.bars)]
        assert left[side] < 0 or max(left) > 3 * min(left)
        return
    assert tuple(sum(taken) for taken in changed.bars) == (one, other)
    assert [taken[: pair - 1] for taken in changed.bars] == [taken[: pair - 1] for taken in stage.bars]
    assert tuple(taken[pair - 1] for taken in changed.bars) == ((2, 1) if side == 0 else (1, 2))
    assert changed.units == changed.target == len(changed.bars[0]) == len(changed.bars[1])
    assert all(min(taken) >= 1 for taken in changed.bars)


def test_sides_without_names_are_told_apart() -> None:
    """Each side has a name of its own, since x must say which one it means."""
    plain = Seam(title="Sew", sides=(Side(spots=3), Side(spots=3)), tail="side seam").stages(START)[0]
    assert (plain.front, plain.back) == ("first side", "second side")
    alike = Seam(title="Sew", sides=(Side(spots=3, along="edge"), Side(spots=3, along="edge")), tail="side seam")
    assert (alike.stages(START)[0].front, alike.stages(START)[0].back) == ("first edge", "second edge")


def test_refusals_name_the_numbers() -> None:
    """No tail; three sides; an edge with more than twice (or for rows, three times) the other; absurd edges."""
    assert "'side seam'" in refused(seam(4, 4), here({}))
    assert "3 sides" in refused(Seam(title="Sew", sides=(Side(spots=1),) * 3, tail="side seam"), START)
    assert "20 and 41" in refused(seam(20, 41), START)
    assert "10 stitches cannot be sewn to 31 rows" in refused(seam(10, 31, "stitch", "row"), START)
    assert "100000" in refused(seam(100_000, 99_999), START)
    assert "0" in refused(seam(0, 5), START)


def test_none_in_this_size() -> None:
    """Two edges of nothing are done as they begin."""
    assert stage_of(0, 0).units == 0
