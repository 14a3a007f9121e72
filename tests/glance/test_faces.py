"""Faces: what is in the middle of the screen, for every unit, kind and pace."""

from datetime import UTC, datetime

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Ledger
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import ChoosePace, Finish, Other, Press, TakeCount, TakeMeasure
from finishing_tui.garment.events import Pace
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Standing, StepWork, fresh
from finishing_tui.glance import (
    ItemFace,
    MessageFace,
    PairFace,
    RoundFace,
    SpotFace,
    StitchFace,
    ValueFace,
    glance,
)
from finishing_tui.glance.coming_back import next_words
from finishing_tui.glance.faces import counted, face_of
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.model import Number, Place, Recipe
from finishing_tui.recipe.stage import Stage
from tests import strategies
from tests.examples import share
from tests.garment.edges import PACES, along, finish, reach, section, sections, work_of
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import NECKBAND, UNEQUAL

NOW = datetime(2024, 5, 1, 12, tzinfo=UTC)
FACES = {
    "spot": SpotFace,
    "stitch": StitchFace,
    "pair": PairFace,
    "round": RoundFace,
    "item": ItemFace,
    "value": ValueFace,
}
"""The face of every unit that a press can stand for."""


def spot_face(paper: Paper) -> SpotFace:
    """Return the face of the edge under the needles."""
    face = glance(paper.state, NOW).face
    assert isinstance(face, SpotFace)
    return face


@pytest.mark.parametrize("do", KINDS)
@settings(max_examples=share(12))
@given(data=st.data())
def test_every_stage_of_every_kind_has_a_face_and_a_plain_sentence(do: str, data: st.DataObject) -> None:
    """Whatever the kind, size, hand and ledger: the face of its unit, the word of two metres, and sentences."""
    here = data.draw(strategies.heres())
    step = strategies.model_of(KINDS[do], data.draw(strategies.steps(do)))
    try:
        stages = step.stages(here)
    except FinishingError:
        assume(condition=False)
    recipe = Recipe(
        format=1,
        title="one step",
        sizes=strategies.SIZES,
        number={name: Number(text=name, by_size=values) for name, values in strategies.NUMBERS.items()},
        place={name: Place(text=here.texts[name], kind="needle") for name in strategies.PLACES},
        step=(step,),
    )
    plan = Plan(name="x", title="x", recipe=recipe, source="x", text="", size=strategies.SIZES[here.size])
    for stage in stages:
        if not stage.units:
            continue
        state = State(plan, here.ledger, (Standing("under-way", alone(stage, here.ledger)),))
        face = face_of(state, alone(stage, here.ledger))
        assert type(face) is FACES[stage.unit]
        acts = face.acts if isinstance(face, SpotFace) else (face.unit if isinstance(face, RoundFace) else face.act,)
        assert all(acts)
        for words in (counted(face), next_words(face)):
            assert words
            assert words.isprintable()


def alone(stage: Stage, before: Ledger) -> StepWork:
    """Return the work of a step that is this stage alone, not begun."""
    return StepWork((stage,), (fresh(stage),), before)


@given(sections(), st.lists(st.sampled_from((*PACES, None, None, None, Other())), max_size=40))
def test_what_is_said_to_be_next_is_what_a_press_does(
    shape: tuple[int, int, str, str], acts: list[Pace | Other | None]
) -> None:
    """At every pace, after any stray: the picks and skips that are said are those that a press then makes."""
    paper = along(*shape)
    for act in acts:
        if work_of(paper.state).complete:
            break
        if act is not None:
            paper.did(act if isinstance(act, Other) else ChoosePace(act))
            continue
        face, (_, before) = spot_face(paper), section(paper)
        picks = sum(int(words.split()[1]) if " " in words else 1 for words in face.acts if words.startswith("PICK"))
        skips = sum(int(words.split()[1]) if " " in words else 1 for words in face.acts if words.startswith("SKIP"))
        paper.did(Press())
        _, after = section(paper)
        assert after.mark.loops - before.mark.loops == picks
        if after.mark.units < shape[0]:  # at the end the last skips pass by themselves
            passed = [spot for spot in range(before.mark.units + 1, after.mark.units + 1) if spot_skipped(paper, spot)]
            assert len(passed) == skips


