"""On the screen, the time of a sitting in which the computer's clock was set."""

import re
from datetime import timedelta
from pathlib import Path

import pytest

from finishing_tui.garment.hand import InHand
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.coming_back import ComingBackScreen
from finishing_tui.screens.looking import Looking
from tests.garment.clocks import BACK, FORWARD, SetClock
from tests.screens.hands import PICK_UP, comes_to, front, settled, shelf, shown, work_to
from tests.screens.scenes import LARGE, SIZES


def sat(at: Path, *, cut_off: bool = False) -> Path:
    """Return a garment that was picked up at its long edge and put down, or cut off."""
    folder = shelf(at, **LARGE)
    work_to(folder, PICK_UP)
    hand = InHand.open(folder, clock=SetClock().clock())
    hand.pick_up()
    assert hand.flush(30)
    if cut_off:
        hand.close()
    else:
        assert hand.put_down()
    return folder


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("ahead", [FORWARD, BACK])
@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
async def test_a_clock_set_in_mid_sitting(size: tuple[int, int], ahead: timedelta, tmp_path: Path) -> None:
    """Twelve presses of twenty seconds, the clock set after six: four minutes gone, nearly twenty to come."""
    folder = shelf(tmp_path, **LARGE)
    work_to(folder, PICK_UP)
    clock = SetClock()
    app = FinishingApp(folder.parent, garment=folder, clock=clock.clock())
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        for at in range(12):
            clock.ahead = timedelta() if at < 6 else ahead
            clock.seconds += 20
            await pilot.press("space")
        await settled(pilot)
        assert re.findall(r"(\S+) min\b(?! left)", shown(app)) == ["4"]
        assert "about 20 min left" in shown(app)


@pytest.mark.parametrize("cut_off", [True, False])
@pytest.mark.parametrize("ahead", [BACK, -FORWARD])
async def test_coming_back_before_it_was_put_down(ahead: timedelta, tmp_path: Path, *, cut_off: bool) -> None:
    """Neither the shelf nor the screen says how long ago: that time is still to come."""
    folder = sat(tmp_path, cut_off=cut_off)
    app = FinishingApp(folder.parent, clock=SetClock(ahead=ahead).clock())
    async with app.run_test(size=(80, 24)) as pilot:
        await comes_to(pilot, lambda: "Slate crew · size large" in shown(app))
        assert " ago" not in shown(app)
        await pilot.press("enter")
        await comes_to(pilot, lambda: isinstance(front(app), ComingBackScreen))
        text = shown(app)
        assert " ago" not in text
        assert "put down" not in text
        assert ("The program stopped last time" in text) is cut_off


@pytest.mark.parametrize("ahead", [FORWARD, BACK])
@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
async def test_another_window_in_which_the_clock_was_set(
    size: tuple[int, int], ahead: timedelta, tmp_path: Path
) -> None:
    """Looked at only, its minutes are known by the time of day: when that was set, none are shown."""
    folder = shelf(tmp_path, **LARGE)
    work_to(folder, PICK_UP)
    clock = SetClock()
    other = InHand.open(folder, clock=clock.clock())
    other.pick_up()
    assert other.flush(30)
    app = FinishingApp(folder.parent, garment=folder, clock=clock.clock())
    async with app.run_test(size=size) as pilot:
        await comes_to(pilot, lambda: isinstance(front(app), ChoiceBox))
        clock.seconds += 240
        await pilot.press("1")
        await comes_to(pilot, lambda: isinstance(front(app), Looking) and "looking only" in shown(app))
        assert "4 min" in shown(app)
        clock.ahead = ahead
        screen = front(app)
        assert isinstance(screen, Looking)
        screen.draw()
        await settled(pilot)
        assert not re.search(r"\d min\b", shown(app))
    assert other.put_down()
