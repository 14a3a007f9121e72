"""What is spoken: short, of what the hands do next, and no more than was asked for."""

import re
from datetime import UTC, datetime
from typing import get_args

import hypothesis.strategies as st
import pytest
from hypothesis import given

from finishing_tui.garment.commands import ChoosePace, Finish, Press
from finishing_tui.glance import glance
from finishing_tui.glance.recounts import recount_view
from finishing_tui.glance.rings import Ring, ring
from finishing_tui.glance.spoken import (
    RINGS,
    Speech,
    next_word,
    spoken,
    spoken_answers,
    spoken_difference,
    spoken_question,
)
from finishing_tui.glance.values import Glance, PairFace
from tests.garment.edges import along
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import NECKBAND
from tests.garment.test_recipes_by_commands import MIDDLE, taken, unit, work_of

NOW = datetime(2024, 5, 1, 12, tzinfo=UTC)

HOW = st.sampled_from(get_args(Speech))


def pressed(paper: Paper, times: int = 1) -> tuple[Glance, Glance, Ring | None]:
    """Return what there was to see before and after presses, and what the bell rang for at the last."""
    for _ in range(times - 1):
        assert paper.do(Press()) is None
    before, was = paper.state, glance(paper.state, NOW)
    assert paper.do(Press()) is None
    return was, glance(paper.state, NOW), ring(before, paper.state)


def test_after_a_press_the_next_word_and_the_count_are_spoken() -> None:
    """Along 24 rows with 18 loops, 3 of every 4: the 14th loop, as it would be said aloud."""
    was, now, rung = pressed(along(24, 18), 14)
    assert spoken(was, now, "counts", ring=rung) == "pick, 14 of 18"
    assert spoken(was, now, "off", ring=rung) == ""


def test_only_a_new_word_is_spoken_where_that_is_all_that_is_wanted() -> None:
    """While the next word stays nothing is said; at the end of a run that is said, with what comes then."""
    paper = along(24, 18)
    was, now, rung = pressed(paper)
    assert spoken(was, now, "next", ring=rung) == ""
    was, now, rung = pressed(paper, 2)
    assert rung == "run"
    assert spoken(was, now, "next", ring=rung) == f"end of the repeat. {next_word(now.face)}"


@given(HOW, st.integers(1, 12))
def test_more_is_spoken_only_where_more_is_wanted(how: Speech, times: int) -> None:
    """Each setting speaks all that a sparer one does, and nothing at all is spoken where it is off."""
    was, now, rung = pressed(along(16, 12), times)
    order = get_args(Speech)
    texts = [spoken(was, now, one, ring=rung, said="noted") for one in order]
    assert texts[0] == ""
    here = spoken(was, now, how, ring=rung, said="noted")
    assert here == texts[order.index(how)]
    for sparer in texts[: order.index(how)]:
        assert all(word in here.casefold() for word in sparer.casefold().rstrip(".").split(". ")), (sparer, here)
    if how != "off" and rung is not None:
        assert here.startswith(RINGS[rung])


def test_at_run_pace_a_run_is_spoken() -> None:
    """3 of every 4, run by run: what the hands do next, then the count."""
    paper = along(24, 18).did(ChoosePace("run"))
    was, now, rung = pressed(paper)
    assert rung == "run"
    assert spoken(was, now, "counts", ring=rung) == "end of the repeat. pick 3, skip 1, 3 of 18"


def test_half_way_the_loops_are_asked_for() -> None:
    """At row 12 of 24 it is said that it is time to count, whatever is wanted otherwise."""
    was, now, rung = pressed(along(24, 18, pace="spot"), 12)
    assert rung == "recount"
    assert spoken(was, now, "counts", ring=rung).startswith("count the stitches. ")
    assert spoken(was, now, "next", ring=rung).startswith("count the stitches. ")


