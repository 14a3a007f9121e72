"""Whole steps: begun, finished with doubts asked twice, taken up, left out; joins, held stitches, counts, measures."""

from dataclasses import replace

import pytest

from finishing_tui.craft.ledger import FOUND, MISSING, Posting
from finishing_tui.garment.commands import (
    ChoosePace,
    Command,
    Finish,
    LeaveOut,
    Other,
    PickUpGarment,
    Press,
    PutGarmentDown,
    PutRight,
    Replan,
    TakeBack,
    TakeCount,
    TakeMeasure,
    TakeOut,
    TakeUp,
    WriteNote,
)
from finishing_tui.garment.decide import DECIDES
from finishing_tui.garment.events import Finished, Noted, Recounted, SittingBegan, TakenBack, Valued
from finishing_tui.garment.evolve import DoesNotFit, Happening, evolve, sound
from finishing_tui.garment.labels import Label
from finishing_tui.garment.state import LONGEST_NOTE, MOST_HELD, MOST_KEPT, Note, Sitting
from finishing_tui.garment.work import Reached
from finishing_tui.glance.label_words import top_words
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.work import Work as WorkStep
from tests import recipe_texts as written
from tests.garment.edges import along, finish, press_to_the_end, reach, section, work_of
from tests.garment.paper import NOON, Paper, plan_for
from tests.garment.recipes import EDGE, NECKBAND, UNEQUAL


def at(step: int, text: str = NECKBAND, size: str = "") -> Paper:
    """Return a garment with every step before ``step`` done, and that one begun."""
    return reach(Paper(plan_for(text, size)), step)


def refused(paper: Paper, *words: str) -> None:
    """Press, and expect a refusal with these words."""
    refusal = paper.do(Press())
    assert refusal is not None
    for word in words:
        assert word in refusal.sentence


def test_every_recipe_here_comes_out_in_every_size_for_both_hands() -> None:
    """Worked through by presses alone, the ledger holds nothing at the end; a step of another size is passed over."""
    for text, size in ((NECKBAND, "small"), (NECKBAND, "large"), (EDGE, "one"), (UNEQUAL, "one")):
        for hand in ("right", "left"):
            paper = Paper(plan_for(text, size, hand="left" if hand == "left" else "right"))
            while paper.state.current is not None:
                finish(paper)
            assert paper.state.ledger.empty
            assert paper.state.steps[-1].status == ("to-come" if size == "small" else "done")
            refused(paper, "every step is done")
            assert paper.do(Finish()) is not None


def test_a_left_handed_knitter_walks_the_sections_in_reverse() -> None:
    """From the other end, and the section walked second is the mirror of the one walked first."""
    right, left = at(6), reach(Paper(plan_for(NECKBAND, hand="left")), 6)
    titles = [stage.title for stage in work_of(right.state).stages]
    assert [stage.title for stage in work_of(left.state).stages] == titles[::-1]
    first, second = (
        [stage.rhythm for stage in work_of(paper.state).stages if stage.spot == "row"] for paper in (right, left)
    )
    assert first == second
    assert first[0] is not None
    assert first[1] == first[0].mirrored()
    assert press_to_the_end(left).state.ledger == press_to_the_end(right).state.ledger


def test_every_command_is_decided() -> None:
    """There is one function for each, and none for anything else."""
    assert {one.__name__ for one in DECIDES} == {one.__name__ for one in Command.__subclasses__()}


def test_presses_never_roll_on_into_the_next_step() -> None:
    """At the end of a step a press is refused; enter brings the next one, begun."""
    paper = press_to_the_end(at(6))
    refused(paper, "complete", "finish it")
    paper.did(Finish())
    assert paper.state.current == 7
    assert work_of(paper.state).progress[0].mark == Reached()


def test_a_step_that_is_not_complete_is_asked_about_again() -> None:
    """Enter says how far it is; enter again, and it is done as it is, with the doubt in the record."""
    paper = at(8).press()
    refusal = paper.do(Finish())
    assert refusal is not None
    assert refusal.sentence == "rounds: 1 of 3 done"
    paper.did(Finish(sure=True))
    event = paper.latest[0]
    assert isinstance(event, Finished)
    assert event.although == (Label("unfinished", names=("rounds",), numbers=(1, 3)),)


