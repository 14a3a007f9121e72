"""A count that is due at halfway is answered by enter, by a number, or later; by keys and by words alike."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.stops import due
from finishing_tui.glance.answers import AGAIN
from finishing_tui.glance.recounts import ANSWERS
from finishing_tui.talk.asks import Explain, HowMany, Weigh
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL
from tests.plain.making import events, talked
from tests.screens.hands import PICK_UP, Hours, app_for, settled, shelf, shown, work_to

AT_HALF = 9
"""So many presses lead to halfway of the first section."""

TO_THE_END = 17
"""So many presses lead to the end of it."""


def at_half(at: Path, name: str) -> Path:
    """Return a garment whose section was picked up to halfway, and that waits for its count."""
    (at / name).mkdir()
    folder = shelf(at / name)
    work_to(folder, PICK_UP, *[Press()] * AT_HALF)
    return folder


@pytest.mark.parametrize(
    ("keys", "lines"),
    [
        (("enter",), ("f",)),
        (("r", "enter"), ("enter",)),
        (("space", "space"), ("d", "d")),
        (("9", "enter"), ("9",)),
        (("1", "1", "enter", "1", "1"), ("11", "1", "1")),
    ],
)
async def test_both_mouths_answer_a_count_alike(keys: tuple[str, ...], lines: tuple[str, ...], tmp_path: Path) -> None:
    """Enter says that it is right, as r and enter do; digits say another number; a press carries on."""
    screens, plain = at_half(tmp_path, "screens"), at_half(tmp_path, "plain")
    app = app_for(screens)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        assert app.in_hand is not None
        await pilot.press(*keys, "q", "enter")
        await settled(pilot)
    talked(plain, *lines, "q", "")
    assert events(screens) == events(plain)


def at_the_end(at: Path, name: str) -> Path:
    """Return a garment whose first section, of 17 stitches, was picked up to its end without a count."""
    (at / name).mkdir()
    folder = shelf(at / name)
    work_to(folder, PICK_UP, *[Press()] * TO_THE_END)
    return folder


@pytest.mark.parametrize(
    ("keys", "lines"),
    [
        (("enter",), ("f",)),
        (("r", "enter"), ("enter",)),
        (("space", "space"), ("d", "d")),
        (("1", "7", "enter"), ("17",)),
    ],
)
async def test_both_mouths_answer_the_end_of_a_section_alike(
    keys: tuple[str, ...], lines: tuple[str, ...], tmp_path: Path
) -> None:
    """At the end of a section of more than 15: enter, r and digits take the count; a press goes on into the next."""
    screens, plain = at_the_end(tmp_path, "screens"), at_the_end(tmp_path, "plain")
    app = app_for(screens)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        assert "the end: count, it should be 17" in shown(app)
        await pilot.press(*keys, "q", "enter")
        await settled(pilot)
    talked(plain, *lines, "q", "")
    assert events(screens) == events(plain)


async def test_enter_counts_only_while_the_count_is_due(tmp_path: Path) -> None:
    """Counted once, enter means the end of the step again; after a press that carries on, too."""
    folder = at_half(tmp_path, "due")
    hand = InHand.open(folder, clock=Hours().clock())
    talk = Talk(hand, "", USUAL)
    assert due(talk.state) == AT_HALF
    ask_for(talk, "finish")
    assert (due(talk.state), talk.said) == (None, "9 counted, as planned.")
    ask_for(talk, "finish")
    assert talk.alarm
    talk.take_back()
    while due(talk.state) is not None:
        assert hand.do(Press()) is None
    ask_for(talk, "finish")
    assert talk.alarm
    hand.put_down()


async def test_the_count_taken_is_said(tmp_path: Path) -> None:
    """The sentence is on the screen, and the key at the foot is the end of the step again."""
    app = app_for(at_half(tmp_path, "said"))
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("enter")
        assert "9 counted, as planned" in shown(app)
        assert "enter end step" in shown(app)


@pytest.mark.parametrize(("counted", "first"), [(3, "Count again"), (8, "I missed a press, or pressed twice")])
async def test_a_count_far_off_is_counted_again_first(counted: int, first: str, tmp_path: Path) -> None:
    """Of 9: 3 is far off, and the first answer, where the caret is, counts again, with why; 8 may well be true."""
    folder = at_half(tmp_path, "far")
    talk = Talk(InHand.open(folder, clock=Hours().clock()), "", USUAL)
    talk.typed = str(counted)
    ask_for(talk, "finish")
    asked = talk.asked
    assert isinstance(asked, Explain)
    assert asked.options[0].text == first
    assert sorted(one.text for one in asked.options) == sorted([AGAIN, *(text for _, text in ANSWERS)])
    assert ("that is 6 fewer than your presses" in asked.told) == (first == AGAIN)
    assert ("fewer than your presses" in asked.spoken) == (first == AGAIN)
    at = [one.text for one in asked.options].index("The row is right; I picked up a different number")
    talk.answer(at)
    assert isinstance(talk.asked, Weigh)
    talk.back()
    assert isinstance(talk.asked, Explain)
    talk.answer([one.text for one in asked.options].index(AGAIN))
    assert isinstance(talk.asked, HowMany)


def test_a_rest_that_cannot_be_is_counted_again_before_it_is_mended(tmp_path: Path) -> None:
    """With 24 counted of a section of 17 nothing is left to pick: the first way is to count again, the mends follow."""
    folder = at_half(tmp_path, "cannot")
    talk = Talk(InHand.open(folder, clock=Hours().clock()), "", USUAL)
    talk.typed = "24"
    ask_for(talk, "finish")
    assert isinstance(talk.asked, Explain)
    talk.answer(2)
    asked = talk.asked
    assert isinstance(asked, Weigh)
    assert asked.answers.rows[0].text == AGAIN
    assert asked.answers.rows[0].more == "The whole section has only 17 stitches."
    before = talk.state
    talk.answer(1)
    assert talk.state is not before
    assert talk.said.startswith(f"24 counted: {asked.answers.rows[1].text}")
