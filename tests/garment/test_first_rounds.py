"""A difference is put right in a first row or round only where one follows; a fold is no reason to rip back."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import Finish, PutRight, TakeCount
from finishing_tui.glance import recount_view
from finishing_tui.glance.following import following
from tests.examples import share
from tests.garment.edges import along, press_to_the_end
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import along as along_edge
from tests.recipe_texts import place, recipe, step

_BAND = step("work", "Work the band", on="band", rows=2)
_CHECK = step("check", "Look at it", items=["It lies flat."])
_OTHER = step("cast on", "The other needle", onto="other", count=12)
_OFF = step("bind off", "Bind off", from_="band")
_JOIN = step("join", "Join", front="band", back="other")
_SHAPE = step("shape", "Draw it in", on="band", to=8, method="k2tog")
_SOME = step("bind off", "Bind off some", from_="band", count=2)
_MOVE = step("move", "Onto a holder", from_="band", to="other")


def _then(*steps: str) -> Paper:
    """Return a garment at the start of an edge of 12 stitches over 16 rows, with ``steps`` to come after it."""
    edge = step("pick up and knit", "Pick up", along_edge("edge", 16, 12, unit="row"), onto="band")
    return Paper(plan_for(recipe("One edge", place("band"), place("other"), edge, *steps)))


@pytest.mark.parametrize(
    ("steps", "follows"),
    [
        ((_BAND,), True),
        ((_CHECK, _BAND), True),
        ((_SOME, _BAND), True),
        ((_OFF,), False),
        ((_OFF, _BAND), False),
        ((_OTHER, _JOIN, _BAND), False),
        ((_MOVE, _BAND), False),
        ((_SHAPE, _BAND), False),
        ((), False),
    ],
)
@settings(max_examples=share(10))
@given(pressed=st.integers(0, 12), counted=st.integers(0, 24))
def test_a_repair_in_a_first_row_is_offered_only_where_one_follows(
    steps: tuple[str, ...], *, follows: bool, pressed: int, counted: int
) -> None:
    """Whatever is counted; and where none follows no way speaks of one, and no way leaves anything to it."""
    paper = _then(*steps).press(pressed)
    try:
        view = recount_view(paper.state, counted, "loops")
    except FinishingError:
        return
    for row, command in zip(view.answers.rows, view.commands, strict=True):
        assert follows or (not row.made and "Fix it" not in row.text and "evenly" not in row.text + row.more)
        assert follows or command.repair != "first-round" or row.total == 12
    assert view.commands


@pytest.mark.parametrize(("steps", "follows"), [((_BAND,), True), ((_OFF, _BAND), False), ((_OTHER, _JOIN), False)])
@pytest.mark.parametrize("off", [-1, 1])
def test_what_a_needle_lacks_is_left_to_a_first_row_only_where_one_follows(
    steps: tuple[str, ...], off: int, *, follows: bool
) -> None:
    """A needle was counted: one over or under."""
    edge = step("cast on", "Cast on", onto="band", count=12)
    count = step("count", "Count it", place="band", expect={"band": 12})
    paper = Paper(plan_for(recipe("A needle", place("band"), place("other"), edge, count, *steps)))
    press_to_the_end(paper).surely(Finish())
    before = paper.state
    paper.did(TakeCount(12 + off, "band"))
    found = following(before, paper.state)
    ways = [one.command for one in found.does] if found else []
    assert any(isinstance(one, PutRight) and one.how == "first-round" for one in ways) == follows


@settings(max_examples=share(60))
@given(st.integers(10, 60), st.data())
def test_a_fold_is_no_reason_to_rip_back_unless_it_would_be_three_rows_off_too(spots: int, data: st.DataObject) -> None:
    """A little past half: what the plan has up to three rows from the middle of the edge is never ripped back."""
    target = max(spots * 3 // 4, 1)
    paper = along(spots, target).press(data.draw(st.integers(1, target)))
    aside = data.draw(st.integers(-3, 3))
    stage = paper.state.standing.work.stages[0] if paper.state.standing and paper.state.standing.work else None
    assert stage is not None
    assert stage.rhythm is not None
    counted = stage.rhythm.up_to(spots // 2 + aside)
    view = recount_view(paper.state, counted, "half-way")
    assert not any(one.repair == "rip-back" for one in view.commands)