def spot_skipped(paper: Paper, spot: int) -> bool:
    """Return whether a spot was passed without a loop."""
    work = work_of(paper.state)
    if work.complete:
        return False
    return spot_face(paper).edge.sort(spot) == "skipped"


def test_the_edge_is_drawn_spot_by_spot() -> None:
    """3 of every 4, two picked, one skipped against the plan: passed, strayed and to come can be told apart."""
    paper = along(8, 6).press(2).did(Other())
    edge = spot_face(paper).edge
    assert [edge.sort(spot) for spot in range(1, 9)] == [
        *("picked", "picked", "skipped"),
        *("to pick", "to pick", "to pick", "to pick", "to skip"),
    ]
    assert (edge.spots, edge.at, edge.half, edge.hand) == (8, 3, None, "right")
    assert edge.strayed == {3}
    edge = spot_face(along(4, 6).press(1)).edge
    assert [edge.sort(spot) for spot in (1, 2, 3, 4)] == ["picked", "to double", "to pick", "to double"]


def test_the_sections_beside_an_edge_are_named() -> None:
    """What it begins and ends at, for both hands in the order they walk."""
    for hand, beside in (("right", ("", "left corner")), ("left", ("slipped edge", "right corner"))):
        paper = reach(Paper(plan_for(NECKBAND, hand="left" if hand == "left" else "right")), 6)
        if hand == "left":
            paper.press(9)  # the marker at the end of the slipped edge is one of them
        edge = spot_face(paper).edge
        assert (edge.before, edge.after) == beside
        assert edge.hand == hand


@pytest.mark.parametrize(
    ("pace", "acts", "then"),
    [
        ("loop", [("PICK",), ("PICK",), ("PICK",), ("SKIP 1", "PICK")], ["then pick", "then pick", "then skip"]),
        ("spot", [("PICK",), ("PICK",), ("PICK",), ("SKIP",)], ["then pick", "then pick", "then skip", "then pick"]),
        ("run", [("PICK 3", "SKIP 1"), ("PICK 3", "SKIP 1")], ["then pick", "last of this section"]),
    ],
)
def test_the_word_of_two_metres_at_every_pace(pace: str, acts: list[tuple[str, ...]], then: list[str]) -> None:
    """3 of every 4 from 8: what to do, and what follows it."""
    paper = along(8, 6)
    if pace in {"spot", "run"}:
        paper.did(ChoosePace("spot" if pace == "spot" else "run"))
    seen = []
    for _ in acts:
        face = spot_face(paper)
        seen.append((face.acts, face.then))
        paper.did(Press())
    assert [one for one, _ in seen] == acts
    assert [one for _, one in seen][: len(then)] == then


def test_a_recount_is_announced_due_and_remembered() -> None:
    """24 from 32: at row 16, then due, then what was counted; after one the rhythm says from where it goes."""
    paper = along(32, 24)
    assert (spot_face(paper).halfway, spot_face(paper).due) == ("count at halfway, row 16", False)
    paper.press(13)
    assert (spot_face(paper).halfway, spot_face(paper).due) == ("halfway: count, it should be 13", True)
    paper.did(TakeCount(12, answer="loops"))
    assert (spot_face(paper).halfway, spot_face(paper).due) == ("counted 12 at row 17", False)
    assert spot_face(paper).rhythm.startswith("from row 18: ")
    assert (spot_face(paper).count, spot_face(paper).target, spot_face(paper).spot) == (12, 24, 17)
    assert counted(spot_face(paper)) == "12 of 24 stitches, row 17 of 32"