def test_a_count_that_is_not_what_is_printed_is_asked_about_again() -> None:
    """The recipe expects 36 on the neck and a multiple of 2; with one loop too few it says so, twice over."""
    paper = at(6).press(10).press(2).did(Finish()).did(ChoosePace("run"))
    press_to_the_end(paper)
    paper.did(Finish())
    assert paper.state.current == 7
    paper.take_back()
    paper.did(TakeCount(35, "neck"))
    refusal = paper.do(Finish())
    assert refusal is not None
    assert "35 on the short circular needle, 36 expected" in refusal.sentence
    assert "35 on the short circular needle is not a multiple of 2" in refusal.sentence
    assert refusal.again is not None
    paper.did(refusal.again)


def test_an_expectation_that_cannot_be_worked_out_is_a_doubt() -> None:
    """With the knitter's own numbers a printed sum may fall below nothing: said, never a crash."""
    text = NECKBAND.replace("2 * side + centre + 2 * chains + 2", "(rows - 12) * 18")
    paper = Paper(plan_for(text, "small", own={"rows": 11}))
    press_to_the_end(reach(paper, 6))
    refusal = paper.do(Finish())
    assert refusal is not None
    assert "cannot be worked out" in refusal.sentence


def test_another_step_is_taken_up_if_the_ledger_bears_it() -> None:
    """The marker may go in before the pick-up; the bind-off may not, and the refusal names what is missing."""
    paper = at(6)
    refusal = paper.do(TakeUp(11))
    assert refusal is not None
    assert refusal.sentence == (
        "step 12 cannot be begun: the short circular needle has 0 stitches, 3 were to be bound off"
    )
    paper.did(TakeUp(7)).press()
    assert paper.state.ledger.markers == ("start of round",)
    paper.did(TakeUp(6))
    assert paper.state.steps[7].status == "under-way"
    for step in (-1, 20, 10**9, 6, 0):
        assert paper.do(TakeUp(step)) is not None
        assert step == 6 or paper.do(LeaveOut(step)) is not None


def test_a_step_of_another_size_is_neither_taken_up_nor_left_out() -> None:
    """The last step is for the large size; in the small one it is refused, and it is not offered."""
    paper = Paper(plan_for(NECKBAND, "small"))
    for command in (TakeUp(19), LeaveOut(19)):
        refusal = paper.do(command)
        assert refusal is not None
        assert "size small" in refusal.sentence


def test_a_step_left_out_may_be_taken_up_again_where_it_was() -> None:
    """Left out in the middle: asked twice, passed over; taken up again it is under way with what was done of it."""
    paper = at(8).press()
    refusal = paper.do(LeaveOut(8))
    assert refusal is not None
    assert refusal.again == LeaveOut(8, sure=True)
    paper.did(refusal.again)
    seen = [(paper.state.current, paper.state.steps[8].status)]
    paper.did(TakeUp(8))
    seen.append((paper.state.current, paper.state.steps[8].status))
    paper.press(2).did(Finish())
    seen.append((paper.state.current, paper.state.steps[8].status))
    assert seen == [(9, "left-out"), (8, "under-way"), (9, "done")]


def test_a_step_left_out_before_it_was_begun_begins_when_it_is_taken_up() -> None:
    """Nothing of it was entered in between."""
    paper = at(6)
    paper.surely(LeaveOut(7))
    assert paper.state.current == 6
    paper.did(TakeUp(7))
    assert (paper.state.steps[7].status, paper.state.ledger.markers) == ("under-way", ())


