"""Coming back: every way on is said at the foot, and each sentence ends once."""

from pathlib import Path

import pytest

from finishing_tui.garment.hand import InHand
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.coming_back import ComingBackScreen
from tests.plain.making import talked
from tests.screens.hands import JOIN, PICK_UP, Hours, app_for, front, settled, shelf, shown, work_to


def _left_at(at: Path, step: int) -> Path:
    folder = shelf(at)
    work_to(folder, step)
    hand = InHand.open(folder, clock=Hours().clock())
    hand.pick_up()
    assert hand.put_down()
    return folder


@pytest.mark.parametrize("key", ["q", "enter", "escape"])
async def test_every_key_shown_goes_on_to_the_needles(key: str, tmp_path: Path) -> None:
    """In the smallest terminal the foot names the keys that go on, and each of them does."""
    app = app_for(_left_at(tmp_path, PICK_UP))
    async with app.run_test(size=(40, 20)) as pilot:
        await settled(pilot)
        assert isinstance(front(app), ComingBackScreen)
        assert "enter knit on" in shown(app)
        await pilot.press(key)
        assert isinstance(front(app), AtTheNeedles)


@pytest.mark.parametrize("step", [0, JOIN, PICK_UP])
async def test_each_sentence_ends_once(step: int, tmp_path: Path) -> None:
    """No full stop follows another, whatever the recipe's own words end in."""
    app = app_for(_left_at(tmp_path, step))
    async with app.run_test(size=(100, 30)) as pilot:
        await settled(pilot)
        assert isinstance(front(app), ComingBackScreen)
        assert ".." not in shown(app)


async def test_no_count_is_asked_of_what_should_not_be_there(tmp_path: Path) -> None:
    """Before the first loop of a section nothing could have slipped off it; any holder can be counted."""
    app = app_for(_left_at(tmp_path, PICK_UP))
    async with app.run_test() as pilot:
        await settled(pilot)
        assert isinstance(front(app), ComingBackScreen)
        assert "Count any needle or holder." in shown(app)
        assert "should be 0" not in shown(app)
        await pilot.press("8", "enter")
        await settled(pilot)
        assert isinstance(front(app), AtTheNeedles)
        assert "8 counted: the front holder." in shown(app)


def test_line_by_line_no_useless_count_is_asked_either(tmp_path: Path) -> None:
    """Before the first loop only any holder may be counted; after some, it is said how many there should be."""
    folder = _left_at(tmp_path, PICK_UP)
    assert any("count any needle or holder." in line.lower() for line in talked(folder, "q", ""))
    said = " ".join(talked(folder, "d", "q", "") + talked(folder, "q", ""))
    assert "any dropped stitches?" in said.lower()
    assert "it should be 1." in said
