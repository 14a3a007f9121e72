"""A count that is due at halfway is answered by enter, by a number, or later; by keys and by words alike."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.stops import due
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import ask_for
from finishing_tui.talk.keys import USUAL
from tests.plain.making import events, talked
from tests.screens.hands import PICK_UP, Hours, app_for, settled, shelf, shown, work_to

AT_HALF = 9
"""So many presses lead to halfway of the first section."""


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
