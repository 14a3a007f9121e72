from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui import shipped
from finishing_tui.garment.commands import (
    ChooseMirror,
    Finish,
    LeaveOut,
    Other,
    PutRight,
    Refusal,
    TakeCount,
    TakeOut,
    TakeUp,
)
from finishing_tui.garment.consequences import consequences
from finishing_tui.garment.decide.mirror import choice
from finishing_tui.garment.events import Mended, Replanned
from finishing_tui.glance.answers import off_by
from finishing_tui.glance.following import Following, following
from finishing_tui.recipe.kinds.work import Work
from tests.examples import share
from tests.garment.edges import press_to_the_end, reach, work_of
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import along as edge
from tests.recipe_texts import place, recipe, section, step

COUNT_FRONT = 2
"""The step of the crew neck that counts the front neck holder: 16 in size M."""
BIND_OFF = 18
"""The step that binds its neckband off."""
JOIN = 6
"""The step that joins its left shoulder."""


def crew_neck() -> Paper:
    """Return the shipped crew neck in size M, at the count of its front neck holder."""
    text = Path(shipped.recipe("crew-neck")).read_text(encoding="utf-8")
    return reach(Paper(plan_for(text, "M")), COUNT_FRONT)


def counted(paper: Paper, stitches: int) -> tuple[PutRight, ...]:
    """Count the front neck holder, and return the repairs that are offered."""
    before = paper.state
    paper.did(TakeCount(stitches))
    found = following(before, paper.state)
    return put_right(found) if found else ()


def put_right(found: Following) -> tuple[PutRight, ...]:
    """Return the repairs among what may be done."""
    return tuple(one.command for one in found.does if isinstance(one.command, PutRight))


def to_the_end(paper: Paper) -> list[str]:
    """Work everything that is left to its end, and return what was asked twice on the way."""
    asked: list[str] = []
    while paper.state.current is not None:
        stage = work_of(paper.state).stages[0]
        if stage.act == "count":
            paper.did(TakeCount(paper.state.ledger.on(stage.place)))
        press_to_the_end(paper)
        refusal = paper.do(Finish())
        if isinstance(refusal, Refusal):
            assert refusal.again is not None, refusal
            asked.append(refusal.sentence)
            paper.did(refusal.again)
    return asked


def test_a_count_as_the_recipe_has_it_changes_nothing() -> None:
    """There is nothing to choose, and nothing later is another number."""
    paper = crew_neck()
    before = paper.state
    paper.did(TakeCount(16))
    assert following(before, paper.state) is None


@pytest.mark.parametrize(
    ("said", "first"),
    [
        (15, "Make 1 on the front neck holder now"),
        (17, "Decrease 1 on the front neck holder now"),
        (14, "Make 2 on the front neck holder now"),
    ],
)
def test_what_is_put_right_on_a_holder_says_where_it_shows_least(said: int, first: str) -> None:
    """No way counts again or finds a stitch: that was done before the count was taken."""
    paper = crew_neck()
    before = paper.state
    paper.did(TakeCount(said))
    found = following(before, paper.state)
    assert found is not None
    assert found.answers.rows[0].text == first
    assert "beside the corner" in found.answers.rows[0].more
    assert not any(one.undo for one in found.does)


@pytest.mark.parametrize(("off", "how"), [(-1, "first-round"), (1, "first-round"), (-2, "here"), (2, "here")])
def test_one_stitch_is_put_right_in_the_next_round(off: int, how: str) -> None:
    """On the needle whose band is worked next; more than one is put right there and then."""
    text = recipe(
        "A band",
        place("band", live=20),
        step("count", "Count it", place="band", count=20),
        step("work", "Work the band", on="band", rows=2),
    )
    paper = Paper(plan_for(text))
    before = paper.state
    paper.did(TakeCount(20 + off))
    found = following(before, paper.state)
    assert found is not None
    assert put_right(found)[0].how == how


@settings(max_examples=share(20))
@given(st.integers(0, 48).filter(lambda said: said != 16))
def test_a_total_off_the_plan_says_by_how_much(said: int) -> None:
    """Whatever is counted; and no other total says so."""
    paper = crew_neck()
    before = paper.state
    paper.did(TakeCount(said))
    found = following(before, paper.state)
    assert found is not None
    rows = found.answers.rows
    assert found.answers.numbers is not None
    planned = found.answers.numbers[1]
    for row in rows:
        if row.total is not None:
            off = row.total - planned
            assert row.note.startswith(off_by(off)) if off else "short" not in row.note and "too many" not in row.note


