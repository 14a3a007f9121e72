"""A long list is narrowed by words on one line at its foot: every list by the same keys."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.garment.commands import Press
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.asked_large import LargeAsk
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.finding import FindLine
from finishing_tui.screens.numbers import NumbersScreen
from finishing_tui.screens.starting.questions import StartScreen
from finishing_tui.screens.starting.recipes import RecipesScreen
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from tests.plain.making import Twin, crew, garment
from tests.screens.hands import PICK_UP, Hours, app_for, front, settled, shelf, shown, work_to

WORDS = st.text("abAB ", max_size=4)


class Silent(Choices):
    """A list that is on no screen."""

    def redraw(self) -> None:
        """Draw nothing."""


@given(st.lists(st.tuples(WORDS, WORDS), max_size=14), WORDS, st.integers(0, 13), st.integers(-3, 3))
def test_narrowed_lists_show_what_has_every_word(texts: list[tuple[str, str]], typed: str, at: int, by: int) -> None:
    """In any case and order; the caret is at one of them, moves among them only, and stays where the whole is back."""
    choices = Silent()
    choices.show([Choice(text, aside=aside) for text, aside in texts], at)
    choices.narrow(typed)
    fits = [
        index
        for index, (text, aside) in enumerate(texts)
        if all(word in f"{text} {aside}".casefold() for word in typed.casefold().split())
    ]
    assert (choices.at in fits) == bool(fits)
    assert choices.beside(0) == (choices.at if fits else None)
    there = fits.index(choices.at) + by if fits else -1
    assert choices.beside(by) == (fits[there] if 0 <= there < len(fits) else None)
    rows = [row.plain for row in choices.rows(40, None)]
    if typed.split():
        assert not any(row[2:3].isdigit() for row in rows)
    before = choices.at
    choices.narrow("")
    assert choices.at == before


async def test_a_recipe_is_found_by_its_name(tmp_path: Path) -> None:
    """The line opens with its key, which the foot names; enter chooses; escape gives the whole list back."""
    app = FinishingApp(tmp_path, clock=Hours().clock())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("s")
        await settled(pilot)
        assert isinstance(front(app), RecipesScreen)
        assert "1-9 choose" in shown(app)
        assert "/ find" in shown(app)
        await pilot.press("/", *"vest")
        assert "escape show all" in shown(app)
        assert "Applied" not in shown(app)
        await pilot.press("escape")
        assert not app.screen.query(FindLine)
        assert "/ find" in shown(app)
        await pilot.press("/", *"vest", "enter")
        assert isinstance(front(app), StartScreen)
        assert "Vest with long front panels" in shown(app)


@pytest.mark.parametrize("digit", ["1", "9"])
async def test_a_digit_is_a_sign_while_words_are_typed(digit: str, tmp_path: Path) -> None:
    """It narrows, and chooses nothing; the letters of the screen's own keys are letters too."""
    app = FinishingApp(tmp_path, clock=Hours().clock())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("s")
        await settled(pilot)
        await pilot.press("/", digit, "q", "r", "space")
        assert isinstance(front(app), RecipesScreen)
        assert app.screen.query_one(FindLine).value == f"{digit}qr "


async def test_a_place_to_rip_back_to_after_the_ninth_is_found(tmp_path: Path) -> None:
    """The eleventh line has no digit; its words lead to it."""
    twin = Twin(crew(tmp_path / "crew"))
    twin.works_to(12)
    twin.puts_down("")
    app = app_for(twin.hand.folder)
    async with app.run_test(size=(100, 30)) as pilot:
        await settled(pilot)
        while not isinstance(front(app), AtTheNeedles):
            await pilot.press("escape")
        await pilot.press("t")
        assert isinstance(front(app), LargeAsk)
        choices = app.screen.query_one(Choices)
        assert len(choices) > 9
        before = needles_state(app)
        await pilot.press("/", *"pieces LOOK")
        assert choices.beside(0) is not None
        assert choices.beside(1) is None
        await pilot.press("enter")
        await settled(pilot)
        assert needles_state(app) is before
        assert "1-2 choose" in shown(app)


async def test_a_number_is_found_and_then_typed(tmp_path: Path) -> None:
    """Enter puts the caret there, and the digits are its own again; a half typed number is not left."""
    twin = Twin(garment(tmp_path / "hood", "hood", "M"))
    twin.puts_down("")
    app = app_for(twin.hand.folder)
    async with app.run_test(size=(100, 30)) as pilot:
        await settled(pilot)
        while not isinstance(front(app), AtTheNeedles):
            await pilot.press("escape")
        await pilot.press("e")
        assert isinstance(front(app), NumbersScreen)
        choices = app.screen.query_one(Choices)
        assert len(choices) > 9
        await pilot.press("/", *"round", "enter")
        assert not app.screen.query(FindLine)
        assert choices.at > 0
        await pilot.press("7")
        assert ("enter", "use 7") in app.screen.query_one(KeyLine).keys_shown
        await pilot.press("/")
        assert not app.screen.query(FindLine)
        assert "uses 7" in shown(app)


async def test_a_short_list_is_not_narrowed(tmp_path: Path) -> None:
    """All its lines have digits: the key rings, and the foot does not name it."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, Press())
    app = FinishingApp(folder.parent, clock=Hours().clock())
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("/")
        assert not app.screen.query(FindLine)
        assert "/ find" not in shown(app)


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("size", [(40, 20), (60, 24), (80, 24)])
async def test_the_foot_names_the_key_at_every_width(size: tuple[int, int], tmp_path: Path) -> None:
    """Among the recipes, the sizes, and the numbers: what has no digit of its own would have no key at all."""
    app = FinishingApp(tmp_path, clock=Hours().clock())
    async with app.run_test(size=size) as pilot:
        await pilot.press("s")
        await settled(pilot)
        assert "/ find" in shown(app)
        await pilot.press("/", *"held shoulders", "enter")
        assert isinstance(front(app), StartScreen)
        assert len(app.screen.query_one(Choices)) > 9
        assert "/ find" in shown(app)
    twin = Twin(garment(tmp_path / "hood", "hood", "M"))
    twin.works_to(12)
    twin.puts_down("")
    app = app_for(twin.hand.folder)
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        while not isinstance(front(app), AtTheNeedles):
            await pilot.press("escape")
        for key in ("e", "t"):
            await pilot.press(key)
            assert len(app.screen.query_one(Choices)) > 9
            assert "/ find" in shown(app)
            await pilot.press("escape")


def needles_state(app: FinishingApp) -> object:
    """Return the state of the garment in hand."""
    assert app.in_hand is not None
    return app.in_hand.state
