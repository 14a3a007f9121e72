"""The other key in a seam: two bars at once from one edge, and what is left of both edges shared out anew."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.garment.commands import Finish, Other, Press, Refusal, TakeOut
from finishing_tui.recipe.kinds.seam import Seam
from finishing_tui.talk.offers import offers
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import recipe, step


def seam(front: int, back: int, *after: str) -> str:
    """Return a recipe of one seam between two edges of so many rows."""
    sides = [{"spots": front, "along": "front"}, {"spots": back, "along": "back"}]
    sewn = step("seam", "Sew the side seam", tail="side seam", sides=sides)
    return recipe("Side seam", sewn, *after, tails=["side seam"])


EVEN = seam(20, 20)

SEAM = seam(20, 22, step("weave in", "Weave in"))


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


@pytest.mark.parametrize("pairs", range(6))
def test_taken_out_before_two_at_once_the_seam_is_as_planned(pairs: int) -> None:
    """Five pairs and two at once from the front, out to any of the five: twenty pairs of one and one are sewn again."""
    paper = Paper(plan_for(EVEN))
    first = paper.state.steps[0].work
    paper.press(5).did(Other("front"), TakeOut(0, 0, pairs))
    assert first is not None
    work = paper.state.steps[0].work
    assert work is not None
    assert work.stages == first.stages
    assert work.progress[0].mark.units == pairs
    paper.press(20 - pairs).did(Finish())
    assert taken(paper) == [20, 20]


def test_taken_out_it_is_as_it_was_begun_whatever_its_kind_makes_of_it_now(monkeypatch: pytest.MonkeyPatch) -> None:
    """A begun step goes on by its own stages: nothing asks the kind for them again."""
    paper = Paper(plan_for(SEAM))
    first = paper.state.steps[0].work
    assert first is not None
    paper.press(5).did(Other("front")).press(2)
    monkeypatch.setattr(Seam, "stages", lambda *_: ())
    paper.did(TakeOut(0, 0, 4))
    work = paper.state.steps[0].work
    assert work is not None
    assert work.stages == first.stages


@given(st.lists(st.sampled_from(("", "", "", "front", "back")), min_size=1, max_size=22), st.data())
def test_wherever_a_seam_is_taken_out_every_bar_is_taken_once(keys: list[str], data: st.DataObject) -> None:
    """What is sewn stays as it was sewn, and what is left of both edges comes out even; at its start it is as planned.

    Without the other key it is as planned anywhere.
    """
    paper = Paper(plan_for(SEAM))
    first = paper.state.steps[0].work
    for side in keys:
        paper.do(Other(side) if side else Press())
    before = paper.state.steps[0].work
    assert first is not None
    assert before is not None
    pairs = data.draw(st.integers(0, before.progress[0].mark.units))
    paper.do(TakeOut(0, 0, pairs))
    work = paper.state.steps[0].work
    assert work is not None
    assert [bars[:pairs] for bars in work.stages[0].bars] == [bars[:pairs] for bars in before.stages[0].bars]
    assert [sum(bars) for bars in work.stages[0].bars] == [20, 22]
    if not pairs or not any(keys):
        assert work.stages == first.stages
    while paper.do(Press()) is None:
        pass
    assert taken(paper) == [20, 22]
