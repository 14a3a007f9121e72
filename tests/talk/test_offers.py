"""Offers: what may be done next, and that it may."""

import re
from datetime import UTC, datetime, timedelta
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.garment.commands import ChoosePace, Finish, Other, Press, PutGarmentDown, Refusal, TakeUp, WriteNote
from finishing_tui.garment.commands import PickUpGarment as PickUp
from finishing_tui.garment.decide import decide
from finishing_tui.garment.events import Pace
from finishing_tui.glance import coming_back, glance, look_at, rip_points
from finishing_tui.glance.coming_back import next_words
from finishing_tui.glance.glancing import turned
from finishing_tui.glance.posture import posture_words
from finishing_tui.glance.values import WordLine
from finishing_tui.talk.action import Offer
from finishing_tui.talk.acts import ACTS, BY_ID
from finishing_tui.talk.offers import offers
from tests.garment.edges import along, finish, press_to_the_end, reach
from tests.garment.paper import NOON, Paper, plan_for
from tests.garment.recipes import NECKBAND, UNEQUAL

NOW = datetime(2024, 5, 1, 12, tzinfo=UTC)


def offered(paper: Paper, looking_at: int | None = None) -> dict[str, Offer]:
    """Return what is on offer, by action; no action may be offered twice."""
    found = offers(paper.state, looking_at)
    by_action = {offer.action: offer for offer in found}
    assert len(by_action) == len(found)
    assert by_action.keys() <= BY_ID.keys()
    assert all(offer.label and offer.what for offer in found)
    return {str(action): offer for action, offer in by_action.items()}


def test_every_action_has_a_key_of_its_own() -> None:
    """No key means two things, and each action says what it does."""
    assert len({act.key for act in ACTS}) == len(ACTS)
    assert all(act.help and act.shown for act in ACTS)


def test_along_an_edge() -> None:
    """Done, the other thing by name, a count, another pace; nothing to take back yet, nothing to put back."""
    paper = along(8, 6)
    found = offered(paper)
    assert found["press"].command == Press()
    assert (found["other"].label, found["other"].what) == ("skip it", "skip row 1 instead")
    assert found["press"].label == "pick"
    assert found["pace"].command == ChoosePace("spot")
    assert found["pace"].what == "one press = one stitch; change to one row"
    assert {"recount", "rip_back", "note", "help", "put_down", "finish"} <= found.keys()
    assert "take_back" not in found
    paper.did(ChoosePace("spot")).press(3)
    found = offered(paper)
    assert (found["other"].label, found["other"].what) == ("pick it", "pick row 4 instead")
    assert (found["press"].label, found["take_back"].label) == ("skip", "tink")
    assert found["take_back"].what == "take back the last press"
    assert found["pace"].command == ChoosePace("run")
    paper.take_back()
    assert "put_back" in offered(paper)


@given(st.integers(0, 2**32), st.sampled_from(["loop", "spot", "run"]))
def test_no_word_stands_at_two_keys_that_do_different_things(seed: int, pace: Pace) -> None:
    """Wherever one is along an edge, space and the other key share no verb, and space says the skips it makes."""
    draw, paper = Random(seed), along(24, 17)  # noqa: S311  (no secret)
    paper.did(ChoosePace(pace))
    for _ in range(draw.randrange(16)):
        paper.do(Other() if not draw.randrange(3) else Press())
    found = offered(paper)
    if "press" in found and "other" in found:
        press, other = found["press"].label, found["other"].label
        assert other == "no skip" or press.split()[-1] != other.split()[0]
        first = re.fullmatch(r"skip ([0-9]+), pick", press)
        assert (first is not None) == (pace == "loop" and other == "no skip")


def test_a_join_offers_x_only_on_the_longer_needle() -> None:
    """With nine and eleven and all to be joined it can only be the further one; both where some are left anyway."""
    paper = Paper(plan_for(UNEQUAL))
    assert [side for side, _ in offered(paper)["other"].sides] == ["front", "back"]
    reach(paper, 1)
    assert offered(paper)["other"].sides == (("back", "back needle"),)
    assert offered(paper)["other"].command == Other("back")


def test_a_join_of_equal_needles_has_one_thing_to_do() -> None:
    """No x where both needles hold the same."""
    assert "other" not in offered(reach(Paper(plan_for(NECKBAND)), 2))


