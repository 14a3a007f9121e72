"""What if: another target, other spots, another rhythm, other rounds; what was worked stands, the rest is new."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from finishing_tui.craft.ledger import EDGE
from finishing_tui.garment.commands import Finish, Refusal, TakeCount, TakeOut, WhatIf
from finishing_tui.garment.walk import loops_up_to
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along
from finishing_tui.record.text import as_text
from tests.garment.edges import along, press_to_the_end, section, work_of
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import along as side
from tests.recipe_texts import place, recipe, step
from tests.record.test_record import recorded

TWO_SIDES = recipe(
    "Two sides",
    place("band"),
    step(
        "pick up and knit",
        "Pick up",
        side("left side", 24, 18, unit="row"),
        side("right side", 24, 18, unit="row", mirrors="left side"),
        onto="band",
    ),
    step("work", "Work the band", on="band", rounds=8, shaping=[{"change": -2, "round": 3}]),
)


@given(
    presses=st.integers(0, 20),
    target=st.integers(1, 90),
    spots=st.integers(1, 60),
    style=st.sampled_from(("easy", "even")),
    ends=st.sampled_from(("open", "closed")),
)
def test_what_is_taken_comes_out(presses: int, target: int, spots: int, style: str, ends: str) -> None:
    """Whatever target and spots are taken at whatever loop, pressing on gives just that; refused, nothing changed."""
    paper = along(40, 30, ends=ends).press(presses)
    before = paper.state
    refusal = paper.do(WhatIf(target=target, spots=spots, style="even" if style == "even" else "easy"))
    if refusal is not None:
        assert refusal.sentence
        assert paper.state == before
        return
    stage, progress = section(paper)
    assert progress.mark.loops == presses
    assert (stage.target, stage.units) == (target, spots)
    assert stage.rhythm is not None
    assert (stage.rhythm.stitches, stage.rhythm.spots) == (target, spots)
    assert loops_up_to(progress, spots) == target
    press_to_the_end(paper)
    assert paper.state.ledger.on("band") == target
    assert -paper.state.ledger.on(EDGE) == target


@given(presses=st.integers(0, 20), target=st.integers(20, 40), spots=st.integers(30, 50), back=st.integers(0, 29))
def test_taking_it_back_and_ripping_it_out_are_as_ever(presses: int, target: int, spots: int, back: int) -> None:
    """Undo gives the state before, exactly; ripped back to any row, the rest still comes to what was taken."""
    paper = along(40, 30).press(presses)
    before = paper.state
    assume(paper.do(WhatIf(target=target, spots=spots)) is None)
    if paper.state is not before:
        assert paper.take_back() is None
        assert (paper.state.steps, paper.state.plan, paper.state.ledger) == (before.steps, before.plan, before.ledger)
        assert paper.put_back() is None
    at = section(paper)[1].mark.units
    if back < at:
        paper.did(TakeOut(0, 0, back))
    press_to_the_end(paper)
    assert paper.state.ledger.on("band") == target


@given(presses=st.integers(0, 20), pick=st.integers(1, 8), of=st.integers(1, 8))
def test_a_typed_rhythm_gives_its_own_target(presses: int, pick: int, of: int) -> None:
    """A of every b to the end is just that at each of its spots, and the target follows."""
    paper = along(40, 30).press(presses)
    at = section(paper)[1].mark.units
    refusal = paper.do(WhatIf(rhythm=(pick, of)))
    if pick > 2 * of:
        assert refusal is not None
        return
    assert refusal is None
    stage, progress = section(paper)
    whole = (40 - at) // of
    least = presses + pick * whole
    assert least <= stage.target <= least + pick
    assert loops_up_to(progress, at + of * whole) == least


def test_easy_or_even_changes_no_count() -> None:
    """Another style alone spreads the same stitches another way."""
    paper = along(41, 30).press(9)
    paper.did(WhatIf(style="even"))
    stage, _ = section(paper)
    assert (stage.target, stage.style) == (30, "even")


def test_what_is_as_it_is_already_is_no_event() -> None:
    """ChoiceBox for what the plan has changes nothing that stands before the first loop."""
    paper = along(40, 30)
    many = len(paper.rows)
    paper.did(WhatIf(target=30))
    assert len(paper.rows) == many


def test_the_side_that_mirrors_it_goes_the_same_way() -> None:
    """The second side, still to come, gets as many, the other way round; and so does the plan of both."""
    paper = Paper(plan_for(TWO_SIDES)).did(WhatIf(target=16))
    first, second = work_of(paper.state).stages
    assert first.rhythm is not None
    assert second.rhythm == first.rhythm.mirrored()
    assert second.target == 16
    step = paper.state.plan.step(0)
    assert isinstance(step, PickUpAndKnit)
    assert [one.stitches for one in step.section if isinstance(one, Along)] == [16, 16]
    press_to_the_end(paper)
    assert paper.state.ledger.on("band") == 32


def test_ripping_back_to_the_start_keeps_what_was_taken() -> None:
    """It was a change of the plan, so beginning the step anew begins with it."""
    paper = Paper(plan_for(TWO_SIDES)).press(5).did(WhatIf(target=16, spots=22), TakeOut(0))
    stage = work_of(paper.state).stages[0]
    assert (stage.target, stage.units) == (16, 22)


def test_other_rounds_of_a_band() -> None:
    """So many rounds in all, those done counted; a shaping that would fall away is refused."""
    paper = press_to_the_end(Paper(plan_for(TWO_SIDES))).did(Finish()).press(2)
    refusal = paper.do(WhatIf(rounds=2))
    assert refusal is not None
    assert "round 3" in refusal.sentence
    assert paper.do(WhatIf(rounds=1)) == Refusal("2 rounds are done: use 2 or more")
    paper.did(WhatIf(rounds=12))
    assert work_of(paper.state).stages[0].units == 12
    paper.did(TakeCount(36, "band"))  # a count plans what is left anew, and the rounds stand
    assert work_of(paper.state).stages[0].units == 12
    press_to_the_end(paper)
    assert paper.state.ledger.on("band") == 34


@pytest.mark.parametrize(
    ("command", "words"),
    [
        (WhatIf(target=4), "you have 5 stitches: use 5 or more"),
        (WhatIf(spots=6), "you are past row 6: use 7 or more"),
        (WhatIf(rounds=4), "there are no rounds here"),
        (WhatIf(rhythm=(9, 4)), "9 of every 4 cannot be picked"),
        (WhatIf(target=88), "83 stitches cannot be picked up from 34 spots"),
    ],
)
def test_what_cannot_be_is_refused_with_its_range(command: WhatIf, words: str) -> None:
    """Each refusal says what is wrong and what would be right."""
    refusal = along(40, 30).press(5).do(command)
    assert refusal is not None
    assert words in refusal.sentence


def test_the_record_tells_it() -> None:
    """What was taken stands among the changes of the plan, with what was before."""
    paper = along(40, 30).press(5).did(WhatIf(target=28))
    told = " ".join(as_text(recorded(paper)).split())
    assert "step 1, edge: 28 from 40 rows," in told
    assert "before: 30 from 40 rows, 3 of every 4, ten times" in told
