"""The ledger on the screen and line by line: the same figures, and no key that does nothing in silence."""

from pathlib import Path

from finishing_tui.garment.commands import Press, TakeCount
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.ledger import LedgerScreen
from tests.plain.making import talked
from tests.screens.hands import JOIN, PICK_UP, app_for, front, settled, shelf, shown, work_to


async def test_the_ledger_is_opened_read_to_its_end_and_left(tmp_path: Path) -> None:
    """``l`` opens it, the arrows alone reach the oldest act, escape leads back, and nothing has changed."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 4)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("l")
        await settled(pilot)
        assert isinstance(front(app), LedgerScreen)
        assert "4  neck needle" in shown(app)
        seen = shown(app)
        for _ in range(8):
            await pilot.press("right")
            seen += shown(app)
        assert "newest first" in seen
        assert "4 presses · 4 from the edge to the neck needle" in " ".join(seen.split())
        assert "garment started" in seen
        await pilot.press("escape")
        assert isinstance(front(app), AtTheNeedles)


async def test_a_place_that_is_not_as_planned_is_to_be_noticed(tmp_path: Path) -> None:
    """A count that differs stands there as what the plan has."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN, TakeCount(7, "left_front"))
    app = app_for(folder)
    async with app.run_test(size=(40, 20)) as pilot:
        await settled(pilot)
        await pilot.press("l")
        await settled(pilot)
        assert "the plan has 6" in shown(app)


def test_line_by_line_it_says_the_same(tmp_path: Path) -> None:
    """The word, or its letter, says every place, the sum, and the last acts; a number says how many of them."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN, TakeCount(7, "left_front"))
    said = talked(folder, "l", "ledger 2", "ledger two", "q", "")
    assert "on the left front shoulder: 7, the plan has 6." in said
    assert any(line.startswith("in all: ") and " = " in line for line in said)
    assert sum(line.startswith("what was entered") for line in said) == 2
    assert any("1 found on the left front shoulder" in line for line in said)
    assert any("How many entries?" in line for line in said)
