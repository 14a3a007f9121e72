"""The shelf and the demo garments: opening, looking only, and everything that can be wrong with a garment."""

import shutil
import signal
from pathlib import Path
from typing import Any

import pytest
from textual.screen import Screen

from finishing_tui import shipped
from finishing_tui.cli import main
from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import NAME
from finishing_tui.garment.shelf import OnShelf
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.demos import DemoScreen
from finishing_tui.screens.help import HelpScreen
from finishing_tui.screens.shelf import FIRST, WHAT, ShelfScreen, _lines
from finishing_tui.screens.starting.recipes import RecipesScreen
from finishing_tui.widgets.choices import Choices
from tests.screens.hands import JOIN, PICK_UP, app_for, front, needles, settled, shelf, shown, work_to
from tests.screens.scenes import SIZES


def _words(app: FinishingApp) -> str:
    return " ".join(shown(app).split())


async def test_a_garment_is_picked_up_and_put_down(tmp_path: Path) -> None:
    """The shelf says how far a garment is; a key picks it up; put down, the shelf is there again and says so."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = FinishingApp(folder.parent)
    async with app.run_test() as pilot:
        await settled(pilot)
        assert "step 4 of 12, Pick up the neckband" in _words(app)
        await pilot.press("1")
        needles(app)
        await pilot.press("space", "q", "enter")
        assert isinstance(front(app), ShelfScreen)
        assert app.in_hand is None
        InHand.open(folder).close()  # the lock is free again


async def test_a_second_window_may_only_look(tmp_path: Path) -> None:
    """A garment in hand elsewhere is told in a sentence; it can be looked at, and no key changes it."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    elsewhere = InHand.open(folder)
    app = app_for(folder)
    async with app.run_test() as pilot:
        assert isinstance(front(app), ChoiceBox)
        await pilot.press("1")
        state = needles(app).talk.state
        await pilot.press("space", "x", "enter", "backspace", "o", "p", "r", "t", "u", "n", "5")
        assert needles(app).talk.state is state
        assert "you can only look here" in _words(app)
        assert "looking only" in _words(app)
        await pilot.press("right")
        assert "Turn the right side out" in _words(app)
        await pilot.press("q")
        assert isinstance(front(app), ShelfScreen)
    elsewhere.close()


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ("damaged", "damaged"),
        ("newer", "newer"),
        ("not ours", "journal"),
        ("no recipe", "every_face"),
        ("bad file", "garment.toml"),
    ],
)
async def test_what_cannot_be_opened_is_told_in_a_sentence(wrong: str, told: str, tmp_path: Path) -> None:
    """Whatever is wrong with a garment is a sentence on the shelf and when it is opened, and the rest goes on."""
    folder = shelf(tmp_path)
    if wrong in {"damaged", "newer"}:
        work_to(folder, PICK_UP)
    _spoil(folder, wrong)
    app = app_for(folder)
    async with app.run_test() as pilot:
        assert isinstance(front(app), ChoiceBox)
        assert told in _words(app)
        await pilot.press("enter")
        await settled(pilot)
        assert isinstance(front(app), ShelfScreen)
        assert told in _words(app) or wrong == "no recipe"  # its recipe is only read when it is opened
        assert app.in_hand is None