def test_held_stitches_may_be_taken_as_the_lot() -> None:
    """Two knitted, then enter: all six are on the needle; typed, the number done is taken down."""
    paper = at(6).press(12).press(2)
    paper.did(TakeCount(4))
    assert paper.state.ledger.on("spare") == 2
    refusal = paper.do(TakeCount(7))
    assert refusal is not None
    assert refusal.sentence == "7 is too many: there are 6"
    paper.did(TakeCount(1))
    assert paper.state.ledger.on("spare") == 5
    paper.did(TakeCount(4))
    paper.did(Finish())
    assert paper.state.ledger.live == {"neck": 18}
    assert top_words(paper.state) == "the lot: 2 stitches of spare pin"


@pytest.mark.parametrize(("counted", "entry"), [(7, Posting(FOUND, "centre", 1)), (5, Posting("centre", MISSING, 1))])
def test_a_count_step_takes_down_what_is_there(counted: int, entry: Posting) -> None:
    """A difference is found or missing, the step is complete, and what follows is planned from what is there."""
    paper = at(4).did(TakeCount(counted))
    event = paper.latest[0]
    assert isinstance(event, Recounted)
    assert (event.expected, event.entries) == (6, (entry,))
    assert work_of(paper.state).complete
    paper.did(Finish())
    assert work_of(paper.state).stages[0].units == counted


def test_a_count_step_pressed_through_enters_nothing() -> None:
    """Counted one by one, as many as should be there."""
    paper = at(4)
    before = paper.state.ledger
    assert paper.press(6).state.ledger == before


def test_what_is_counted_while_moving_changes_what_is_left_to_move() -> None:
    """Seven are on the holder, not six: all seven go to the pin."""
    paper = at(5).press(2).did(TakeCount(5, "centre"))
    assert work_of(paper.state).stages[0].units == 7
    press_to_the_end(paper)
    assert paper.state.ledger.live == {"spare": 7}


def test_a_partial_join_leaves_its_loop_on_the_needle_that_keeps_it() -> None:
    """Three pairs of nine and eleven: six and the merged loop in front, eight behind, no tail and no yarn lost."""
    paper = press_to_the_end(Paper(plan_for(UNEQUAL)))
    assert paper.state.ledger.live == {"front": 7, "back": 8}
    assert paper.state.ledger.yarns == ("front",)


def test_a_join_of_unequal_needles_asks_for_two_together_before_it_is_too_late() -> None:
    """Seven and eight: six pairs go by themselves; at the seventh a press is refused, x on the longer one does it."""
    paper = at(1, UNEQUAL).press(6)
    refused(paper, "the front needle has 1 left and the back needle 2", "first work two together on the back needle")
    refusal = paper.do(Other("front"))
    assert refusal is not None
    assert paper.do(Other()) is not None
    paper.did(Other("back"))
    assert paper.state.ledger.live == {"pin": 1}
    assert work_of(paper.state).progress[0].doubled == ((7, "back"),)


def test_equal_needles_are_never_asked_on_which_two_go_together() -> None:
    """With as many on both needles there is no choice to make: the refusal says so, with a side and without."""
    paper = at(1, UNEQUAL).did(TakeCount(8, "front"))
    for side in ("", "front", "back"):
        refusal = paper.do(Other(side))
        assert refusal is not None
        assert "nothing to work together" in refusal.sentence


def test_a_needle_with_more_than_twice_as_many_is_never_joined_away() -> None:
    """Nine and twenty: two together at every pair would not do, so the first pair is refused already."""
    text = UNEQUAL.replace("live = 11", "live = 20").replace("count   = 3", 'count   = "all"')
    paper = Paper(plan_for(text))
    refused(paper, "more than two together can take up")
    assert paper.do(Other("back")) is not None


def test_which_needle_is_asked_at_a_join() -> None:
    """A number typed there is of one of the two; the difference is posted and the pairs are planned anew."""
    paper = at(1, UNEQUAL)
    refusal = paper.do(TakeCount(8))
    assert refusal is not None
    assert "which needle" in refusal.sentence
    paper.did(TakeCount(8, "front"))
    assert paper.state.ledger.live == {"front": 8, "back": 8}
    assert work_of(paper.state).stages[0].units == 8
    paper.press(8)
    assert paper.state.ledger.live == {"pin": 1}


