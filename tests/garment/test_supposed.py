"""Where the plan says that everything should be by now."""

import pytest

from finishing_tui.garment.commands import Finish, Press, Refusal, TakeCount, TakeMeasure
from finishing_tui.garment.supposed import supposed
from tests.garment.edges import work_of
from tests.garment.test_consequences import crew_neck


def test_someone_who_follows_the_plan_is_always_as_planned() -> None:
    """At every press of the crew neck, the ledger of a knitter who does as she is told is the plan's."""
    paper = crew_neck()
    while paper.state.current is not None:
        plan = supposed(paper.state)
        assert plan is not None
        assert dict(plan.stitches) == dict(paper.state.ledger.stitches)
        work = work_of(paper.state)
        if work.complete:
            asked = paper.do(Finish())
            assert not isinstance(asked, Refusal)
        elif work.stages[work.at].counts:
            paper.did(TakeCount(work.stages[work.at].units))
        elif work.stages[work.at].unit == "value":
            paper.did(TakeMeasure("28"))
        else:
            paper.did(Press())


@pytest.mark.parametrize("counted", [14, 17])
def test_a_count_that_differs_stands_beside_what_the_plan_has(counted: int) -> None:
    """After another count the plan still has its own number there, and the ledger the real one."""
    paper = crew_neck()
    paper.did(TakeCount(counted))
    plan = supposed(paper.state)
    assert plan is not None
    assert (plan.on("front_held"), paper.state.ledger.on("front_held")) == (16, counted)
