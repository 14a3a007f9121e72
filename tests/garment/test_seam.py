"""The other key in a seam: two bars at once from one edge, and what is left of both edges shared out anew."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.garment.commands import Finish, Other, Press, Refusal
from finishing_tui.glance import offers
from tests.garment.paper import Paper, plan_for

SEAM = """
format = 1
title  = "Side seam"
sizes  = ["one"]
tails  = ["side seam"]

[[step]]
do    = "seam"
title = "Sew the side seam"
tail  = "side seam"
sides = [{ spots = 20, along = "front" }, { spots = 22, along = "back" }]

[[step]]
do    = "weave in"
title = "Weave in"
"""


def taken(paper: Paper) -> list[int]:
    """Return how many bars of each edge the pairs done so far have taken."""
    work = paper.state.steps[0].work
    assert work is not None
    done = work.progress[0].mark.units
    return [sum(bars[:done]) for bars in work.stages[0].bars]


@given(st.lists(st.sampled_from(("", "", "front", "back")), max_size=22))
def test_every_bar_is_taken_once_whatever_the_keys(keys: list[str]) -> None:
    """One bar each by a press as planned, two by x; at the end both edges are used up, and all can be taken back."""
    paper = Paper(plan_for(SEAM))
    first = paper.state
    for side in keys:
        before = taken(paper)
        refusal = paper.do(Other(side) if side else Press())
        if side and refusal is None:
            here = taken(paper)
            doubled = ("front", "back").index(side)
            assert (here[doubled] - before[doubled], here[1 - doubled] - before[1 - doubled]) == (2, 1)
    while paper.do(Press()) is None:
        pass
    assert taken(paper) == [20, 22]
    assert paper.replayed() == paper.state
    assert paper.state.ledger.tails == {"side seam": 1}
    while paper.state.top and paper.state.steps[0].work != first.steps[0].work:
        assert paper.take_back() is None
    assert (paper.state.steps, paper.state.ledger) == (first.steps, first.ledger)


def test_the_offer_names_both_edges() -> None:
    """What may be done next has both edges to choose from, and x without one of them is refused."""
    paper = Paper(plan_for(SEAM))
    (other,) = (offer for offer in offers(paper.state) if offer.action == "other")
    assert other.sides == (("front", "front"), ("back", "back"))
    refusal = paper.do(Other())
    assert isinstance(refusal, Refusal)
    assert "the front or the back" in refusal.sentence


@pytest.mark.parametrize("side", ["front", "back"])
def test_two_at_once_is_refused_where_bars_run_out(side: str) -> None:
    """At the last pair two at once would leave the other edge unfinished, or there are no two."""
    paper = Paper(plan_for(SEAM)).press(19)
    refusal = paper.do(Other(side))
    assert isinstance(refusal, Refusal)
    assert "1" in refusal.sentence
    paper.press().did(Finish())
    assert paper.state.steps[0].status == "done"