def test_every_later_number_that_changes_is_named() -> None:
    """One stitch missing at the front: the neckband will have 103, and its rib will not come out."""
    paper = crew_neck()
    before = paper.state
    paper.did(TakeCount(15))
    found = consequences(before, paper.state)
    neck = {(change.planned, change.real) for change in found.changes if change.place == "neck"}
    assert neck == {(104, 103)}
    view = following(before, paper.state)
    assert view is not None
    assert view.lines == (
        "step 13: 103 on the neck needle is not a multiple of 4",
        "step 13, Pick up and knit the neckband, has 103 on the neck needle, not 104",
    )


@pytest.mark.parametrize(("stitches", "how"), [(15, "here"), (17, "here"), (15, "first-round"), (17, "first-round")])
def test_a_repair_leads_to_a_finished_garment(stitches: int, how: str) -> None:
    """One fewer or one more than the recipe says, put right here or in the first round: the ledger ends empty.

    The record tells what was done, and the rib that was planned is worked.
    """
    paper = crew_neck()
    repair = next(one for one in counted(paper, stitches) if one.how == how)
    paper.did(repair)
    assert isinstance(paper.latest[0], Mended | Replanned)
    asked = to_the_end(paper)
    assert paper.state.ledger.empty
    assert asked == []
    assert paper.replayed() == paper.state


def test_the_nearest_repeat_where_that_is_another_number() -> None:
    """Three missing: 101 in the band; 104 as planned is +3, and 100, the nearest whole repeat, is -1."""
    rounds = {one.difference for one in counted(crew_neck(), 13) if one.how == "first-round"}
    assert rounds == {3, -1}


def test_no_repair_is_put_into_a_step_of_another_size() -> None:
    """Where rounds for size S alone stand before the rib, the first round that can put it right in M is the rib's."""
    text = Path(shipped.recipe("crew-neck")).read_text(encoding="utf-8")
    rib = '[[step]]\ndo      = "work"\ntitle   = "Work the rib"'
    assert text.count(rib) == 1
    only_in_s = '[[step]]\ndo = "work"\ntitle = "A plain round"\non = "neck"\nrounds = 1\nfor = ["S"]\n\n'
    paper = reach(Paper(plan_for(text.replace(rib, only_in_s + rib), "M")), COUNT_FRONT)
    (step,) = {one.step for one in counted(paper, 15) if one.how == "first-round"}
    assert step is not None
    assert paper.state.plan.step(step).title == "Work the rib"