def test_a_place_that_is_not_there_cannot_be_counted() -> None:
    """Neither an outside account nor an unknown name."""
    for place in ("edge", "off", "found", "missing", "working needle", "nowhere", "\x1b[2J"):
        refusal = at(4).do(TakeCount(3, place))
        assert refusal is not None


@pytest.mark.parametrize("counted", [-1, 100_001, 10**12])
def test_a_count_out_of_range_is_refused_with_the_range(counted: int) -> None:
    """Nothing is lost."""
    refusal = at(6).do(TakeCount(counted))
    assert refusal is not None
    assert ("use 0 to 100,000" if counted > 0 else "use 0 or more") in refusal.sentence


def test_a_measure_is_typed_where_one_is_asked() -> None:
    """A press is refused there; what is typed is kept; elsewhere no measure is asked for."""
    paper = at(18).press()
    refused(paper, "in cm")
    for typed in ("", "   ", "x" * 41, "60\n", "\u202e60"):
        assert (typed.strip() == "60") or paper.do(TakeMeasure(typed)) is not None
    doubt = paper.do(Finish())
    assert doubt is not None
    assert "no measurement is typed yet" in doubt.sentence
    paper.did(TakeMeasure(" 60.5 "))
    event = paper.latest[0]
    assert isinstance(event, Valued)
    assert event.value == "60.5"
    assert paper.do(TakeMeasure("61")) is not None
    assert at(4).do(TakeMeasure("60")) is not None


def test_a_changed_plan_is_for_steps_to_come() -> None:
    """Sixteen rows, not fourteen: a pick-up of which a loop is made keeps its fourteen, one with none has sixteen."""
    for step, presses, rows in ((6, 1, 14), (6, 0, 16), (5, 0, 16)):
        paper = at(step).press(presses)
        paper.did(Replan(replace(paper.state.plan, own={"rows": 16}), "counted again"))
        assert section_rows(reach(paper, 6)) == rows


def section_rows(paper: Paper) -> int:
    """Return the rows of the first section of the pick-up under way."""
    return work_of(paper.state).stages[0].units


def test_a_changed_recipe_must_fit_what_was_begun() -> None:
    """Another number of steps, another kind for a step begun, or a place taken away: refused, each with a sentence."""
    paper = at(6)
    plan = paper.state.plan
    fewer = replace(plan, recipe=replace(plan.recipe, step=plan.recipe.step[:-1]))
    turned = replace(
        plan, recipe=replace(plan.recipe, step=(*plan.recipe.step[:6], *plan.recipe.step[7:], plan.step(6)))
    )
    places = {name: place for name, place in plan.recipe.place.items() if name != "neck"}
    without = replace(plan, recipe=replace(plan.recipe, place=places))
    for changed, word in ((fewer, "number of steps"), (turned, "another kind"), (without, "neck")):
        refusal = paper.do(Replan(changed, "corrected"))
        assert refusal is not None
        assert word in refusal.sentence


def test_a_changed_recipe_keeps_what_a_recount_left_to_the_band() -> None:
    """The file knows nothing of the recount; the band must still mend its difference."""
    paper = along(32, 24).press(12).did(TakeCount(10, answer="half-way", repair="first-round"))
    short = 24 - section(paper)[0].target
    assert short
    paper.did(Replan(along(32, 24).state.plan, "a word corrected"))
    band = paper.state.plan.step(1)
    assert isinstance(band, WorkStep)
    assert [one.change for one in band.shaping] == [short]
    assert isinstance(paper.state.plan.step(0), PickUpAndKnit)


def test_notes_are_of_one_line_and_not_endless() -> None:
    """Empty, too long, or with anything that could move a cursor: refused."""
    paper = at(0)
    for text in ("", " ", "x" * (LONGEST_NOTE + 1), "a\nb", "\x1b[31m", "\u202eabc"):
        assert paper.do(WriteNote(text)) is not None
        assert not text.strip() or paper.do(PutGarmentDown(text)) is not None
    paper.did(WriteNote("  [b]as it stands[/b]  "))
    assert [(note.text, note.step) for note in paper.state.notes] == [("[b]as it stands[/b]", "1")]