def test_what_was_not_counted_at_half_way_is_not_called_half_way_for_ever() -> None:
    """Near the end it is said that it was not counted there, with what the presses say; it is due all the same."""
    paper = along(32, 24).press(22)
    face = spot_face(paper)
    assert face.spot > 24
    assert (face.halfway, face.due) == ("count due: halfway was row 16", True)


@pytest.mark.parametrize(("pace", "reached"), [("spot", 16), ("loop", 17), ("run", 16)])
def test_counting_is_the_next_thing_until_a_press_carries_on(pace: Pace, reached: int) -> None:
    """24 from 32: at halfway, row 16, or where the press that came there ended; it stays due for the whole section."""
    paper = along(32, 24).did(ChoosePace(pace))
    seen = []
    while not work_of(paper.state).complete:
        face = spot_face(paper)
        seen.append((face.spot, face.waits, face.due))
        paper.did(Press())
    assert [spot for spot, waits, _ in seen if waits] == [reached]
    assert [spot for spot, _, due in seen if due] == [spot for spot, *_ in seen if spot >= reached]


def test_the_faces_of_a_garment_on_its_way() -> None:
    """A checklist, pairs, a count, stitches, rounds with their shaping, a value: each with its figures."""
    paper = Paper(plan_for(NECKBAND))
    face = glance(paper.state, NOW).face
    assert isinstance(face, ItemFace)
    assert (face.done, face.items[1]) == (0, "The same number on each: front shoulder 5, back shoulder 5.")
    face = glance(reach(paper, 2).press(2).state, NOW).face
    assert isinstance(face, PairFace)
    assert (face.count, face.of, face.front, face.front_left, face.back_left) == (2, 5, "front shoulder", 3, 3)
    face = glance(reach(paper, 4).press().state, NOW).face
    assert isinstance(face, StitchFace)
    assert (face.act, face.count, face.of) == ("COUNT", 1, 6)
    face = glance(reach(paper, 8).state, NOW).face
    assert isinstance(face, RoundFace)
    assert (face.unit, face.count, face.of, face.stitches) == ("round", 0, 3, 36)
    assert (face.said, face.coming) == ("", "round 2: decrease 2 in the corner (k2tog): leaves 34")
    face = glance(paper.press().state, NOW).face
    assert isinstance(face, RoundFace)
    assert (face.said, face.coming) == ("decrease 2 in the corner (k2tog): leaves 34", "")
    face = glance(reach(paper, 18).press().state, NOW).face
    assert isinstance(face, ValueFace)
    assert (face.unit, face.value, counted(face)) == ("cm", "", "nothing typed yet")
    face = glance(paper.did(TakeMeasure("61")).state, NOW).face
    assert face == MessageFace("CHECK", "Check it, then press enter.", mood="to do")
    face = glance(paper.did(Finish()).state, NOW).face
    assert isinstance(face, MessageFace)
    assert (face.act, face.mood) == ("FINISHED", "done")


def test_what_is_left_over_at_the_end_is_said() -> None:
    """Every step finished though one was not worked: not good news."""
    paper = reach(Paper(plan_for(NECKBAND)), 17)
    paper.surely(Finish())
    finish(paper)
    assert paper.state.current is None
    face = glance(paper.state, NOW).face
    assert isinstance(face, MessageFace)
    assert (face.act, face.mood) == ("LOOK", "in the way")


def test_a_step_that_cannot_be_begun_says_why() -> None:
    """The join was left undone, so the last loop cannot be bound off: what is missing is named in the middle."""
    paper = reach(Paper(plan_for(UNEQUAL)), 1)
    paper.surely(Finish())
    face = glance(paper.state, NOW).face
    assert isinstance(face, MessageFace)
    assert (face.act, face.mood) == ("WAIT", "in the way")
    assert "the pin is empty; its stitches were to be bound off" in face.words
    refusal = paper.do(Press())
    assert refusal is not None
    assert face.words == sentence(refusal.sentence)
