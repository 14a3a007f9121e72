"""How the work lies: said for as long as it is true, and drawn as it is said."""

from dataclasses import replace
from datetime import UTC, datetime
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.ledger import Posture
from finishing_tui.garment.commands import Finish
from finishing_tui.garment.state import State
from finishing_tui.glance.glancing import glance
from finishing_tui.glance.lying import lying
from finishing_tui.glance.posture import lie, posture_words
from tests.craft.test_lies import SIXTEEN
from tests.garment.edges import work_of
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import along, place, recipe, step

NOW = datetime(2026, 1, 1, tzinfo=UTC)


def shoulder_and_neck(**work: int) -> str:
    """Return a recipe that joins a shoulder and picks up a neckband; ``work``: how much of it is worked."""
    return recipe(
        "A shoulder and a neckband",
        place("front", "holder", "front shoulder", live=4),
        place("back", "holder", "back shoulder", live=4),
        place("neck"),
        step(
            "arrange",
            "Right sides together",
            facing="wrong",
            together="right",
            near="the front",
            yarn_at="the left shoulder",
        ),
        step("join", "Join the shoulder", front="front", back="back", ridge="inside", yarn="new"),
        step("arrange", "Turn it out", facing="right", yarn_at="the left shoulder"),
        step("pick up and knit", "Pick up", along("front neck", 6, 4, unit="row"), onto="neck"),
        step("work", "Work the band", on="neck", **work),
        step("bind off", "Bind off", from_="neck"),
    )


def laid(step: int = 0, presses: int = 0, **work: int) -> State:
    """Return the shoulder and neckband at ``step`` with so many presses."""
    paper = Paper(plan_for(shoulder_and_neck(**work or {"rounds": 2})))
    while paper.state.current is not None and paper.state.current < step:
        work_of = paper.state.steps[paper.state.current].work
        if work_of is not None and work_of.complete:
            paper.did(Finish())
        else:
            paper.press()
    return paper.press(presses).state


@pytest.mark.parametrize(
    ("step", "presses", "words"),
    [
        (0, 0, ""),
        (0, 1, "wrong side facing · right sides together · the front nearer to you · yarn at the left shoulder"),
        (1, 0, "wrong side facing · right sides together · the front nearer to you · yarn at the left shoulder"),
        (1, 2, "wrong side facing · right sides together · the front nearer to you · yarn at the working needle"),
        (2, 0, "wrong side facing"),
        (2, 1, "right side facing · yarn at the left shoulder"),
        (3, 0, "right side facing · yarn at the left shoulder"),
        (3, 1, "right side facing · yarn at the neck needle"),
        (4, 1, "right side facing · yarn at the neck needle"),
        (5, 2, "right side facing · yarn at the neck needle"),
    ],
)
def test_only_what_is_still_true_is_said(step: int, presses: int, words: str) -> None:
    """The yarn goes along with the hands; what lay together is sewn, and comes apart; the side stays as it was laid."""
    assert posture_words(lie(laid(step=step, presses=presses))) == words


def test_once_rows_are_turned_no_side_is_said_to_face() -> None:
    """Before the first row the right side faces; after it, which one does depends on the row, so neither is said."""
    assert lie(laid(4, rows=2)).facing == "right"
    assert lie(laid(4, 1, rows=2)).facing == ""


def test_taking_it_back_says_again_what_was_so() -> None:
    """The lie follows from the state alone: with the first loop taken back the yarn is where it was said to be."""
    paper = Paper(plan_for(shoulder_and_neck(rounds=2)))
    paper.press()
    paper.did(Finish())
    before = lie(paper.state)
    paper.press(2)
    assert lie(paper.state) != before
    assert paper.take_back() is None
    assert paper.take_back() is None
    assert lie(paper.state) == before


