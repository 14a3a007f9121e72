"""A key that is held down, in the whole program: with the times that its keys are stamped with, set."""

from dataclasses import replace
from pathlib import Path

import pytest
from textual.events import Key
from textual.pilot import Pilot

from finishing_tui.garment.clock import Clock
from finishing_tui.garment.commands import Press
from finishing_tui.garment.stops import due
from finishing_tui.garment.work import StepWork
from finishing_tui.screens.app import FinishingApp
from tests.screens.hands import PICK_UP, Hours, comes_to, needles, settled, shelf, shown, work_to

REPEAT = (0.45, *(0.033, 0.03, 0.034, 0.031) * 12)
"""A pause, and the even beat of a keyboard."""


def app_at(at: Path, *then: Press) -> FinishingApp:
    """Return the program with a garment whose first section is under way, by the stamps of its keys."""
    folder = shelf(at)
    work_to(folder, PICK_UP, *then)
    clock: Clock = replace(Hours().clock(), came=Clock().came)
    return FinishingApp(folder.parent, garment=folder, clock=clock)


async def press(pilot: Pilot[None], gaps: tuple[float, ...], key: str = "space") -> None:
    """Send a key once, and once more after each gap, as a driver stamps them; then everything settles."""
    at = Key(key, None).time + 10
    for gap in (0.0, *gaps):
        at += gap
        one = Key(key, " " if key == "space" else None)
        one.time = at
        pilot.app.post_message(one)
    await settled(pilot)


def work_of(app: FinishingApp) -> StepWork:
    """Return the work under way at the needles."""
    standing = needles(app).talk.state.standing
    assert standing is not None
    assert standing.work is not None
    return standing.work


async def test_it_stops_at_the_count_and_one_backspace_takes_it_back(tmp_path: Path) -> None:
    """Fifty keys of a repeat are nine loops; a second hold goes on, to the end of the section and no further."""
    app = app_at(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await press(pilot, REPEAT)
        await comes_to(pilot, lambda: due(needles(app).talk.state) == 9)
        await settled(pilot)
        assert "Key held: 9 counted; it stops here" in shown(app)
        await pilot.press("backspace")
        await settled(pilot)
        assert work_of(app).progress[0].mark.units == 0
        await pilot.press("u")
        await press(pilot, REPEAT)
        await comes_to(pilot, lambda: work_of(app).at == 1)
        await settled(pilot)
        assert work_of(app).progress[1].mark.units == 0


@pytest.mark.parametrize("gaps", [(0.4, 0.09, 0.092, 0.091), (0.0,) * 10, (0.2,) * 10, (0.5, 0.06, 0.08, 0.06, 0.08)])
async def test_taps_are_all_counted(gaps: tuple[float, ...], tmp_path: Path) -> None:
    """Quick ones, ones of one read, even ones at the pace of hands, and uneven ones."""
    app = app_at(tmp_path, *[Press()] * 8)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        known = needles(app).talk.hand.known
        await press(pilot, gaps)
        assert needles(app).talk.hand.known == known + 1 + len(gaps)


async def test_a_tap_after_a_hold_is_counted(tmp_path: Path) -> None:
    """Let go, and pressed again: it goes on from the count, as a press does."""
    app = app_at(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await press(pilot, (*REPEAT, 0.15))
        assert due(needles(app).talk.state) is None
        assert work_of(app).progress[0].mark.loops == 10