def test_what_is_kept_of_a_garment_ends_somewhere() -> None:
    """Each event copies what is kept before it: 60,000 sittings of a stranger's took a minute to read, for nothing."""
    paper = at(0).press(1)
    paper.state = replace(
        paper.state,
        sittings=(Sitting(1, NOON),) * MOST_KEPT,
        notes=(Note(NOON, None, "as it stands"),) * MOST_KEPT,
        undone=(1,) * MOST_KEPT,
    )
    sound(paper.state)
    for command in (WriteNote("one more"), PickUpGarment(), TakeBack(paper.state.top, (), 0, None)):
        refusal = paper.do(command)
        assert refusal is not None
        assert "10,000" in refusal.sentence
    markers = tuple(f"marker {number:04}" for number in range(MOST_HELD + 1))
    with pytest.raises(ValueError, match="more in it"):
        sound(replace(paper.state, ledger=replace(paper.state.ledger, markers=markers)))
    for event in (Noted("one more", None), SittingBegan(2), TakenBack(1, (), 0, None)):
        with pytest.raises(DoesNotFit):
            evolve(paper.state, Happening(1, NOON, 0, event))


def test_a_count_that_contradicts_the_ledger_must_be_typed() -> None:
    """Eight should be there and the ledger knows of six: neither presses nor the lot make two stitches of nothing."""
    paper = at(4, NECKBAND.replace('place = "centre"', 'place = "centre"\ncount = 8')).press(7)
    for command in (Press(), Finish()):
        refusal = paper.do(command)
        assert refusal is not None
        assert refusal.sentence.startswith("8 should be on the centre front holder, and by the ledger there are 6")
    paper.did(TakeCount(7), Finish())
    assert paper.state.ledger.on("centre") == 7


def test_a_count_may_be_taken_again_before_the_step_is_left() -> None:
    """Five, and on counting again six: both are in the record, and six are there."""
    paper = at(4).did(TakeCount(5), TakeCount(6))
    event = paper.latest[0]
    assert isinstance(event, Recounted)
    assert (event.expected, event.entries) == (5, (Posting(FOUND, "centre", 1),))
    assert paper.state.ledger.on("centre") == 6


SEAM = written.recipe(
    "One seam",
    written.place("pin", "pin", "pin"),
    written.step(
        "seam",
        "Sew the sleeve in",
        tail="long tail",
        sides=[{"spots": 8, "along": "front edge"}, {"spots": 9, "along": "back edge"}],
    ),
    written.step("weave in", "Weave in"),
    tails=["long tail"],
)


def test_two_bars_at_once_share_out_anew_what_is_left_of_a_seam() -> None:
    """Eight to nine: two bars of the back edge at the first pair, so the rest goes one to one; it may be taken out."""
    paper = Paper(plan_for(SEAM))
    for side in ("", "pin", "nowhere"):
        refusal = paper.do(Other(side))
        assert refusal is not None
        assert "the front edge or the back edge" in refusal.sentence
    paper.did(Other("back edge"))
    assert top_words(paper.state) == "two at once from the back edge at pair 1"
    stage = work_of(paper.state).stages[0]
    assert [sum(bars) for bars in stage.bars] == [8, 9]
    assert stage.bars[1] == (2, 1, 1, 1, 1, 1, 1, 1)
    paper.press(4).did(TakeOut(0, 0, 2))
    assert press_to_the_end(paper).state.ledger.tails == {"long tail": 1}
    assert paper.do(TakeCount(3)) is not None
    assert finish(finish(paper)).state.ledger.empty


@pytest.mark.parametrize("difference", [0, 10**9, -(10**9), 100_000])
def test_a_difference_out_of_range_is_not_put_right(difference: int) -> None:
    """Nothing, more than any place holds, or more than is there: a sentence."""
    refusal = at(4).do(PutRight("here", "centre", difference))
    assert refusal is not None
    assert refusal.sentence
