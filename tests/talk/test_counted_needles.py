"""Live stitches on a needle or holder are counted twice and looked for; only then is the needle counted mended."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.talk.asks import Choose, Explain, HowMany
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.one_off import EVERY_WAY
from tests.screens.hands import COUNT, JOIN, PICK_UP, RIB, Hours, shelf, work_to

HELD = {COUNT: 26, JOIN: 6, RIB: 26}
"""What the needle that is counted at a step of the small garment holds."""

HELD_AT_A_JOIN = (("left front shoulder", 6), ("left back shoulder", 6), ("the front holder", 8))
"""What can be counted there on coming back, and how many each holds."""


def talk_at(at: Path, step: int, presses: int = 0) -> Talk:
    """Return the conversation over the small garment at one of its steps."""
    folder = shelf(at)
    work_to(folder, step, *[Press()] * presses)
    return Talk(InHand.open(folder, clock=Hours().clock()), "", USUAL)


def count(talk: Talk, counted: int, needle: int | None = None) -> None:
    """Type a count at the needles and take it; at a join, as one of the needles."""
    talk.typed = str(counted)
    ask_for(talk, "finish")
    if needle is not None:
        assert isinstance(talk.asked, Choose)
        talk.answer(needle)


@pytest.mark.parametrize("step", [COUNT, JOIN, RIB])
@pytest.mark.parametrize("off", [-5, -2, -1, 1, 2, 9])
def test_the_first_answer_never_changes_the_ledger(step: int, off: int, tmp_path: Path) -> None:
    """Nor does anything before it: what is missing, or too many, is looked for, and found."""
    talk = talk_at(tmp_path, step)
    before, counted = talk.state.ledger, HELD[step] + off
    count(talk, counted, 1 if step == JOIN else None)
    assert isinstance(talk.asked, HowMany)
    talk.answer(counted)
    asked = talk.asked
    assert isinstance(asked, Explain)
    assert ("dropped stitch" in asked.question) == (off < 0)
    assert [one.text for one in asked.options] == [f"Found it: {HELD[step]}", f"Nothing found: it's {counted}"]
    assert talk.state.ledger == before
    talk.answer(0)
    assert talk.state.ledger == before


@pytest.mark.parametrize("needle", [0, 1])
def test_at_a_join_the_needle_that_was_counted_is_the_one_judged(needle: int, tmp_path: Path) -> None:
    """One short there: its own number is said, and one is made on it with one key."""
    talk = talk_at(tmp_path, JOIN)
    place = ("left_front", "left_back")[needle]
    count(talk, 5, needle)
    talk.answer(5)
    talk.answer(1)
    assert talk.state.ledger.on(place) == 5
    asked = talk.asked
    assert isinstance(asked, Choose)
    name = talk.state.plan.here(talk.state.ledger).name(place)
    assert asked.question == f"1 short: {name} 5, planned 6."
    assert [one.text for one in asked.options] == [f"Make 1 on the {name} now", EVERY_WAY]
    talk.answer(0)
    assert talk.state.ledger.on(place) == 6
    assert talk.asked is None


@pytest.mark.parametrize(("counted", "asks"), [(4, False), (5, False), (2, False), (8, True), (20, True)])
def test_on_coming_back_any_holder_can_be_counted(counted: int, asks: bool, tmp_path: Path) -> None:  # noqa: FBT001
    """With 4 picked up: near that it is the section that was counted, else it is asked which, the likeliest first."""
    talk = talk_at(tmp_path, PICK_UP, 4)
    before = talk.state.ledger
    talk.returned = True
    count(talk, counted)
    assert not talk.returned
    asked = talk.asked
    assert (type(asked) is Choose) == asks
    if not isinstance(asked, Choose):
        return
    texts = [one.text for one in asked.options]
    assert (
        texts[0]
        == ("the front holder" if counted == 8 else "the left front neck")
        + f", which should hold {8 if counted == 8 else 4}"
    )
    talk.answer(next(at for at, text in enumerate(texts) if "front holder" in text))
    if counted == 8:
        assert (talk.asked, talk.state.ledger) == (None, before)
        assert talk.said == "8 counted: the front holder."
    else:
        talk.answer(counted)
        talk.answer(1)
        assert talk.state.ledger.on("front_holder") == counted


def test_on_coming_back_all_of_them_may_be_counted_together(tmp_path: Path) -> None:
    """The sum of all needles and holders comes first, and changes nothing; each of them can still be meant."""
    talk = talk_at(tmp_path, JOIN, 0)
    before = talk.state.ledger
    talk.returned = True
    count(talk, 20)
    assert isinstance(talk.asked, Choose)
    assert [one.text for one in talk.asked.options] == [
        "all of them together: 20, as it should be",
        *(f"{name}, which should hold {held}" for name, held in HELD_AT_A_JOIN),
    ]
    talk.answer(0)
    assert talk.said == "20 in all, as it should be."
    assert talk.state.ledger == before


def test_later_the_needle_is_the_one_under_way_again(tmp_path: Path) -> None:
    """Only the first count after coming back may be of another one."""
    talk = talk_at(tmp_path, PICK_UP, 4)
    talk.returned = True
    ask_for(talk, "press")
    count(talk, 8)
    assert isinstance(talk.asked, HowMany)
