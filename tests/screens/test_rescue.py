"""A full disk at the needles: where the rest is kept is said on leaving, and asked about before coming back."""

import signal
from functools import partial
from pathlib import Path

import pytest
from textual.events import Key

from finishing_tui.commands import work
from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import rescue_places as places
from finishing_tui.garment.journal.rescue_places import RescuePlace
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.coming_back import ComingBackScreen
from finishing_tui.screens.looking import Looking
from finishing_tui.screens.shelf import ShelfScreen
from finishing_tui.settings import Settings
from finishing_tui.talk.acts import put_down
from tests.full_disk import FullDisk, file_of
from tests.screens.hands import JOIN, app_for, front, needles, settled, shelf, shown, still, work_to


@pytest.fixture
def disk(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> FullDisk:
    """Return a disk that is not full yet; rescue files have a place of their own."""
    monkeypatch.setattr(places, "places", lambda: (RescuePlace(tmp_path / "elsewhere"),))
    monkeypatch.setattr(put_down, "PATIENCE", 0.2)
    return FullDisk(monkeypatch)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """Return a garment before the join, put down."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    return folder


def joined(folder: Path) -> int:
    """Return how many pairs the journal says are joined."""
    hand = InHand.open(folder, look=True)
    hand.close()
    joined = hand.state.steps[JOIN].work
    assert joined is not None
    return joined.progress[0].mark.units


def words(app: FinishingApp) -> str:
    """Return all words on the screen, without the frames around them."""
    return " ".join("".join(sign for sign in shown(app) if sign not in "│╭╮╰╯─").split())


async def test_left_taken_in_and_nothing_left_to_say(folder: Path, disk: FullDisk) -> None:
    """Left unsaved, that is said at once; picked up again with room, it is asked and taken in: the count is there.

    The program's last sentence says nothing of it any more, since it is saved by then.
    """
    app = app_for(folder)
    async with app.run_test(size=(100, 30)) as pilot:
        await settled(pilot)
        disk.full = True
        await pilot.press("space", "space", "q", *"bag", "enter")
        assert isinstance(front(app), ChoiceBox)
        await pilot.press("2")
        assert "could not be saved (the disk is full)" in words(app)
        assert "saves itself" not in words(app)
        (given_up,) = app.given_up
        file = file_of(given_up)
        await pilot.press("enter")
        assert isinstance(front(app), ShelfScreen)
        disk.full = False
        await pilot.press("enter")
        assert isinstance(front(app), ChoiceBox)
        assert "Add the unsaved work?" in words(app)
        assert app.in_hand is None
        await pilot.press("enter")
        assert isinstance(front(app), ComingBackScreen)
        assert "You wrote: bag" in words(app)
        await pilot.press("escape")
        assert needles(app).talk.state.sittings
        assert app.given_up == ()
    assert not file.exists()
    assert joined(folder) == 2


@pytest.mark.parametrize("leaves", [True, False])
async def test_left_for_later(folder: Path, disk: FullDisk, *, leaves: bool) -> None:
    """Left for later, or the question left: nothing changes, and one can look at the garment, or is on the shelf."""
    hand = disk.left_full(folder)
    file = file_of(hand.given_up)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await settled(pilot)
        await pilot.press(*(["escape"] if leaves else ["down", "enter"]))
        assert isinstance(front(app), ShelfScreen if leaves else Looking)
        if not leaves:
            await pilot.press("space")
            await settled(pilot)
            assert "until you decide" in words(app)
        assert app.in_hand is None
    assert file.exists()
    assert joined(folder) == 0


async def test_a_number_typed_ahead_throws_nothing_away(folder: Path, disk: FullDisk) -> None:
    """The question comes by itself, perhaps under hands that type a count: what was typed before it was drawn is lost.

    Nor does a number that is typed on: what cannot be had back is asked once more, and no digit answers that.
    """
    file = file_of(disk.left_full(folder).given_up)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await still(pilot)
        assert isinstance(front(app), ChoiceBox)
        await pilot.press("escape")
        await still(pilot)
        for key, sign in (("enter", "\r"), ("3", "3"), ("2", "2"), ("enter", "\r")):
            app.post_message(Key(key, sign))
        await still(pilot)
        assert "Add the unsaved work?" in words(app)
        await pilot.press("3", "2")
        assert "Throw away what you counted then?" in words(app)
        await pilot.press("3")
        assert file.exists()
        await pilot.press("down", "enter")
        await settled(pilot)
        assert not file.exists()
        assert isinstance(front(app), ComingBackScreen)
    assert joined(folder) == 0


async def test_one_that_no_longer_fits_is_said_at_the_needles(folder: Path, disk: FullDisk) -> None:
    """It is not asked about; a sentence at the needles names it."""
    file = file_of(disk.left_full(folder).given_up)
    hand = InHand.open(folder)
    hand.pick_up()
    assert hand.do(Press()) is None
    assert hand.put_down()
    app = app_for(folder)
    async with app.run_test(size=(160, 50)) as pilot:
        await settled(pilot)
        assert isinstance(front(app), ComingBackScreen)
        await pilot.press("escape")
        await settled(pilot)
        assert "no longer fits" in words(app)
        assert file.name in words(app).replace(" ", "")
    assert file.exists()


async def test_still_full(folder: Path, disk: FullDisk, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where they cannot be taken in, that is said, and they stay where they are."""
    monkeypatch.setattr("finishing_tui.garment.rescued.PATIENCE", 0.2)
    file = file_of(disk.left_full(folder).given_up)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await settled(pilot)
        disk.full = True
        await pilot.press("enter")
        assert "could not be added (the disk is full)" in words(app)
        await pilot.press("enter")
        disk.full = False
        assert isinstance(front(app), ShelfScreen)
    assert file.exists()


@pytest.mark.parametrize("lost", [True, False])
def test_what_the_program_says_at_its_end(
    folder: Path, disk: FullDisk, monkeypatch: pytest.MonkeyPatch, *, lost: bool
) -> None:
    """Left by ctrl+q with a full disk: one sentence names the file, or says that so many are lost."""
    if lost:
        monkeypatch.setattr(places, "places", lambda: ())

    async def presses(pilot: object) -> None:
        app = pilot.app  # type: ignore[attr-defined]
        await settled(pilot)  # type: ignore[arg-type]
        disk.full = True
        await pilot.press("space", "space", "space", "ctrl+q")  # type: ignore[attr-defined]
        assert app.given_up

    run = partial(FinishingApp.run, headless=True, auto_pilot=presses)
    monkeypatch.setattr(FinishingApp, "run", lambda app, **_: run(app))
    monkeypatch.setattr(signal, "signal", lambda *_: None)  # ctrl+c goes on ending the tests
    with pytest.raises(FinishingError) as said:
        work.opened(folder.parent, work.Ready(Settings(), ""), garment=folder)
    assert str(said.value).startswith(
        "The last 4 entries are lost (the disk is full)." if lost else "The last 4 entries could not be saved"
    )
    assert "itself" not in str(said.value)