def _spoil(folder: Path, wrong: str) -> None:
    journal = folder / NAME
    if wrong == "damaged":
        raw = bytearray(journal.read_bytes())
        raw[len(raw) // 3 : len(raw) // 3 + 4000] = bytes(4000)
        journal.write_bytes(raw)
    elif wrong == "newer":
        raw = bytearray(journal.read_bytes())
        raw[60:64] = (99).to_bytes(4, "big")  # the user version in the header of a database, as SQLite documents it
        journal.write_bytes(raw)
    elif wrong == "not ours":
        journal.write_text("a shopping list\n" * 100)
    elif wrong == "no recipe":
        (folder.parent / "every_face.toml").unlink()
    else:
        (folder / "garment.toml").write_text('format = 1\nsize = "small')


async def test_a_changed_recipe_is_offered_and_may_be_declined(tmp_path: Path) -> None:
    """A file edited since it was taken is asked about; taken it holds for what is to come, declined nothing changes."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    file = folder / "garment.toml"
    file.write_text(file.read_text().replace("Slate crew", "Ash crew"))
    for key, title in (("1", "Slate crew"), ("2", "Ash crew")):
        app = app_for(folder)
        async with app.run_test() as pilot:
            await settled(pilot)
            while not isinstance(app.screen, ChoiceBox):
                await pilot.press("escape")
            await pilot.press(key, "enter")
            assert app.in_hand is not None
            assert app.in_hand.state.plan.title == title


async def test_demo_garments_are_copied_to_the_shelf_and_opened(tmp_path: Path) -> None:
    """The demo garments are listed with what they are; the copy is the shelf's own, and what came is untouched."""
    came = {path: path.read_bytes() for folder in shipped.demos().values() for path in folder.iterdir()}
    app = FinishingApp(tmp_path / "shelf", demos=True)
    async with app.run_test() as pilot:
        await settled(pilot)
        assert isinstance(front(app), DemoScreen)
        await pilot.press("enter")
        await settled(pilot)
        await pilot.press("enter")
        await settled(pilot)
        assert isinstance(front(app), AtTheNeedles)
        assert app.in_hand is not None
        assert app.in_hand.folder.parent == tmp_path / "shelf"
        await pilot.press("space", "q", "enter")
        assert isinstance(front(app), ShelfScreen)
    assert came == {path: path.read_bytes() for folder in shipped.demos().values() for path in folder.iterdir()}


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("name", sorted(shipped.demos()))
async def test_every_demo_garment_opens(name: str, tmp_path: Path) -> None:
    """Each of them, not begun, under way or finished, is there with a key that goes on, or back where all is done."""
    shutil.copytree(shipped.demo(name), tmp_path / name)
    app = app_for(tmp_path / name)
    async with app.run_test(size=(40, 20)) as pilot:
        await settled(pilot)
        while not isinstance(front(app), AtTheNeedles):
            await pilot.press("escape")
        state = needles(app).talk.state
        await pilot.press(*(("space",) if state.current is not None else ("backspace", "backspace")))
        assert needles(app).talk.state != state


@pytest.mark.parametrize("name", ["SIGTERM", "SIGHUP"])
async def test_a_signal_puts_the_garment_down(name: str, tmp_path: Path) -> None:
    """A hang-up or a terminate signal ends the sitting properly: all is saved, and the garment is free."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await pilot.press("space", "space", "space")
        signal.raise_signal(signal.Signals[name])
        await pilot.pause()
        assert app.in_hand is None
    hand = InHand.open(folder)
    assert hand.state.sittings[-1].ended
    standing = hand.state.standing
    assert standing is not None
    assert standing.work is not None
    assert standing.work.progress[0].mark.loops == 3
    hand.close()


@pytest.mark.parametrize("words", [[], ["demo"], ["work", "."], ["shelf"]])
def test_without_a_terminal_the_screens_say_so(
    words: list[str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """Asked for where there is no terminal, they answer with one sentence and status 2, and change nothing."""
    monkeypatch.setenv("FINISHING_SHELF", str(tmp_path / "shelf"))
    assert main(words) == 2
    assert capsys.readouterr().err.count("\n") == 1
    assert not (tmp_path / "shelf").exists()


def test_a_garment_is_named_by_its_folder_or_its_name(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """A name there is not is refused; demo garments are listed and copied for programs."""
    monkeypatch.setenv("FINISHING_SHELF", str(tmp_path / "shelf"))
    assert main(["work", "nowhere"]) == 2
    assert "no folder 'nowhere'" in capsys.readouterr().err
    assert main(["demo", "--json"]) == 0
    assert '"demos"' in capsys.readouterr().out
    assert main(["demo", sorted(shipped.demos())[0], "--json"]) == 0
    assert len(list((tmp_path / "shelf").iterdir())) == 1
    assert main(["demo", "nothing-of-that-name"]) == 2


async def test_nothing_that_was_done_is_lost_when_it_ends_at_once(tmp_path: Path) -> None:
    """Leaving with ctrl+q in the middle of a question loses nothing."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, Press())
    app = app_for(folder)
    async with app.run_test() as pilot:
        await pilot.press("space", "n", "a", "ctrl+q")
    hand = InHand.open(folder)
    standing = hand.state.standing
    assert standing is not None
    assert standing.work is not None
    assert standing.work.progress[0].mark.loops == 2
    assert hand.state.sittings[-1].ended
    hand.close()


async def test_a_shelf_of_many_garments_is_there_at_once_and_fills_in(tmp_path: Path) -> None:
    """Two hundred: all named at the first look; the caret is on the garment that one comes back from."""
    folder = shelf(tmp_path)
    for number in range(200):
        shutil.copytree(folder, folder.parent / f"many-{number:03}")
    work_to(folder.parent / "many-150", JOIN)
    app = FinishingApp(folder.parent)
    async with app.run_test() as pilot:
        screen = front(app)
        assert isinstance(screen, ShelfScreen)
        assert len(screen.query_one(Choices)) == 201
        await pilot.press("down")
        await settled(pilot)
        assert "201 garments in progress" in _words(app)
        assert "opening" not in _words(app)
        await pilot.press(*["up"] * 3)
        assert "▸ 1 Slate crew · size small" in _words(app)
        assert "step 2 of 12" in _words(app)
        await pilot.press("down", "enter")
        needles(app)
        await pilot.press("space", "q", "enter")
        await settled(pilot)
        assert screen.query_one(Choices).at == 0  # touched last, it stands first, and the caret came with it
        await pilot.press("down", "enter")
        needles(app)


@pytest.mark.turns(of=3)
@pytest.mark.parametrize(
    ("at", "key", "opens"), [(1, "d", DemoScreen), (2, "s", RecipesScreen), (3, "question_mark", HelpScreen)]
)
@pytest.mark.parametrize("how", ["the key", "the number", "the caret"])
async def test_an_empty_shelf_has_three_ways_to_begin(
    at: int, key: str, opens: type[Screen[Any]], how: str, tmp_path: Path
) -> None:
    """Each by its key, by its number, and by the caret; left again, the shelf is as it was, with the caret there."""
    app = FinishingApp(tmp_path / "shelf")
    async with app.run_test() as pilot:
        await settled(pilot)
        first = front(app)
        assert isinstance(first, ShelfScreen)
        keys = {"the key": [key], "the number": [str(at)], "the caret": [*["down"] * (at - 1), "enter"]}
        await pilot.press(*keys[how])
        await settled(pilot)
        assert isinstance(front(app), opens)
        await pilot.press("escape")
        await settled(pilot)
        assert front(app) is first
        assert first.query_one(Choices).at == (at - 1 if how == "the caret" else 0)
        await pilot.press("9")
        assert front(app) is first


@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
@pytest.mark.parametrize("looks", ["", "ascii"])
async def test_an_empty_shelf_says_what_this_is_at_every_size(
    size: tuple[int, int], looks: str, tmp_path: Path
) -> None:
    """The drawing is whole, the sentence and the choices stand beside or below it, and most rows say something."""
    app = FinishingApp(tmp_path / "shelf", looks=looks)
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        words = _words(app)
        assert all(choice[1] in words for choice in FIRST)
        assert WHAT.split()[-1] in words
        hem = "#===" if looks else "╞═══"
        assert hem in words
        rows = shown(app).split("\n")
        assert sum(1 for row in rows if row.strip()) >= 0.7 * len(rows)


def test_steps_for_other_sizes_are_not_in_the_bar() -> None:
    """Finished, it is all done or left out, though the recipe has a step for another size only."""
    hand_made = OnShelf(Path("x"), "x", "S", 3, 3, "finished", "", track=("done", "left-out"), finished=True)
    assert _lines(hand_made, here=True) == ("finished: every step is done", "■×")
