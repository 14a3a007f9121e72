"""What a real difference changes further on: every later number, from the ledger in hand."""

import pytest

from finishing_tui.craft.ledger import MISSING, Posting
from finishing_tui.recipe.audit import Inputs
from finishing_tui.recipe.audit.consequences import changes, first_stop, new_findings, onward, own_findings
from finishing_tui.recipe.audit.footing import footing
from tests.recipe.audit.writing import NECK, recipe_of


def test_one_fewer_on_a_holder_changes_every_later_count_and_no_earlier_one() -> None:
    """The front holder has 15, not 16: the band is 97, and the print, the repeat and each later step say so."""
    inputs = Inputs(recipe=recipe_of(NECK), size=0)
    right = footing(inputs).opening()
    real = right.enter(Posting("front", MISSING, 1))
    steps = range(len(inputs.recipe.step))
    planned, now = onward(inputs, right, steps), onward(inputs, real, steps)
    found = changes(planned, now)
    assert [(one.step, one.place, one.planned, one.real) for one in found] == [
        (0, "front", 16, 15),
        (1, "front", 16, 15),
        (2, "front", 16, 15),
        (3, "neck", 98, 97),
        (4, "neck", 98, 97),
        (5, "neck", 98, 97),
    ]
    assert [(one.kind, one.step, one.expected, one.found) for one in new_findings(planned, now)] == [
        ("printed count", 3, 98, 97),
        ("repeat", 3, "2m", 97),
    ]
    assert now.rows[-1].live == {}


def test_nothing_differs_where_nothing_differs() -> None:
    """From the ledger the recipe has there are no consequences."""
    inputs = Inputs(recipe=recipe_of(NECK), size=1)
    start = footing(inputs).opening()
    run = onward(inputs, start, range(3, 9))
    assert changes(run, run) == ()
    assert new_findings(run, run) == ()
    assert own_findings(run, run) == ()
    assert first_stop(inputs.recipe, run, run, (), counted=True) is None


def test_steps_in_another_order_are_audited_in_that_order() -> None:
    """Only the steps that are left are done, in the order that is given."""
    inputs = Inputs(recipe=recipe_of(NECK), size=0)
    run = onward(inputs, footing(inputs).opening(), (3, 1))
    assert [row.step for row in run.rows] == [3, 1]
    assert run.rows[0].live == {"left_front": 24, "left_back": 24, "neck": 98}


@pytest.mark.parametrize(("there", "stops"), [(0, True), (4, True), (5, False), (16, False)])
def test_a_step_left_next_to_nothing_stops_the_sums(there: int, stops: bool) -> None:  # noqa: FBT001
    """Up to a quarter of the 16 at the front is next to nothing: the step that takes them is named, and no sum after.

    By a plan that is another one, what it takes is what it needs.
    """
    inputs = Inputs(recipe=recipe_of(NECK), size=0)
    right = footing(inputs).opening()
    real = right.enter(Posting("front", MISSING, 16 - there)) if there < 16 else right
    steps = range(3, len(inputs.recipe.step))
    planned, now = onward(inputs, right, steps), onward(inputs, real, steps)
    stop = first_stop(inputs.recipe, planned, now, (), counted=True)
    assert (stop is not None) == stops
    if stop is not None:
        assert (stop.step, stop.place, stop.needs, stop.there) == (3, "front", 16, there)
    if there:
        assert first_stop(inputs.recipe, planned, now, (), counted=False) is None


def test_what_the_plan_has_wrong_by_itself_is_not_put_down_to_the_count() -> None:
    """97 is no whole repeat, and neither is 95: the plan's own number is wrong, and that is found."""
    inputs = Inputs(recipe=recipe_of(NECK), size=0)
    right = footing(inputs).opening()
    steps = range(len(inputs.recipe.step))
    one, three = (onward(inputs, right.enter(Posting("front", MISSING, many)), steps) for many in (1, 3))
    assert [(found.kind, found.found) for found in own_findings(one, three) if not found.place] == [("repeat", 97)]
    assert [found for found in new_findings(one, three) if found.kind == "repeat"] == []