@given(st.integers(1, 12))
def test_what_is_taken_back_to_is_spoken(times: int) -> None:
    """After so many presses and one taken back: the count it is back to, and what comes next again."""
    paper = along(24, 18)
    first, was, _ = pressed(paper, times)
    assert paper.take_back() is None
    now = glance(paper.state, NOW)
    assert now.face == first.face
    begins, word = f"back to {times - 1}. ", next_word(now.face)
    assert spoken(was, now, "counts", back=True).startswith(begins + word)
    assert spoken(was, now, "all", back=True, said="Taken back: pick.").startswith(f"Taken back: pick. {begins}{word}")


@given(HOW)
def test_what_a_count_led_to_is_spoken_whenever_anything_is(how: Speech) -> None:
    """What is said aloud does not wait for all to be wanted; what is only noted does."""
    seen = glance(along(8, 6).state, NOW)
    assert spoken(seen, seen, how, said="4 counted, as planned.", aloud=True).startswith(
        "" if how == "off" else "4 counted, as planned"
    )
    assert bool(spoken(seen, seen, how, said="Noted.")) is (how == "all")


@given(HOW)
def test_a_refusal_is_spoken_whenever_anything_is(how: Speech) -> None:
    """Why nothing was done is all that is spoken then."""
    seen = glance(along(8, 6).state, NOW)
    said = spoken(seen, seen, how, ring="refused", said="A count is a whole number.", refused=True)
    assert said == ("" if how == "off" else "A count is a whole number.")


@given(HOW)
def test_nothing_is_spoken_twice(how: Speech) -> None:
    """Where nothing is another way than before, as after a digit, nothing is spoken."""
    seen = glance(along(8, 6).state, NOW)
    assert spoken(seen, seen, how) == ""


def test_every_step_of_a_garment_has_something_to_say() -> None:
    """From its first press to its last, each face is spoken in words."""
    paper = Paper(plan_for(NECKBAND))
    said: set[str] = set()
    while paper.state.current is not None and len(said) < 400:
        seen = glance(paper.state, NOW)
        told = spoken(None, seen, "all")
        assert told.startswith(f"step {seen.step}, {seen.heading}. ")
        said.add(told)
        if paper.do(Press()) is not None and paper.do(Finish()) is not None:
            break
    assert len(said) > 20


@pytest.mark.parametrize(("counted", "begins"), [(5, "3 short: you counted 5, "), (9, "1 too many: you counted 9, ")])
def test_a_recount_says_how_far_it_is_off(counted: int, begins: str) -> None:
    """The difference and both numbers, and then every way with how it lies."""
    paper = along(24, 18)
    pressed(paper, 8)
    view = recount_view(paper.state, counted, "loops")
    told = spoken_answers(view.answers)
    assert told.startswith(begins)
    for number, way in enumerate(view.answers.rows, 1):
        assert f"{number}: {way.text}, {view.answers.lies(way)}{way.note and f', {way.note}'}." in told


@pytest.mark.turns(of=4)
@pytest.mark.parametrize(("name", "size"), MIDDLE)
def test_every_state_of_every_recipe_can_be_spoken(name: str, size: str) -> None:
    """All through a shipped recipe there is something to say: one line, with no word that would be spelt out."""
    paper = taken(name, size, pace="run")
    while paper.state.current is not None:
        seen = glance(paper.state, NOW)
        for how in ("next", "counts", "all"):
            told = spoken(None, seen, how)
            assert told.strip()
            assert told.isprintable()
            assert not re.search(r"[A-Z]{2}", told), told
        if isinstance(seen.face, PairFace):
            assert all(move.rstrip(".") in spoken(None, seen, "all") for move in seen.face.moves)
        work = work_of(paper)
        if work is not None and work.complete:
            paper.surely(Finish())
        else:
            unit(paper)
    assert spoken(None, glance(paper.state, NOW), "next")


def test_a_question_is_spoken_with_the_numbers_of_its_answers() -> None:
    """So that one of them can be taken with the eyes elsewhere."""
    assert spoken_question("this affects later steps", ["leave it", "go on."]) == (
        "This affects later steps. 1: leave it. 2: go on."
    )
    told = spoken_difference(11, 12, ["I missed a press, or pressed twice", "Count again"])
    assert told.startswith(
        "You counted 11; the count here is 12. What happened? 1: I missed a press, or pressed twice. 2: Count again."
    )
