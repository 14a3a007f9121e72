"""The end of a pinned edge is a pin too: its count is offered, and what is missing or too many is put right there."""

import re

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from finishing_tui.garment.commands import Finish, PinEdge, Press, TakeCount, TakeOut
from finishing_tui.garment.decide.mirror import short_by
from finishing_tui.garment.events import WhyOff
from finishing_tui.garment.recounting import outlook
from finishing_tui.garment.stops import counted_at_end, due
from finishing_tui.garment.ways import CannotCount
from finishing_tui.glance.recounts import put_down_to, recount_view
from tests.examples import share
from tests.garment.paper import Paper, plan_for
from tests.garment.test_open_edges import at, edges, work_of
from tests.recipe_texts import place, recipe, section, step

STITCHES, PARTS = st.integers(12, 60), st.integers(2, 6)


def to_its_end(target: int, parts: int) -> Paper:
    """Return a pinned edge that is picked up to its end, every pin counted."""
    return on_to(edges(target).did(PinEdge(parts)), target)


def on_to(paper: Paper, loops: int) -> Paper:
    """Pick up to ``loops`` stitches of the first side, every pin counted as it should be."""
    while at(paper)[1].mark.units < loops:
        paper.press(1)
        if (pin := due(paper.state)) is not None and pin < at(paper)[0].units:
            paper.did(TakeCount(pin))
    return paper


@settings(max_examples=share(40))
@given(STITCHES, PARTS)
def test_its_end_waits_for_its_count_until_that_is_taken_or_passed(target: int, parts: int) -> None:
    """As every other pin does: enter takes it, a press goes on without, and neither asks once more."""
    paper = to_its_end(target, parts)
    assert due(paper.state) == target
    before = paper.state
    paper.did(TakeCount(target))
    assert due(paper.state) is None
    assert paper.state.ledger == before.ledger
    assert paper.take_back() is None
    assert (paper.state.steps, due(paper.state)) == (before.steps, target)
    paper.press(1)
    assert due(paper.state) is None


@settings(max_examples=share(40))
@given(STITCHES, PARTS, st.integers(-4, 4), st.booleans(), st.data())
def test_every_way_at_the_end_comes_to_what_it_says_and_can_be_taken_back(
    target: int,
    parts: int,
    off: int,
    says_so: bool,  # noqa: FBT001
    data: st.DataObject,
) -> None:
    """Whatever was counted there, or said to be all: the needle holds it, no row of it is named, and undo is exact."""
    paper = to_its_end(target, parts)
    before, counted = paper.state, target + off
    assume(counted > 0)
    answer: WhyOff = "edge-ends" if says_so else "loops"
    seen = outlook(before, counted, answer)
    view = recount_view(before, counted, answer)
    assert not any(re.search(r"(?<!in )row \d", f"{row.text} {row.more}") for row in view.answers.rows)
    assert all(row.verdict is None and row.edge is None for row in view.answers.rows)
    way = data.draw(st.sampled_from(seen.ways))
    paper.did(TakeCount(counted, answer=answer, repair=way.repair))
    stage, progress = at(paper)
    assert paper.state.ledger.on("band") == progress.mark.units == progress.mark.loops
    if way.repair == "rip-back":
        assert (stage.halts, stage.target) == (at_first(target, parts), target)
        on_to(paper, target)
        assert paper.state.ledger.on("band") == target
        assert due(paper.state) == target
    else:
        assert progress.mark.units == stage.units == stage.target
        assert due(paper.state) is None
        assert stage.target == (counted if way.repair in {"as-it-is", "first-round", "next-section"} else target)
    while paper.state.top != before.top:
        assert paper.take_back() is None
    assert (paper.state.steps, paper.state.ledger, paper.state.plan) == (before.steps, before.ledger, before.plan)
    assert paper.replayed() == paper.state


def at_first(target: int, parts: int) -> tuple[int, ...]:
    """Return the pins of an edge that was just pinned."""
    return at(edges(target).did(PinEdge(parts)))[0].halts


