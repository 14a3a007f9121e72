"""The ledger as a person reads it, and what was entered lately."""

import re
import time
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from finishing_tui.craft.ledger import EDGE, FOUND, OFF, Posting, TailEntry
from finishing_tui.garment.commands import Finish, LeaveOut, Press, TakeCount, WriteNote
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.ledger import books
from finishing_tui.glance.postings import Posted, entered_words, posted
from tests.garment.folders import Watch
from tests.garment.paper import Paper, plan_for
from tests.glance.test_posture import shoulder_and_neck
from tests.plain.making import crew
from tests.screens.hands import sewn

BAND = shoulder_and_neck(rounds=2)


def lately(hand: InHand, most: int = 100) -> tuple[Posted, ...]:
    """Return what was entered lately in a garment in hand."""
    plan = hand.state.plan
    return posted(hand.lately(most), {name: one.text for name, one in plan.recipe.place.items()}, plan)


def in_hand(at: Path) -> InHand:
    """Return the smallest crew neck in hand, picked up."""
    hand = InHand.open(crew(at / "crew"), clock=Watch().clock())
    hand.pick_up()
    return hand


def test_the_books_balance_in_words() -> None:
    """What came from outside is what is live and what went outside, at every press of a garment."""
    paper = Paper(plan_for(BAND))
    while paper.state.current is not None:
        came, went = books(paper.state).balance.split(" = ")
        assert sum(map(int, re.findall(r"\d+", came))) == sum(map(int, re.findall(r"\d+", went)))
        work = paper.state.standing.work if paper.state.standing else None
        paper.did(Finish() if work is not None and work.complete else Press())


def test_each_place_stands_beside_what_the_plan_has_there() -> None:
    """A count that differs shows at its place, and at no other."""
    paper = Paper(plan_for(BAND)).press().did(Finish(), TakeCount(3, "front"))
    words = {one.name: (one.stitches, one.words) for one in books(paper.state).held}
    assert words["front shoulder"] == (3, "the plan has 4")
    assert words["back shoulder"] == (4, "as planned")
    assert words["neck needle"] == (0, "as planned")


def test_presses_that_follow_each_other_are_told_together(tmp_path: Path) -> None:
    """So many presses are one line with all they entered; anything else between them is a line of its own."""
    hand = in_hand(tmp_path)
    hand.do(Press())
    hand.do(Press())
    hand.do(WriteNote("the bag is blue"))
    hand.do(Press())
    told = [(one.text, one.presses) for one in lately(hand)]
    assert told[:3] == [("1 press", 1), ("note: the bag is blue", 0), ("2 presses", 2)]
    assert hand.put_down()


def test_what_is_taken_back_and_left_out_is_told(tmp_path: Path) -> None:
    """Taking back, putting back and leaving out are told by what they were about, newest first."""
    hand = in_hand(tmp_path)
    hand.do(Press())
    hand.take_back()
    hand.put_back()
    hand.do(LeaveOut(3, sure=True))
    assert [one.text for one in lately(hand)][:3] == ["leaving out step 4", "put back: a press", "taken back: a press"]
    assert lately(hand)[0].step == 4
    assert hand.put_down()


def test_only_so_much_is_read_and_only_whole_groups(tmp_path: Path) -> None:
    """Of a long journal the last events are told, none of them cut in two."""
    hand = in_hand(tmp_path)
    for _ in range(3):
        hand.do(Press())
    groups = [one.group for one in hand.lately(2)]
    assert len(groups) == 2
    assert groups == sorted(groups)
    assert hand.put_down()


def test_stitches_that_went_the_same_way_are_added_up() -> None:
    """Three loops picked up are said once; what came by a count is said to be found."""
    names = {"neck": "neck needle"}
    entries = (Posting(EDGE, "neck", 1), TailEntry("start", "made"), Posting(EDGE, "neck", 2))
    assert entered_words(entries, names) == ("3 from the edge to the neck needle", "tail start made")
    assert entered_words((Posting(FOUND, "neck", 1),), names) == ("1 found on the neck needle",)
    assert entered_words((Posting("neck", OFF, 4),), names) == ("4 worked off from the neck needle",)


def test_a_count_is_told_with_what_was_known(tmp_path: Path) -> None:
    """Counted and known stand side by side in what was entered."""
    hand = InHand.open(sewn(tmp_path), clock=Watch().clock())
    hand.pick_up()
    front = hand.state.ledger.on("front")
    assert hand.do(TakeCount(front - 1, "front")) is None
    assert lately(hand)[0].text == f"the count of front underarm: counted {front - 1}, expected {front}"
    assert hand.put_down()


@pytest.mark.skipif(not hasattr(time, "tzset"), reason="the time zone of a process can be set on POSIX only")
def test_times_are_those_of_the_clock_on_her_wall(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A note is told at the hour and on the day it was where she is: five and a half hours east of universal time."""
    hand = in_hand(tmp_path)
    hand.do(WriteNote("the bag is blue"))
    known = lately(hand)[0]
    monkeypatch.setenv("TZ", "EAST-05:30")
    time.tzset()
    try:
        told = lately(hand)[0]
    finally:
        monkeypatch.undo()
        time.tzset()
    wall = datetime.fromisoformat(f"{known.day}T{known.time}") + timedelta(hours=5, minutes=30)
    assert (told.day, told.time) == (wall.date().isoformat(), wall.time().isoformat("minutes"))
    assert hand.put_down()
