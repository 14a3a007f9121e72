"""``work`` with short rows."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.shoulders import stepped, steps
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.kinds.work import Shaping, Work
from tests.recipe.kinds.beginning import after, here, refused


def work(rows: int, first: int, step: int, times: int, **keys: object) -> Work:
    """Return a step of so many rows with short rows on the back needle."""
    short = ShortRows(first=first, step=step, times=times)
    return Work(title="Slope the shoulders", on="back", rows=rows, short_rows=short, **keys)  # type: ignore[arg-type]  # keys of Work


def turned(step: Work, held: int) -> list[tuple[int, int, int]]:
    """Return (worked, unworked at this end, unworked at the other) of every row that turns."""
    (stage,) = step.stages(here({"back": held}))
    found = (
        re.match(r"work (\d+), turn; unworked: (\d+) at this end, (\d+) at the other", words) for _, words in stage.said
    )
    return [(int(row[1]), int(row[2]), int(row[3])) for row in found if row]


def test_published_stepped_bind_off_as_short_rows() -> None:
    """103 with "10 at the beginning of 6 rows, 43 left": leave 10, 20, 30 a side, 30 live each (KnittingHelp 27087)."""
    step = work(8, 10, 10, 3)
    rows = turned(step, 103)
    assert tuple(dict.fromkeys(far for _, far, _ in rows)) == stepped(103, 10, 6).left_unworked
    assert rows[-1] == (43, 30, 30)
    assert after(step, here({"back": 103})) == here({"back": 103}).ledger, "every stitch stays live"


def test_published_turns() -> None:
    """A shoulder of 16 in three steps needs two turns on its side (TECHknitter 2012; KnittingHelp 41947)."""
    slope = steps(16, 3)
    rows = turned(work(6, slope.steps[0], slope.steps[1], slope.turns), 60)
    assert slope.steps == (5, 5, 6)
    assert [far for _, far, _ in rows] == [5, 5, 10, 10]


@given(st.integers(1, 12), st.integers(1, 9), st.integers(1, 8), st.integers(1, 30), st.integers(0, 4))
def test_walked_stitch_by_stitch_the_rows_are_what_they_say(
    first: int, step: int, times: int, middle: int, more: int
) -> None:
    """A walk to and fro over the stitches turns where the words say, and the last two rows meet every turn once."""
    held = 2 * (first + (times - 1) * step) + middle
    rows = turned(work(2 * times + 2 + more, first, step, times), held)
    assert len(rows) == 2 * times
    at, forward, turns = 0, True, set[int]()
    for worked, _, _ in rows:
        at = at + worked if forward else at - worked
        turns.add(at)
        forward = not forward
    assert len(turns) == 2 * times
    near = {first + n * step for n in range(times)}
    assert turns == near | {held - turn for turn in near}
    assert forward
    assert {turn for turn in turns if turn > at} == {held - turn for turn in near}, "met on the way to the end"


def test_the_last_two_rows_pick_the_turns_up() -> None:
    """Flat or in the round two rows follow the turns: one to the end, one across all; what follows is plain."""
    (stage,) = work(9, 5, 4, 2).stages(here({"back": 40}))
    said = dict(stage.said)
    assert sorted(said) == [1, 2, 3, 4, 5, 6]
    assert "work to the end" in said[5]
    assert said[6].startswith("work all 40 and pick up the turns")


def test_shaping_among_the_short_rows_is_reckoned_with() -> None:
    """A decrease in row 2 leaves the ends as they are and shortens every row after it."""
    step = work(6, 5, 4, 2, shaping=(Shaping(change=-2, round=2),))
    assert [row[0] for row in turned(step, 40)] == [35, 30, 24, 20]
    assert "decrease 2: leaves 38" in dict(step.stages(here({"back": 40}))[0].said)[2]
    assert after(step, here({"back": 40})).on("back") == 38


@pytest.mark.parametrize(
    ("rows", "first", "step", "times", "names"),
    [
        (7, 10, 10, 3, "3 turns a side take 8 rows"),
        (8, 20, 10, 3, "row 4 leaves 30 unworked at one end and 30 at the other, and there are 60"),
        (8, 0, 1, 2, "not 0, then 1 more"),
        (8, 4, 0, 2, "then 0 more"),
        (8, 4, 1, 0, "0 times"),
        (100_000, 1, 1, 40_000, "40000 times"),
    ],
)
def test_refusals_name_the_numbers(rows: int, first: int, step: int, times: int, names: str) -> None:
    """Too few rows, too few stitches, and numbers that mean nothing."""
    assert names in refused(work(rows, first, step, times), here({"back": 60}))