def test_enter_is_the_end_the_lot_or_another_step() -> None:
    """What enter does depends on where one is and looks; it never means two things."""
    paper = reach(Paper(plan_for(NECKBAND)), 5)
    assert offered(paper)["finish"].label == "all 6"
    press_to_the_end(paper)
    assert offered(paper)["finish"].label == "end step"
    assert "press" not in offered(paper)
    assert offered(paper, 7)["finish"].command == TakeUp(7)
    assert "finish" not in offered(paper, 0), "a step that is done is not taken up by looking at it"
    assert "finish" not in offered(paper, 19), "nor is one of another size"
    assert "leave_out" not in offered(paper, 19)
    assert offered(paper, 7)["look_back"].what == "look at step 7"
    assert "look_back" not in offered(paper, 0)
    assert "look_on" not in offered(paper, 19)


def test_a_step_left_half_done_for_another_is_told_of_until_it_is_done() -> None:
    """What comes next is the step after the other one, so nothing else would lead back; done, it is not told of."""
    paper = reach(Paper(plan_for(NECKBAND)), 2).press()
    for command in (TakeUp(3), Press(), Finish()):
        assert paper.do(command) is None
    assert paper.state.current == 4
    assert glance(paper.state, NOW).lines[-1] == WordLine("half done", "Step 3, Join the shoulder.")
    assert paper.do(TakeUp(2)) is None
    press_to_the_end(paper)
    assert paper.do(Finish()) is None
    assert "half done" not in {line.heading for line in glance(paper.state, NOW).lines}


def test_where_a_value_is_asked_no_press_is_offered() -> None:
    """It is typed."""
    paper = reach(Paper(plan_for(NECKBAND)), 18).press()
    assert "press" not in offered(paper)


def test_a_finished_garment_can_still_be_looked_at_and_taken_back() -> None:
    """Nothing to do, but everything to see; the last step may be taken back."""
    paper = Paper(plan_for(UNEQUAL))
    while paper.state.current is not None:
        finish(paper)
    found = offered(paper)
    assert "press" not in found
    assert "finish" not in found
    assert {"take_back", "rip_back", "look_back", "put_down"} <= found.keys()
    assert "look_on" not in found


def test_every_place_to_rip_back_to_can_be_ripped_back_to() -> None:
    """Nearest first, each accepted as it stands or after being asked again, or saying that it is here already."""
    paper = reach(Paper(plan_for(NECKBAND)), 8).press()
    points = rip_points(paper.state)
    assert [point.text for point in points[:3]] == [
        "step 9, rounds: to a round (you're at 1)",
        "the start of step 9, Work the rib",
        "the start of step 8, Mark the start of the round",
    ]
    edge = next(point for point in points if "slipped edge" in point.text)
    assert (edge.unit, edge.most) == ("chain", 4)
    for point in points:
        command = point.to(0) if point.most else point.command
        answer = decide(paper.state, command)
        if isinstance(answer, Refusal):
            assert answer.again is not None
            assert not isinstance(decide(paper.state, answer.again), Refusal)


def test_what_is_held_and_how_it_lies() -> None:
    """Only places that hold something or are at work, the one at work marked; the posture in words."""
    paper = reach(Paper(plan_for(NECKBAND)), 2).press()
    seen = glance(paper.state, NOW)
    assert [(one.name, one.stitches, one.here) for one in seen.holdings] == [
        ("front shoulder", 4, True),
        ("back shoulder", 4, True),
        ("centre front holder", 6, False),
        ("working needle", 1, True),
    ]
    together = "wrong side facing · right sides together"
    assert seen.posture == f"{together} · the front shoulder nearer to you · yarn at the working needle"
    assert posture_words(paper.state.ledger.posture) == "wrong side facing · right sides together"
    assert seen.tails == ("start of join the shoulder",)
    assert (seen.step, seen.steps, seen.heading, seen.part) == (3, 20, "Join the shoulder", "pairs, part 1 of 2")
    assert [line.heading for line in seen.lines] == ["take care"]
    assert [one.number for one in seen.list if one.here] == [3]


def test_words_turn_round_for_a_left_handed_knitter() -> None:
    """The words that a recipe may turn round, and no others."""
    text = "From the {start end} to the {far end}; {other} stays."
    assert turned(text, "right") == "From the right-hand end to the left-hand end; {other} stays."
    assert turned(text, "left") == "From the left-hand end to the right-hand end; {other} stays."
    left = look_at(Paper(plan_for(NECKBAND, hand="left")).state, 0, NOW)
    assert left.lines[0].text == "Count from the left-hand end."