@settings(max_examples=share(40))
@given(STITCHES, PARTS, st.integers(1, 99), st.data())
def test_it_may_end_at_any_stitch(target: int, parts: int, part: int, data: st.DataObject) -> None:
    """Short of some, she may rip back to a pin behind, have them at the end, or leave them."""
    loops = max(1, target * part // 100)
    paper = on_to(edges(target).did(PinEdge(parts)), loops)
    seen = outlook(paper.state, loops, "edge-ends")
    repairs = [way.repair for way in seen.ways]
    assert {"rip-back", "as-it-is"} <= set(repairs)
    assert ("double-last" in repairs) == (target - loops <= 3)
    assert ("strand" in repairs) == (target - loops <= 2)
    way = data.draw(st.sampled_from(seen.ways))
    paper.did(TakeCount(loops, answer="edge-ends", repair=way.repair))
    stage, progress = at(paper)
    if way.repair == "rip-back":
        assert progress.mark.units in {0, *at_first(target, parts)}
        assert progress.mark.units < loops
    else:
        assert work_of(paper).at == 1
        assert progress.mark.units == stage.units
    assert paper.state.ledger.on("band") == progress.mark.units


@settings(max_examples=share(30))
@given(STITCHES, PARTS, st.lists(st.integers(-1, 1), min_size=5, max_size=5), st.integers(0, 99))
def test_ripped_back_the_pins_ahead_are_as_planned_and_wait(
    target: int, parts: int, slips: list[int], part: int
) -> None:
    """What was counted at a pin falls with the stitches before it; the pins behind stay as they were counted."""
    paper = edges(target).did(PinEdge(parts))
    planned = at(paper)[0].halts
    counted = []
    for pin, slip in zip(planned, slips, strict=False):
        paper.press(pin - at(paper)[1].mark.units).did(TakeCount(pin + slip))
        counted.append(pin + slip)
    to = at(paper)[1].mark.units * part // 100
    paper.surely(TakeOut(0, 0, to))
    stage, progress = at(paper)
    behind = [pin for pin in counted if pin <= to]
    assert stage.halts == (*behind, *planned[len(behind) :])
    assert progress.confirmed[0] <= to
    for pin in planned[len(behind) :]:
        if pin <= to:
            continue
        paper.press(pin - at(paper)[1].mark.units)
        assert due(paper.state) == pin
        paper.did(TakeCount(pin))


@given(st.integers(12, 61), PARTS)
def test_the_second_side_has_the_shares_the_other_way_round(target: int, parts: int) -> None:
    """Where they do not read the same from both ends, it is the mirror all the same."""
    paper = edges(target).did(PinEdge(parts))
    first, second = (at(paper, side)[0].halts for side in (0, 2))
    assert tuple(target - pin for pin in reversed(first)) == second


@pytest.mark.parametrize("off", [-2, -1, 1, 2])
def test_nothing_is_left_to_a_round_that_does_not_come(off: int) -> None:
    """Bound off at once, there is no first round to put it right in."""
    pick_up = step("pick up and knit", "Pick up", section(along="edge", stitches=24, ratio="2/3"), onto="band")
    bind_off = step("bind off", "Bind off", from_="band")
    paper = Paper(plan_for(recipe("One edge", place("band"), pick_up, bind_off, format=2)))
    on_to(paper.did(PinEdge(4)), 24)
    assert work_of(paper).complete
    assert due(paper.state) == 24
    view = recount_view(paper.state, 24 + off, "loops")
    assert "first-round" not in {command.repair for command in view.commands}
    assert not any("round" in row.text for row in view.answers.rows)


def test_what_is_too_many_goes_in_the_first_row_and_comes_back_with_a_rip() -> None:
    """Ripped back behind the count, the row has nothing to put right any more."""
    paper = to_its_end(24, 4).did(TakeCount(25, answer="loops", repair="first-round"))
    assert [shaping.change for shaping in paper.state.plan.step(1).shaping] == [-1]  # type: ignore[union-attr]
    paper.surely(TakeOut(0, 0, 20))
    assert not paper.state.plan.step(1).shaping  # type: ignore[union-attr]
    assert at(paper)[0].target == 24


def test_the_next_pinned_side_may_take_what_is_missing() -> None:
    """Right after the first one, it is shared out anew with it."""
    first = section(along="left edge", stitches=24, ratio="2/3")
    second = section(along="right edge", stitches=24, mirrors="left edge", ratio="2/3")
    pick_up = step("pick up and knit", "Pick up", first, second, onto="band")
    work = step("work", "Work", on="band", rows=2)
    paper = Paper(plan_for(recipe("Two edges", place("band"), pick_up, work, format=2)))
    on_to(paper.did(PinEdge(4)), 24).did(TakeCount(22, answer="loops", repair="next-section"))
    assert (at(paper)[0].target, at(paper, 1)[0].target, len(at(paper, 1)[0].halts)) == (22, 26, 3)


@pytest.mark.parametrize("answer", ["rows-left", "half-way", "rows-to-spare", "not-known"])
def test_no_answer_of_rows_is_taken(answer: WhyOff) -> None:
    """Nobody counted them: it says what to count instead, and nothing offers it."""
    paper = edges(24).did(PinEdge(4)).press(6)
    with pytest.raises(CannotCount, match="count its stitches"):
        outlook(paper.state, 4, answer, 3)
    answers = [answer for answer, _ in put_down_to(recount_view(paper.state, 4), lost=True)]
    assert answers == [None, "loops", "presses"]


@pytest.mark.parametrize(("counted", "left"), [(5, 1), (4, 2)])
def test_presses_told_wrong_leave_the_pin_where_it_is(counted: int, left: int) -> None:
    """Pressed twice, she is not at the pin yet."""
    paper = edges(24).did(PinEdge(4)).press(6).did(TakeCount(counted, answer="presses"))
    assert at(paper)[0].halts == (6, 12, 18)
    for _ in range(left):
        assert due(paper.state) is None
        paper.press(1)
    assert due(paper.state) == 6


def test_a_step_that_ends_with_it_is_finished_as_ever() -> None:
    """Counted or not, the step can be ended; what it is short of at a pin is no difference yet."""
    paper = to_its_end(24, 4).press(10)
    while work_of(paper).at == 2 and not work_of(paper).complete:
        assert short_by(work_of(paper)) == 0
        paper.press(1)
    assert counted_at_end(work_of(paper)) == 2
    paper.did(Finish())
    assert paper.do(Press()) is None