@settings(max_examples=share(20))
@given(st.integers(0, 48).filter(lambda said: said != 16))
def test_no_repair_asks_for_more_than_one_row_can(said: int) -> None:
    """Whatever is counted: no row makes more than one stitch beside each, or works more than all two together."""
    paper = crew_neck()
    before = paper.state
    paper.did(TakeCount(said))
    found = following(before, paper.state)
    assert found is not None
    held = {"here": said, "first-round": (found.answers.numbers or (0, 0))[0]}
    for row, does in zip(found.answers.rows, found.does, strict=True):
        if isinstance(does.command, PutRight) and does.command.how in held:
            assert -(held[does.command.how] // 2) <= row.made <= held[does.command.how]


@pytest.mark.parametrize(("said", "there"), [(0, "none is"), (1, "1 is"), (4, "4 are")])
def test_where_next_to_nothing_is_left_the_first_step_without_it_is_named_and_no_sum(said: int, there: str) -> None:
    """Of 16: what needs them, how many steps that spoils, and nothing of how it lies."""
    paper = crew_neck()
    before = paper.state
    paper.did(TakeCount(said))
    found = following(before, paper.state)
    assert found is not None
    assert found.lines[-2:] == (
        f"step 13, Pick up and knit the neckband, needs 16 on the front neck holder; {there} there",
        "3 steps after it won't work as planned",
    )
    assert (found.answers.rows[-1].text, found.answers.rows[-1].verdict) == ("Carry on", None)
    assert found.answers.said == f"front neck holder {said}, planned 16"


@pytest.mark.parametrize("off", [-2, -1, 1, 2])
@pytest.mark.parametrize("counted_on", ["front", "back"])
def test_the_needle_that_was_counted_is_judged(counted_on: str, off: int) -> None:
    """At a join: its own number is said, and it is mended first, or else the one it is worked off with."""
    text = recipe(
        "A join",
        place("front", live=20, text="near needle"),
        place("back", live=20, text="far needle"),
        step("join", "Join", front="front", back="back"),
        step("check", "Look at it", items=["It lies flat."]),
    )
    paper = Paper(plan_for(text))
    before, other = paper.state, {"front": "back", "back": "front"}[counted_on]
    paper.did(TakeCount(20 + off, counted_on))
    found = following(before, paper.state)
    assert found is not None
    assert found.answers.numbers == (20 + off, 20)
    assert found.answers.said == f"{before.plan.here(before.ledger).name(counted_on)} {20 + off}, planned 20"
    here = [(one.place, one.difference) for one in put_right(found) if one.how == "here"]
    assert here == [(counted_on, -off), (other, off)]


def every_face(step: int) -> Paper:
    """Return the small garment of the screens at one of its steps."""
    path = Path(__file__).parents[1] / "screens" / "recipes" / "every_face.toml"
    return reach(Paper(plan_for(path.read_text(encoding="utf-8"), "small")), step)


def test_stitches_that_were_not_joined_are_left_live_and_lie_no_way() -> None:
    """Both shoulders are named, the pairs are the work to go back for, and nothing is said to flare."""
    paper = every_face(1)
    before = paper.state
    paper.surely(Finish())
    found = following(before, paper.state)
    assert found is not None
    assert found.answers.heading == "12 live stitches left"
    assert found.answers.said == "6 on the left front shoulder and 6 on the left back shoulder"
    assert [(one.text, one.comes_to, one.lies, one.work) for one in found.answers.rows] == [
        ("Go back and finish step 2", "", "", "6 pairs"),
        ("Carry on", "12 · left live", "", "none"),
    ]
    assert found.lines == ("the working yarn still hangs from the left front shoulder at the end",)


def test_a_neck_that_the_plan_itself_has_too_small_is_not_put_down_to_the_count() -> None:
    """23 pass over no head; nor do the 24 of the plan, so that is what is said, after all that the count changes."""
    paper = every_face(4)
    before = paper.state
    paper.did(TakeCount(25))
    found = following(before, paper.state)
    assert found is not None
    assert found.lines[-1].startswith("step 8: the plan's own number is too small: a neck of 24 stitches stretches to ")
    assert not any("23 stitches" in line for line in found.lines)


def test_carrying_on_changes_nothing_but_is_recorded() -> None:
    """The choice to leave it is an event; what the band lacks is asked about when its step ends."""
    paper = crew_neck()
    ledger = (counted(paper, 15), paper.state.ledger)[1]
    paper.did(PutRight("as-it-is", "front_held", 0))
    assert isinstance(paper.latest[0], Mended)
    assert paper.state.ledger == ledger
    assert any("103" in sentence for sentence in to_the_end(paper))


def test_a_repair_can_be_taken_back() -> None:
    """Taking back the change of plan, and then the count, leads back to where it was."""
    paper = crew_neck()
    before = paper.state
    paper.did(next(one for one in counted(paper, 15) if one.how == "first-round"))
    changed = paper.state.plan
    assert paper.take_back() is None
    assert paper.take_back() is None
    assert (paper.state.plan, paper.state.ledger, paper.state.steps) == (before.plan, before.ledger, before.steps)
    assert paper.put_back() is None
    assert paper.put_back() is None
    assert paper.state.plan == changed


def test_a_step_to_come_can_be_re_spaced() -> None:
    """A band picked up later takes one more on its longest section, and the plan says so."""
    text = recipe(
        "A held front and a long edge",
        place("held", "holder", "front holder", live=16),
        place("neck"),
        step("count", "Count the front", place="held", count=16),
        step(
            "pick up and knit",
            "Pick up the band",
            section(from_="held"),
            edge("long edge", 32, 24),
            onto="neck",
            expect={"neck": 40},
        ),
    )
    paper = Paper(plan_for(text))
    repair = next(one for one in counted(paper, 15) if one.how == "re-space")
    paper.did(repair)
    assert to_the_end(paper) == []
    assert paper.state.ledger.on("neck") == 40


def test_another_step_under_way_has_only_its_rest_to_come() -> None:
    """Four of ten are picked up when the holder is counted: 15 will be on the needle, not 16, and not ten more.

    What is under way is not offered to be spaced anew: its own recount does that.
    """
    text = recipe(
        "A held front, and a pick-up under way",
        place("held", "holder", "front holder", live=6),
        place("neck"),
        step("pick up and knit", "Pick up the edge", edge("long edge", 10, 10), onto="neck"),
        step("count", "Count the front", place="held", count=6),
        step("move", "Put the front on the needle", from_="held", to="neck"),
    )
    paper = Paper(plan_for(text)).press(4).did(TakeUp(1))
    before = paper.state
    paper.did(TakeCount(5))
    found = consequences(before, paper.state)
    neck = [(change.step, change.planned, change.real) for change in found.changes if change.place == "neck"]
    assert neck == [(2, 16, 15)]
    assert all(one.command.how != "re-space" for one in found.mends)


def at_the_half() -> Paper:
    """Return the crew neck in the middle of its first side, 12 of 24 loops picked."""
    return reach(crew_neck(), 12).press(12)


def test_what_a_recount_mends_is_not_offered_to_be_mended_again() -> None:
    """The rest at the natural ratio and the difference in the first round: nothing later is left to put right."""
    paper = at_the_half()
    before = paper.state
    paper.did(TakeCount(9, answer="loops", repair="first-round"))
    assert following(before, paper.state) is None
    assert to_the_end(paper) == []
    assert paper.state.ledger.empty


def test_in_the_middle_of_an_edge_no_stitch_is_made_or_worked_off() -> None:
    """Taken as it is, a count of a section changes the band; it can be put right in the first round, but not here."""
    paper = at_the_half()
    before = paper.state
    paper.did(TakeCount(10, answer="loops", repair="as-it-is"))
    view = following(before, paper.state)
    assert view is not None
    assert {one.how for one in put_right(view)} == {"first-round", "as-it-is"}


def test_a_section_taken_as_it_is_ends_at_what_it_really_gives() -> None:
    """10 where 12 were pressed, and on by the plan: 22 is then what the section comes to, and it stops there."""
    paper = at_the_half().did(TakeCount(10, answer="loops", repair="as-it-is"))
    stage = work_of(paper.state).stages[0]
    assert stage.target == 22
    while not work_of(paper.state).at:
        paper.press()
    assert work_of(paper.state).progress[0].mark.loops == 22


def test_x_at_a_partial_join_leaves_what_the_pairs_to_come_take() -> None:
    """Three pairs of four and five stitches: one x on the longer is as much as it can bear, and none on the shorter."""
    text = recipe(
        "Part of a join",
        place("a", text="front needle", live=3),
        place("b", text="back needle", live=5),
        step("join", "Join three", front="a", back="b", count=3, keep="b"),
    )
    paper = Paper(plan_for(text))
    assert paper.do(Other("a")) is not None
    paper.did(Other("b")).did(Other("b"))
    assert paper.do(Other("b")) is not None
    paper.press()
    assert work_of(paper.state).complete


def test_a_join_finished_with_no_pair_worked_names_the_steps_that_cannot_go_on() -> None:
    """Asked twice it is done; then the later steps that it leaves in the lurch are named, and undo is offered first."""
    paper = reach(crew_neck(), JOIN)
    before = paper.state
    paper.surely(Finish())
    found = following(before, paper.state)
    assert found is not None
    assert found.answers.rows[0].text == "Go back and finish step 7"
    assert found.answers.rows[0].work == "20 pairs"
    assert found.lines == ("step 23: there is no tail named 'left shoulder' to close the hole with",)
    assert found.answers.said == "needle with the front 40, planned 20; needle with the back 20, planned 0"
    assert found.answers.rows[-1].text == "Carry on"
    assert all(one.how != "here" for one in put_right(found))


def test_a_step_left_out_names_what_needs_it() -> None:
    """So does leaving one out; leaving out a look at the pieces changes nothing, and nothing is said."""
    paper = reach(crew_neck(), JOIN)
    before = paper.state
    paper.surely(LeaveOut(JOIN))
    found = following(before, paper.state)
    assert found is not None
    assert found.lines[0] == "step 23: there is no tail named 'left shoulder' to close the hole with"
    assert found.answers.rows[0].work == "20 pairs"
    paper = Paper(crew_neck().state.plan)
    before = paper.state
    paper.surely(LeaveOut(0))
    assert following(before, paper.state) is None


def test_a_step_worked_to_its_end_is_not_given_up() -> None:
    """Finishing what is complete changes nothing that the plan did not have."""
    paper = press_to_the_end(reach(crew_neck(), JOIN))
    before = paper.state
    paper.did(Finish())
    assert following(before, paper.state) is None


@pytest.mark.parametrize(("left", "told"), [(5, ""), (1, "a neck of 71 stitches stretches to")])
def test_in_the_middle_of_a_bind_off_the_neck_is_all_of_its_stitches(left: int, told: str) -> None:
    """70 are bound off: with 5 to go it still passes the head, with 1 it does not, and it is a neck of 71, not of 1."""
    text = Path(shipped.recipe("crew-neck")).read_text(encoding="utf-8")
    paper = reach(Paper(plan_for(text, "2 years")), BIND_OFF).press(70)
    before = paper.state
    paper.did(TakeCount(left, "neck"))
    found = following(before, paper.state)
    assert [told in line for line in found.lines] == [True] if found and told else found is None


def band_after_its_first_round(paper: Paper, *, as_worked: bool = True) -> int:
    """Work on to the end of the first round of the neckband; return what is on its needle then."""
    while True:
        state = paper.state
        assert state.current is not None
        step, stage = state.plan.step(state.current), work_of(state).stages[0]
        if isinstance(step, Work) and step.on == "neck":
            paper.press()
            return paper.state.ledger.on("neck")
        if not as_worked and (found := choice(state)) is not None and found[1].as_worked:
            paper.did(ChooseMirror(as_worked=False))
        if work_of(state).complete:
            refusal = paper.do(Finish())
            if isinstance(refusal, Refusal):
                assert refusal.again is not None
                paper.did(refusal.again)
        elif stage.act == "count":
            paper.did(TakeCount(state.ledger.on(stage.place)))
        else:
            paper.press()


@pytest.mark.parametrize("as_worked", [True, False])
@pytest.mark.parametrize("counted", [10, 11, 13, 14])
def test_what_is_left_to_the_first_round_is_left_by_both_sides(counted: int, as_worked: bool) -> None:  # noqa: FBT001
    """The second side follows the first, which came out one off, and is one off too; as planned it is not.

    Either way the first round makes the band what it was to be, and the rib comes out.
    """
    planned = band_after_its_first_round(at_the_half())
    assert planned == 104
    paper = at_the_half().did(TakeCount(counted, answer="loops", repair="first-round"))
    assert band_after_its_first_round(paper, as_worked=as_worked) == planned


@pytest.mark.parametrize("counted", [10, 14])
def test_what_is_put_right_in_the_first_round_counts_the_second_side_too(counted: int) -> None:
    """Taken as it is, and then put right in the first round: the question foresees that the second side follows."""
    paper = at_the_half()
    before = paper.state
    paper.did(TakeCount(counted, answer="loops", repair="as-it-is"))
    view = following(before, paper.state)
    assert view is not None
    rows = zip(view.answers.rows, view.does, strict=True)
    row, command = next((one, does.command) for one, does in rows if one.made and one.total == 104)
    assert isinstance(command, PutRight)
    assert command.difference == row.made == 2 * (12 - counted)
    paper.did(command)
    assert band_after_its_first_round(paper) == 104


def test_ripping_back_behind_the_recount_takes_back_what_both_sides_left() -> None:
    """With the second side begun, all is taken out to before the count: the first round has nothing to put right."""
    paper = at_the_half().did(TakeCount(10, answer="loops", repair="first-round"))
    while not work_of(paper.state).at:
        paper.press()
    paper.press(3)
    asked = paper.do(TakeOut(12, 0, 4))
    if isinstance(asked, Refusal):
        assert asked.again is not None
        paper.did(asked.again)
    assert band_after_its_first_round(paper) == 104
