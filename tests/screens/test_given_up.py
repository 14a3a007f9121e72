"""A step finished or left out with more to do: what it changes is said at once, and undo is the first answer."""

from pathlib import Path

from finishing_tui.screens.asked_large import LargeAsk
from finishing_tui.screens.at_the_needles import AtTheNeedles
from tests.plain.making import talked
from tests.screens.hands import JOIN, app_for, front, needles, settled, shelf, shown, work_to


async def test_ending_it_says_what_it_changes_and_can_be_taken_back(tmp_path: Path) -> None:
    """The join with no pair worked is done; the later steps are named; the first answer undoes it."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        before = needles(app).talk.state
        await pilot.press("enter", "2")
        assert isinstance(front(app), LargeAsk)
        assert "This affects later steps" in shown(app)
        said = " ".join(shown(app).split())
        assert "12 live stitches left: 6 on the left b" in said
        await pilot.press("enter")
        assert isinstance(front(app), AtTheNeedles)
        assert needles(app).talk.state.steps == before.steps
        assert "Taken back: the end of step 2" in shown(app)
        await pilot.press("o", "o")
        assert "This affects later steps" in shown(app)
        await pilot.press("escape")
        assert needles(app).talk.state.steps[JOIN].status == "left-out"
        await settled(pilot)


def test_line_by_line_too(tmp_path: Path) -> None:
    """The same words, and the same first answer."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    said = talked(folder, "f", "2", "1", "q", "")
    assert "This affects later steps." in said
    assert any(line == "1: Go back and finish step 2." for line in said)
    assert "Taken back: the end of step 2." in said
