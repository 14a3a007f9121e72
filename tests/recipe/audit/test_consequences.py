"""What a real difference changes further on: every later number, from the ledger in hand."""

from finishing_tui.craft.ledger import MISSING, Posting
from finishing_tui.recipe.audit import Inputs, changes, new_findings, onward
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


def test_steps_in_another_order_are_audited_in_that_order() -> None:
    """Only the steps that are left are done, in the order that is given."""
    inputs = Inputs(recipe=recipe_of(NECK), size=0)
    run = onward(inputs, footing(inputs).opening(), (3, 1))
    assert [row.step for row in run.rows] == [3, 1]
    assert run.rows[0].live == {"left_front": 24, "left_back": 24, "neck": 98}
