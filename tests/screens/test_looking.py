"""A garment that another window has in hand, or where nothing can be written: it is looked at, and followed."""

from pathlib import Path

import pytest
from textual.pilot import Pilot

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import OnlyToRead
from finishing_tui.garment.journal import journal as journals
from finishing_tui.garment.journal.errors import Unreachable
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.looking import Looking
from tests.plain.making import talked
from tests.screens.hands import PICK_UP, Hours, app_for, comes_to, front, settled, shelf, shown, still, work_to


def picked_up(at: Path) -> tuple[Path, InHand]:
    """Return the garment at its picking up, and another window that has it in hand."""
    folder = shelf(at)
    work_to(folder, PICK_UP, *[Press()] * 4)
    other = InHand.open(folder, clock=Hours().clock())
    other.pick_up()
    assert other.flush(60)
    return folder, other


async def looked_again(app: FinishingApp, pilot: Pilot[None]) -> None:
    """Look at the journal once more, and wait until that is done."""
    screen = app.screen
    assert isinstance(screen, Looking)
    screen.follow()
    await settled(pilot)


async def followed(app: FinishingApp, pilot: Pilot[None], told: str) -> None:
    """Wait until what is ``told`` by then is there, and keys are taken there: another look may be under way."""
    await looked_again(app, pilot)
    await comes_to(pilot, lambda: front(app).is_mounted and told in shown(app))


async def test_what_the_other_window_does_is_followed(tmp_path: Path) -> None:
    """Its presses show here, nothing can be changed here, and once it is put down it can be taken up here."""
    folder, other = picked_up(tmp_path)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        assert isinstance(front(app), ChoiceBox)
        await pilot.press("1")
        await comes_to(pilot, lambda: isinstance(front(app), Looking) and "looking only" in shown(app))
        assert "neck needle 4" in shown(app)
        for _ in range(3):
            assert other.do(Press()) is None
        assert other.flush(60)
        await followed(app, pilot, "neck needle 7")
        await pilot.press("space")
        assert "This garment is open in another window" in shown(app)
        await pilot.press("l")
        assert "7  neck needle" in shown(app)
        assert other.do(Press()) is None
        assert other.flush(60)
        await comes_to(pilot, lambda: "8  neck needle" in shown(app))  # the page follows too
        await pilot.press("escape")
        await comes_to(pilot, lambda: isinstance(front(app), Looking))
        assert other.put_down()
        looking = front(app)
        assert isinstance(looking, Looking)
        await followed(app, pilot, "The other window has put this garment down.")
        looking.follow()  # it is not asked over the question itself
        await still(pilot)
        await pilot.press("2")
        await comes_to(pilot, lambda: isinstance(front(app), Looking))
        await looked_again(app, pilot)
        assert isinstance(front(app), Looking)  # it is not asked again and again
        await pilot.press("q")
        await settled(pilot)
    assert app.in_hand is None


async def test_it_is_taken_up_here_once_it_is_put_down(tmp_path: Path) -> None:
    """The offer taken, it is in hand here, with everything that was done there."""
    folder, other = picked_up(tmp_path)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("1")
        await comes_to(pilot, lambda: isinstance(front(app), Looking))
        assert other.do(Press()) is None
        assert other.put_down("on the sofa")
        await followed(app, pilot, "The other window has put this garment down.")
        await pilot.press("enter")
        await comes_to(pilot, lambda: "You wrote: on the sofa" in shown(app))
        assert app.in_hand is not None
        await pilot.press("escape")
        assert isinstance(front(app), AtTheNeedles)
        assert not isinstance(front(app), Looking)
        assert "neck needle 5" in shown(app)
        await settled(pilot)


def only_to_read(folder: Path) -> object:
    """Refuse the lock, as a folder does in which nothing can be written."""
    raise OnlyToRead(f"Nothing can be written in the folder {folder.name} (read-only); it can be looked at.")


async def test_where_nothing_can_be_written_nothing_is_begun(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A garment that was never picked up has no journal to look at: what would help is said, and no look is offered."""
    folder = shelf(tmp_path)
    monkeypatch.setattr(journals, "Lock", only_to_read)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        said = " ".join(shown(app).replace("│", " ").split())
        assert "the garment in it cannot be begun. Copy the folder to where you can write" in said
        assert "look only" not in said
        await pilot.press("1")
        await settled(pilot)
        assert not isinstance(front(app), ChoiceBox)
    with pytest.raises(Unreachable, match="cannot be begun"):
        talked(folder, "q")


async def test_where_nothing_can_be_written_it_can_be_looked_at(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The sentence that says so offers to look, and looking works; why nothing can be done is said as it is."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 4)
    monkeypatch.setattr(journals, "Lock", only_to_read)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        assert "Nothing can be written in the folder" in " ".join(shown(app).split())
        await pilot.press("1")
        assert isinstance(front(app), Looking)
        await looked_again(app, pilot)
        assert isinstance(front(app), Looking)
        await pilot.press("space")
        assert "This garment's folder is read-only" in shown(app)
        await settled(pilot)
    said = talked(folder, "yes", "where", "d", "q")
    assert "on the neck needle: 4, in use now." in said
