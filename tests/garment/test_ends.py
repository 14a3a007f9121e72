"""The end of a section is a place where its count is offered, and stitches are what is ripped back to."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import Finish, Other, Press, TakeCount, TakeOut
from finishing_tui.garment.decide.may import may
from finishing_tui.garment.decide.rip import spot_with_left
from finishing_tui.garment.stops import JUST_COUNTED, LONG, due, stops
from finishing_tui.glance.faces import face_of
from finishing_tui.glance.values import SpotFace
from tests.examples import share
from tests.garment.edges import along, press_to_the_end, section, sections, work_of
from tests.garment.paper import Paper, plan_for
from tests.garment.test_open_edges import at, edges
from tests.recipe_texts import along as edge
from tests.recipe_texts import place, recipe, step
from tests.recipe_texts import section as section_of


@settings(max_examples=share(50))
@given(sections(least=12, most=40), st.data())
def test_a_long_section_is_counted_at_its_end(shape: tuple[int, int, str, str], data: st.DataObject) -> None:
    """Due where it has more than 15 and was not just counted; yes takes it once, and changes no stitch."""
    paper, counted = along(*shape), 0
    while not work_of(paper.state).complete:
        paper.press()
        if not work_of(paper.state).complete and data.draw(st.integers(0, 9)) == 0:
            mark = section(paper)[1].mark
            paper.did(TakeCount(mark.loops))
            counted = mark.loops - mark.within
    loops = section(paper)[1].mark.loops
    wanted = loops if shape[1] > LONG and loops - counted > JUST_COUNTED else None
    assert due(paper.state) == wanted
    assert stops(paper.state)
    face = face_of(paper.state, work_of(paper.state))
    assert (isinstance(face, SpotFace) and face.waits) == (wanted is not None)
    if wanted is not None:
        before = paper.state.ledger
        paper.did(TakeCount(wanted))
        assert due(paper.state) is None
        assert paper.state.ledger == before
        assert work_of(paper.state).complete
    paper.surely(Finish())


def test_an_edge_nobody_counted_is_counted_at_its_end_however_short() -> None:
    """12 of an open edge: due at its end; a press goes on into the held stitches, and it waits no longer."""
    paper = edges(12)
    while at(paper)[1].mark.loops < 12:
        paper.press()
    assert due(paper.state) == 12
    assert may(paper.state, Press())
    paper.press()
    assert due(paper.state) is None
    assert at(paper, 1)[1].mark.units == 1


def test_gaps_held_stitches_and_short_sections_pass_by_themselves() -> None:
    """No count is due behind any of them; the flag of what was passed uncounted stays small, past a marker too."""
    pick_up = step(
        "pick up and knit",
        "Pick up",
        edge("first edge", 24, 18, unit="row", marker="center"),
        edge("second edge", 24, 18, unit="row"),
        section_of(gap="the corner", extra=1),
        section_of(from_="back", along="back neck"),
        edge("third edge", 14, 10, unit="row"),
        onto="band",
    )
    places = place("band") + place("back", "holder", live=20)
    paper = Paper(plan_for(recipe("Edges", places, pick_up, step("work", "Work the band", on="band", rows=2))))
    found, flags = [], set()
    while not work_of(paper.state).complete:
        paper.press()
        if (expected := due(paper.state)) is not None and stops(paper.state):
            found.append((work_of(paper.state).at, expected))
        face = face_of(paper.state, work_of(paper.state))
        if isinstance(face, SpotFace) and not face.waits and "first edge" in face.halfway:
            flags.add((face.halfway, face.due))
    assert [(index, count) for index, count in found if count == 18] == [(1, 18), (3, 18)]
    assert {index for index, count in found if count != 18} <= {0, 2, 5}, "those at halfway"
    assert flags == {("first edge, 18: not counted", True)}


@given(sections(), st.data())
def test_stitches_are_ripped_back_to(shape: tuple[int, int, str, str], data: st.DataObject) -> None:
    """As many are left as were asked for, at the row of the last of them; what no row has says what there is."""
    paper = along(*shape)
    for _ in range(data.draw(st.integers(1, 30))):
        if not work_of(paper.state).complete:
            paper.did(Other() if data.draw(st.integers(0, 4)) == 0 else Press())
    stage, progress = section(paper)
    mark = progress.mark
    loops = data.draw(st.integers(0, mark.loops - mark.within))
    try:
        spot = spot_with_left(stage, progress, loops)
    except FinishingError as error:
        below, above = (int(word) for word in str(error).split("rip back to ")[1].split(" or to "))
        assert below < loops < above
        return
    if paper.do(TakeOut(0, 0, spot)) is None:
        assert section(paper)[1].mark.loops == loops
        assert paper.state.ledger.on("band") == loops
    else:
        assert (spot, loops) == (mark.units, mark.loops)


@pytest.mark.parametrize("loops", [-1, 13, 100_000])
def test_stitches_that_are_not_there_are_refused_with_the_range(loops: int) -> None:
    """With 12 on the needle it is 0 to 12."""
    paper = along(24, 18)
    while section(paper)[1].mark.loops < 12:
        paper.press()
    with pytest.raises(FinishingError, match="0 to 12"):
        spot_with_left(*section(paper), loops)


@pytest.mark.parametrize("tail", ["left end", "right end"])
def test_a_hole_is_closed_with_another_tail_that_hangs(tail: str) -> None:
    """The one taken gets shorter, the planned one does not; both are woven in; undo and ripping back are exact."""
    paper = _a_hole()
    before = paper.state
    paper.did(Other(tail))
    assert not paper.state.ledger.holes
    assert dict(paper.state.ledger.tails) == {**before.ledger.tails, tail: 1}
    assert paper.take_back() is None
    assert (paper.state.ledger, paper.state.steps) == (before.ledger, before.steps)
    assert paper.put_back() is None
    paper.surely(TakeOut(1))
    assert (paper.state.ledger, work_of(paper.state).stages) == (before.ledger, work_of(before).stages)
    paper.did(Other(tail)).surely(Finish())
    press_to_the_end(paper).surely(Finish())
    assert not paper.state.ledger.tails


@pytest.mark.parametrize("tail", ["", "no such", "start"])
def test_a_tail_that_does_not_hang_there_is_refused(tail: str) -> None:
    """What hangs is named; the planned one is no other."""
    paper = _a_hole()
    before = paper.state
    refusal = paper.do(Other(tail))
    assert refusal is not None
    assert not tail or "left end and right end" in refusal.sentence
    assert paper.state is before


def _a_hole() -> Paper:
    """Return a garment about to close its corner with the tail that began the pick-up; two more ends hang."""
    pick_up = step(
        "pick up and knit",
        "Pick up",
        edge("edge", 8, 6, unit="row"),
        section_of(gap="corner", extra=1),
        onto="band",
        yarn="new",
        tail="start",
    )
    close = step("close hole", "Close the corner", hole="corner", tail="start")
    weave = step("weave in", "Weave in", tails="all")
    text = recipe("A hole", place("band"), pick_up, close, weave, tails=["left end", "right end"])
    paper = Paper(plan_for(text))
    press_to_the_end(paper).surely(Finish())
    return paper


def test_a_whole_step_needs_no_count() -> None:
    """Pressed to the end and finished, nothing is asked: the count is offered, never wanted."""
    paper = press_to_the_end(along(32, 24))
    assert due(paper.state) == 24
    assert paper.do(Finish()) is None
