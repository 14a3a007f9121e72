"""What grows with a number has an end in every kind: a stage is stored, and shown whole."""

import pytest

from finishing_tui.recipe.kinds.base import CannotBegin, Step
from finishing_tui.recipe.kinds.pick_up_and_knit import MOST_SPOTS, PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along
from finishing_tui.recipe.kinds.shape import MOST_GROUPS, Shape
from finishing_tui.recipe.kinds.short_rows import MOST_TURNS, ShortRows
from finishing_tui.recipe.kinds.work import MOST_SHAPED, Shaping, Work
from finishing_tui.recipe.stage import whole
from tests.recipe.kinds.beginning import here

HELD = 50_000


def worked(rounds: int, *shaping: Shaping) -> Step:
    """Return a step of so many rounds."""
    return Work(title="Work", on="neck", rounds=rounds, shaping=shaping)


def walked(*spots: int) -> Step:
    """Return a step that walks edges of so many rows."""
    sections = tuple(Along(along=f"edge {n}", spots=many) for n, many in enumerate(spots))
    return PickUpAndKnit(title="Pick up", onto="neck", yarn="same", section=sections)


@pytest.mark.parametrize(
    ("step", "said"),
    [
        (worked(100_000, Shaping(change=1, every=1)), "100000 times of shaping are too many for 'Work': up to 2000"),
        (worked(1_500, *[Shaping(change=1, every=1)] * 2), "3000 times of shaping are too many"),
        (worked(9, *[Shaping(change=1, every=1, times=100_000)] * 100), "100000 times of shaping are too many"),
        (walked(MOST_SPOTS + 1), "5001 rows or stitches by the end of edge 0 are more than an edge has: up to 5000"),
        (walked(2_000, 2_000, 2_000, 9), "6000 rows or stitches by the end of edge 2 are more than an edge has"),
        (Shape(title="Shape", on="neck", to=HELD - 2 * MOST_GROUPS - 1), "50000 to 45999 changes 4001 stitches; 2000"),
        (Shape(title="Shape", on="neck", to=HELD - MOST_GROUPS - 1), "takes 2001 shapings; 2000 is the most in a row"),
    ],
)
def test_more_than_anyone_works_is_refused(step: Step, said: str) -> None:
    """One sentence with the number and how many there may be."""
    with pytest.raises(CannotBegin) as caught:
        step.stages(here({"neck": HELD}))
    assert said in str(caught.value)


@pytest.mark.parametrize(
    "step",
    [
        worked(MOST_SHAPED, Shaping(change=1, every=1)),
        walked(MOST_SPOTS - 9, 9),
        Shape(title="Shape", on="neck", to=HELD - MOST_GROUPS),
    ],
)
def test_as_much_as_there_may_be_is_worked(step: Step) -> None:
    """Up to there every stage is made, of a few thousand entries."""
    assert sum(len(whole(stage)) for stage in step.stages(here({"neck": HELD}))) <= 4_000


def test_short_rows_know_how_many_stitches_stand_in_each_row() -> None:
    """Beside as many shaped rows as there may be: every turn counts from what its own row begins with."""
    turns = ShortRows(first=1, step=1, times=MOST_TURNS)
    shaping = (Shaping(change=1, every=1, times=MOST_SHAPED),)
    step = Work(title="Work", on="neck", rows=MOST_SHAPED, shaping=shaping, short_rows=turns)
    (stage,) = step.stages(here({"neck": 5_000}))
    said = dict(stage.said)
    assert said[1].startswith("work 4999, turn; unworked: 1 at this end")
    assert said[2].startswith("work 4999, turn; unworked: 1 at this end, 1 at the other")
    assert said[999].startswith(f"work {5_000 + 998 - 500 - 499}, turn; ")
