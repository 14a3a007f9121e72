"""A caution is shown once a garment, then stands behind its key; a child's is always shown."""

import pytest

from finishing_tui import shipped
from finishing_tui.garment.commands import AlreadyAt, Press, TakeUp
from finishing_tui.garment.state import State
from finishing_tui.glance import look_at
from finishing_tui.glance.cautions import CARE, is_behind, is_childs
from finishing_tui.glance.spoken import spoken
from finishing_tui.glance.values import WordLine
from finishing_tui.recipe.kinds.check import Check
from tests.garment.edges import finish
from tests.garment.paper import Paper, plan_for
from tests.talk.test_offers import NOW

RECIPES = sorted(shipped.recipes())

TWICE = """
format = 1
title  = "Two cautions"
sizes  = ["one"]

[place.needle]
text = "needle"
kind = "needle"
live = 8

[[step]]
do    = "check"
title = "Look it over"
items = ["It is whole.", "It is dry."]
mind  = "Sit well."

[[step]]
do    = "count"
title = "Count it"
place = "needle"
count = 8
mind  = "Mind your eyes."

[[step]]
do    = "check"
title = "Look again"
items = ["It is still whole."]
mind  = "Sit well."

[[step]]
do    = "bind off"
title = "Bind off"
from  = "needle"
tail  = "end"
mind  = "Leave no loop that catches a baby's finger."

[[step]]
do    = "weave in"
title = "Weave in"
tails = ["end"]
mind  = "Leave no loop that catches a baby's finger."
"""


def care(state: State, step: int) -> WordLine:
    """Return the caution of a step as it is seen."""
    return next(line for line in look_at(state, step, NOW).lines if line.heading == CARE)


def test_a_caution_is_shown_until_its_step_goes_on() -> None:
    """Through a list that is ticked off; in a row of stitches until the first of them."""
    paper = Paper(plan_for(TWICE))
    assert not care(paper.state, 0).behind
    assert not care(paper.press().state, 0).behind
    finish(paper)
    assert care(paper.state, 0).behind
    assert not care(paper.state, 1).behind
    assert care(paper.press().state, 1).behind
    assert paper.take_back() is None
    assert not care(paper.state, 1).behind, "what was taken back was not done"


def test_a_caution_that_was_shown_at_another_step_is_not_shown_again() -> None:
    """Of two steps with the same words the second has no caution any more; to look at a step shows it to nobody."""
    paper = Paper(plan_for(TWICE))
    assert care(paper.state, 2).behind
    assert not care(paper.state, 1).behind
    finish(paper)
    finish(paper)
    assert paper.state.current == 2
    assert care(paper.state, 2).behind


def test_a_step_that_was_left_open_has_shown_its_caution() -> None:
    """Gone back to, it is the same step in the same garment."""
    paper = Paper(plan_for(TWICE)).did(TakeUp(1))
    assert care(paper.state, 0).behind
    assert care(paper.did(TakeUp(0)).state, 0).behind


def test_a_childs_caution_is_always_shown() -> None:
    """In the middle of a row, said a second time, and once its step is done."""
    paper = Paper(plan_for(TWICE)).did(AlreadyAt(3), Press())
    assert care(paper.state, 3) == WordLine(CARE, "Leave no loop that catches a baby's finger.", always=True)
    finish(paper)
    assert not care(paper.state, 3).behind
    assert not care(paper.state, 4).behind


@pytest.mark.parametrize(
    ("title", "mind", "sizes", "childs"),
    [
        ("Sew on", "Buttons that children can reach must hold.", (), True),
        ("Safe for a child", "Follow your local rules.", (), True),
        ("Edge", "Do not leave the end long for a bow.", (), True),
        ("Sew on", "Small parts can be swallowed.", (), True),
        ("Edge", "Sit well.", ("2 years", "12 months", "newborn", "3T"), True),
        ("Edge", "Sit well.", ("10 years", "S"), False),
        ("Edge", "Sit well.", (), False),
        ("Tie up", "Count in tens; the band is according to plan.", ("S", "M"), False),
        ("Steam", "Mind the steam: it burns.", (), False),
    ],
)
def test_which_caution_is_a_childs(title: str, mind: str, sizes: tuple[str, ...], *, childs: bool) -> None:
    """It or the title speaks of a child, or of what cords and small parts do; or the step is for their sizes alone."""
    assert is_childs(Check(title=title, mind=mind, items=("It is so.",), for_=sizes)) == childs


@pytest.mark.parametrize("name", RECIPES)
def test_through_every_recipe_each_caution_comes_once_and_a_childs_every_time(name: str) -> None:
    """Step after step in the first size: the words of a child's step are never behind, others not twice."""
    paper = Paper(plan_for(shipped.recipe(name).read_text()))
    shown: list[str] = []
    for step in range(len(paper.state.steps)):
        if not paper.state.plan.is_for(step):
            continue
        if step != paper.state.current:
            paper.did(AlreadyAt(step))
        recipe_step = paper.state.plan.step(step)
        if not recipe_step.mind:
            continue
        if "child" in f"{recipe_step.title} {recipe_step.mind}".casefold():
            assert is_childs(recipe_step)
        if is_childs(recipe_step):
            assert not is_behind(paper.state, step)
        elif not is_behind(paper.state, step):
            shown.append(recipe_step.mind)
    assert shown
    assert len(shown) == len(set(shown))


def test_a_caution_is_spoken_where_it_is_shown() -> None:
    """With the beginning of a step, and not when the same step is looked at later."""
    paper = Paper(plan_for(TWICE))
    begun = look_at(paper.state, 0, NOW)
    assert f"{CARE}: Sit well" in spoken(None, begun, "all")
    assert CARE not in spoken(None, begun, "counts")
    finish(paper)
    assert CARE not in spoken(None, look_at(paper.state, 0, NOW), "all")