def shoulder(side: str, near: str, ridge: str, end: str, hand: Literal["right", "left"]) -> Paper:
    """Return a shoulder laid, checked, counted and slipped onto another needle before it is joined."""
    text = recipe(
        "A shoulder",
        place("front", text="needle with the front", live=4),
        place("back", text="needle with the back", live=4),
        place("held", "holder", "holder", live=1),
        step(
            "arrange", "Lay it", together="right" if ridge == "inside" else "wrong", yarn_at=end and f"the {end} edge"
        ),
        step("check", "Check it", items=["Not twisted."]),
        step("count", "Count the front", place="front", count=4),
        step("move", "One more onto the front", from_="held", to="front"),
        step("move", "And back", from_="front", to="held", count=1),
        step(
            "join",
            f"Join the {side} shoulder",
            front=near,
            back="back" if near == "front" else "front",
            ridge=ridge,
            yarn="new",
        ),
    )
    return Paper(replace(plan_for(text), hand=hand))


@pytest.mark.parametrize(("side", "near", "together", "hand", "end"), SIXTEEN)
def test_a_shoulder_lies_as_it_was_laid_until_it_is_joined(
    side: str, near: str, together: str, hand: Literal["right", "left"], end: str
) -> None:
    """Through a check, a count and moves, in each of the sixteen ways; the near needle and the end are worked out."""
    paper = shoulder(side, near, "inside" if together == "right" else "outside", "", hand)
    paper.press()
    said = f"{together} sides together · the needle with the {near} nearer to you · yarn at the {end}"
    at = 0
    while at < 5:
        assert posture_words(lie(paper.state)) == said
        picture = glance(paper.state, NOW).lying
        assert picture.words == said
        below = picture.lines[-1].drawn
        assert (below.startswith("~~"), below.endswith("~~")) == (hand == "left", hand == "right")
        shown = below.strip("~ ").replace("you", " you ").split()
        assert shown[0 if hand == "left" else -1] == end
        assert set(shown) == {"armhole", "you", "neck"}
        paper.did(Finish())
        at = paper.state.current or 0
        while at < 5 and not work_of(paper.state).complete:
            paper.press()
    assert posture_words(lie(paper.state)) == said
    paper.press()
    assert posture_words(lie(paper.state)) == said.replace(f"the {end}", "the working needle")


def test_an_older_recipe_that_lays_the_yarn_at_the_other_end_is_put_right() -> None:
    """The end is the one where the hands find the tips; the audit says that the recipe is wrong."""
    paper = shoulder("left", "front", "inside", "armhole", "right").press()
    assert lie(paper.state).yarn_at == "the neck"
    paper = shoulder("left", "back", "inside", "armhole", "right").press()
    assert lie(paper.state).yarn_at == "the armhole edge"


SIDES = st.sampled_from(("right", "wrong", ""))
TEXTS = st.sampled_from(("", "the front", "[b]a name[/b]", "the right", "the left", "each corner"))


@given(facing=SIDES, together=SIDES, near=TEXTS, on_top=TEXTS, yarn_at=TEXTS)
def test_the_picture_says_what_the_words_say(facing: str, together: str, near: str, on_top: str, yarn_at: str) -> None:
    """All lines are as wide; the side that faces is nearest to the knitter, and the sides that touch lie inside."""
    picture = lying(Posture(facing, together, near, on_top, yarn_at))
    if (not facing and not together) or (facing and together == facing):
        assert picture == ()
        return
    assert len({len(line.drawn) for line in picture}) == 1
    assert len(picture) == (5 if together else 3)
    stitch = {"right": "╲╱", "wrong": "∪"}
    if facing:
        assert stitch[facing] in picture[-2].drawn
    if together:
        assert all(stitch[together] in line.drawn for line in picture[1:3])
    words = " ".join(line.words for line in picture)
    assert all(text in words for text in (near, on_top, yarn_at))
    drawn = [line.drawn for line in picture if "~" in line.drawn]
    assert drawn in ([], [picture[-1].drawn]), "it stands on the line of its words"
    assert yarn_at or not drawn


@pytest.mark.parametrize(("at", "side"), [("the right", "right"), ("the left-hand end", "left")])
def test_the_yarn_hangs_at_the_end_that_is_named(at: str, side: str) -> None:
    """Where the words name an end of the work, the yarn is drawn at that one; the wearer's left is no end of it."""
    line = lying(Posture("right", yarn_at=at))[-1].drawn
    assert (line.rstrip().endswith("~~"), line.lstrip().startswith("~~")) == (side == "right", side == "left")
    assert "~" not in lying(Posture("right", yarn_at="the left shoulder"))[-1].drawn