@pytest.mark.parametrize(("step", "act"), [(0, "CHECK"), (7, "LATER"), (19, "GO ON")])
def test_looking_at_another_step_changes_nothing(step: int, act: str) -> None:
    """It says how that one stands, and that one is looking."""
    paper = Paper(plan_for(NECKBAND))
    seen = look_at(paper.state, step, NOW)
    assert getattr(seen.face, "act", "") == act
    assert seen.looking == (step != 0)
    assert seen.step == step + 1


@pytest.mark.parametrize(
    ("later", "away"),
    [
        (timedelta(seconds=-5), "a moment ago"),
        (timedelta(seconds=90), "a moment ago"),
        (timedelta(minutes=17), "17 minutes ago"),
        (timedelta(hours=5), "5 hours ago"),
        (timedelta(days=14), "14 days ago"),
        (timedelta(days=5 * 365), "1825 days ago"),
        (timedelta(days=-1), ""),
        (timedelta(hours=-1), ""),
        (timedelta(days=56 * 365), ""),
    ],
)
def test_coming_back_says_how_long_it_lay_and_what_comes_next(later: timedelta, away: str) -> None:
    """Put down in the middle of an edge: the last act, the next, where it was left, and the latest notes.

    Where a clock was wrong, so that it lies until tomorrow or since before it was made, nothing is said of how long.
    """
    paper = along(8, 6).did(PickUp()).press(2).did(WriteNote("tight"), PutGarmentDown("on the chair"))
    seen = coming_back(paper.state, datetime.fromisoformat(NOON) + later)
    assert seen.away == away
    assert (seen.where, seen.cut_off, seen.notes) == ("on the chair", False, ("tight",))
    assert seen.next == "next: row 3, PICK"
    assert seen.last.startswith("step 1, Pick up: 2 of 6 stitches, row 2 of 8")
    assert seen.now == glance(paper.state, datetime.fromisoformat(NOON) + later)


def test_coming_back_to_a_garment_that_was_cut_off() -> None:
    """The last sitting was never put down, and that is said."""
    seen = coming_back(along(8, 6).did(PickUp()).press().state, NOW)
    assert seen.cut_off


def test_coming_back_to_the_end_of_a_step() -> None:
    """What is next is said in a few words, and the same words do not stand a second time as where it was left."""
    paper = press_to_the_end(along(8, 6).did(PickUp())).did(PutGarmentDown(""))
    seen = coming_back(paper.state, NOW)
    assert seen.next == "next: check it, then press enter"
    assert seen.last == "step 1, Pick up"


def test_time_left_is_said_only_when_it_can_be_known() -> None:
    """Six presses a second apart tell the pace of an edge; at run pace, and at the start, nothing is said."""
    paper = along(40, 30).did(PickUp())
    assert glance(paper.state, NOW).time_left == ""
    assert glance(paper.press(10).state, NOW).time_left == "less than a minute left here"
    assert glance(paper.did(ChoosePace("run")).state, NOW).time_left == ""


def test_what_comes_next_in_words() -> None:
    """For every unit on the way: enough to go on by, without the screen."""
    paper = Paper(plan_for(NECKBAND))
    said = [next_words(glance(paper.state, NOW).face)]
    for step in (2, 4, 8, 18):
        reach(paper, step)
        said.append(next_words(glance(paper.state, NOW).face))
    assert said == [
        "No stitch has slipped off.",
        "PAIR, 1 of 5",
        "COUNT, 1 of 6",
        "round 1 of 3",
        "Lay it out to 60 cm round the neck and let it dry.",
    ]
    paper.did(Press())
    assert "type what it measures" in next_words(glance(paper.state, NOW).face)
    assert decide(paper.state, Finish()) == Refusal(
        "no measurement is typed yet", Finish(sure=True), "ends the step anyway"
    )


def test_at_its_end_a_step_is_looked_over_by_its_own_words() -> None:
    """How it is done comes first while it is worked; once all is done, what tells whether it is right."""
    words = 'look = "A straight ridge."\nsay = "Knit two together."\nmend = "Tink back."\nunequal = true'
    paper = Paper(plan_for(UNEQUAL.replace("unequal = true", words, 1)))
    assert [line.heading for line in glance(paper.state, NOW).lines] == ["", "right when", "if not"]
    press_to_the_end(paper)
    assert [line.heading for line in glance(paper.state, NOW).lines] == ["right when", "if not", ""]
