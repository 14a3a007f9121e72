from pathlib import Path

import pytest

from finishing_tui import shipped
from finishing_tui.garment.commands import AlreadyAt, Press, TakeOut, TakeUp
from finishing_tui.garment.events import Begun, DoneElsewhere
from tests import recipe_texts as written
from tests.garment.edges import reach
from tests.garment.paper import Paper, plan_for

PICK_UP = 12
"""The step of the crew neck that picks the neckband up."""
BIND_OFF = 18
"""The step that binds it off."""


def crew_neck() -> Paper:
    """Return the shipped crew neck in size M."""
    return Paper(plan_for(Path(shipped.recipe("crew-neck")).read_text(encoding="utf-8"), "M"))


def test_the_ledger_is_what_working_the_steps_here_would_have_left() -> None:
    """Both ways to the bind-off lead to the same stitches, tails, markers and holes at the same places."""
    elsewhere = crew_neck().did(AlreadyAt(BIND_OFF))
    here = reach(crew_neck(), BIND_OFF)
    assert elsewhere.state.current == BIND_OFF
    assert elsewhere.state.ledger == here.state.ledger
    assert [one.status for one in elsewhere.state.steps] == [one.status for one in here.state.steps]
    assert [type(event) for event in elsewhere.latest] == [DoneElsewhere, Begun]


def test_also_from_the_middle_of_a_step() -> None:
    """What the step under way still had to enter is entered too."""
    paper = reach(crew_neck(), PICK_UP).press(10)
    assert paper.did(AlreadyAt(BIND_OFF)).state.ledger == reach(crew_neck(), BIND_OFF).state.ledger


def test_a_step_that_cannot_be_begun_yet_asks_whether_the_others_were_done_elsewhere() -> None:
    """Taking up the bind-off at once is refused with what is missing; the same once more takes the rest as done."""
    paper = crew_neck()
    refusal = paper.do(TakeUp(BIND_OFF))
    assert refusal is not None
    assert refusal.sentence.startswith("step 19 cannot be begun: the neck needle is empty")
    assert refusal.again == AlreadyAt(BIND_OFF)


def test_it_can_be_taken_back() -> None:
    """Taking it back leads back to where it was, and putting it back to the same step again."""
    paper = crew_neck().press(2)
    before = paper.state
    after = paper.did(AlreadyAt(PICK_UP)).state
    assert paper.take_back() is None
    assert (paper.state.ledger, paper.state.steps, paper.state.current) == (before.ledger, before.steps, before.current)
    assert paper.put_back() is None
    assert (paper.state.ledger, paper.state.steps, paper.state.current) == (after.ledger, after.steps, after.current)
    assert paper.replayed() == paper.state


def test_not_at_a_step_that_was_begun_here() -> None:
    """Nor at one there is not."""
    paper = crew_neck()
    assert paper.do(AlreadyAt(0)) is not None
    assert paper.do(AlreadyAt(99)) is not None
    assert paper.do(Press()) is None


MOVES = written.recipe(
    "Three moves",
    written.place("a", text="first needle", live=10),
    written.place("b", text="second needle"),
    written.place("c", text="third needle"),
    written.step("move", "First move", from_="a", to="b"),
    written.step("move", "Second move", from_="b", to="c"),
    written.step("check", "Look at it", items=["It lies flat."]),
)


@pytest.mark.parametrize("pressed", [0, 4, 10])
def test_what_was_done_elsewhere_falls_with_what_is_taken_out_before_it(pressed: int) -> None:
    """Taken out to the first move, begun here or not, the second falls; both can be worked again, and nothing is left.

    A step under way that was then done elsewhere is no other.
    """
    paper = Paper(plan_for(MOVES)).press(pressed)
    paper.did(AlreadyAt(2))
    assert paper.state.ledger.live == {"c": 10}
    assert paper.state.order == (0, 1, 2)
    refusal = paper.do(TakeOut(0))
    assert refusal is not None
    assert refusal.sentence.startswith("this undoes steps 2 and 3 too")
    paper.surely(TakeOut(0))
    assert paper.state.ledger.live == {"a": 10}
    assert [one.status for one in paper.state.steps] == ["under-way", "to-come", "to-come"]
    assert reach(paper, 2).state.ledger.live == {"c": 10}


def test_a_step_done_elsewhere_can_be_taken_out_itself() -> None:
    """Taking it up again says to rip back to it, and that can be done: to any stitch of it."""
    paper = Paper(plan_for(MOVES)).did(AlreadyAt(2))
    refusal = paper.do(TakeUp(1))
    assert refusal is not None
    assert "rip back to it" in refusal.sentence
    paper.surely(TakeOut(1, 0, 6))
    assert paper.state.ledger.live == {"b": 4, "c": 6}
    assert paper.state.current == 1


def test_everything_done_elsewhere_can_be_taken_out_step_by_step() -> None:
    """From the bind-off back through every step of the crew neck: each leaves what its working here would have left."""
    paper, here = crew_neck().did(AlreadyAt(BIND_OFF)), reach(crew_neck(), BIND_OFF)
    for step in reversed(here.state.order):
        for one in (paper, here):
            if step != one.state.current:
                one.surely(TakeOut(step))
        assert paper.state.ledger.live == here.state.ledger.live
        assert paper.state.ledger.tails == here.state.ledger.tails
        assert paper.state.order == here.state.order
