"""Everything that can be done now, found by its words and done by enter; its entries are words of plain too."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import Press
from finishing_tui.plain.words import KnownWord, understood
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.finding import FindLine
from finishing_tui.screens.help import HelpScreen
from finishing_tui.screens.one_line import OneLine
from finishing_tui.screens.palette import PaletteScreen
from finishing_tui.screens.pedals import PedalsScreen
from finishing_tui.talk.acts import BY_ID
from finishing_tui.talk.offers import offers
from finishing_tui.talk.rooms import KEYED
from finishing_tui.widgets.choices import Choice, Choices
from tests.plain.making import talked
from tests.screens.hands import (
    BLOCK,
    JOIN,
    PICK_UP,
    RIB,
    Hours,
    app_for,
    front,
    needles,
    settled,
    shelf,
    shown,
    work_to,
)
from tests.screens.test_keys_shown import in_talk


@pytest.mark.parametrize("step", [0, JOIN, PICK_UP, RIB, BLOCK, BLOCK + 1])
def test_every_entry_is_a_word_of_the_lines(step: int, tmp_path: Path) -> None:
    """What stands at an entry, its label and its key, means the same action when it is typed in a line."""
    folder = shelf(tmp_path)
    work_to(folder, step)
    found = offers(in_talk(folder).state)
    for offer in found:
        for word in (offer.label, *BY_ID[offer.action].words):
            heard = understood(word, found)
            assert isinstance(heard, KnownWord), word
            assert heard.what in {offer.action, "count"}, word


async def test_typing_narrows_and_enter_does_it(tmp_path: Path) -> None:
    """The words of an entry, in any order and case, are enough; its action follows as by its own key."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, Press())
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        many = len(offers(needles(app).talk.state))
        await pilot.press("ctrl+p")
        assert isinstance(front(app), PaletteScreen)
        assert len(app.screen.query_one(Choices)) == many - 1
        await pilot.press(*"NOTE", "space", *"add")
        assert "add a note at this step" in shown(app)
        assert "rip back" not in shown(app)
        await pilot.press("enter")
        assert isinstance(front(app), OneLine)
        await pilot.press(*"tight", "enter")
        assert needles(app).talk.said == "The note is kept."
        before = needles(app).talk.state
        await pilot.press("ctrl+p", *"pick", "enter")
        assert needles(app).talk.state is not before
        await pilot.press("ctrl+p", *"every key", "enter")
        assert isinstance(front(app), HelpScreen)


async def test_leaving_it_does_nothing(tmp_path: Path) -> None:
    """Escape goes back at once; with nothing found enter only rings."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, Press())
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        before = needles(app).talk.state
        await pilot.press("ctrl+p", *"qqq", "enter")
        assert isinstance(front(app), PaletteScreen)
        assert app.screen.query(FindLine)
        await pilot.press("escape")
        assert needles(app).talk.state is before


def test_in_lines_it_is_said_with_the_words_to_type(tmp_path: Path) -> None:
    """The same groups as in the help, each entry with what may be typed for it."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, Press())
    said = talked(folder, "find", "q", "")
    assert "right now:" in said
    assert "d or pick or space: pick up the next stitch." in said
    assert "n or add note: add a note at this step." in said or "add note or n: add a note at this step." in said


async def test_on_the_shelf_it_offers_the_keys_and_the_garments(tmp_path: Path) -> None:
    """Words lead to what a key does, and to a garment; each is there once, and what only moves comes last."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, Press())
    app = FinishingApp(folder.parent, clock=Hours().clock())
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press("ctrl+p")
        assert isinstance(front(app), PaletteScreen)
        texts = [one.text for one in app.screen.query_one(Choices).choices]
        assert len(set(texts)) == len(texts)
        assert texts[-2:] == ["move up", "move down"]
        assert KEYED["lists.find"].help not in texts
        await pilot.press(*"pedals", "enter")
        assert isinstance(front(app), PedalsScreen)
        await pilot.press("escape", "escape", "ctrl+p", *"crew", "enter")
        await settled(pilot)
        assert app.in_hand is not None


async def test_it_opens_where_numbers_are_typed_on_pages_and_in_boxes(tmp_path: Path) -> None:
    """There too the words of a key do what the key does; where a line of text is typed there is none."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, Press())
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        for key, word in {"l": "leave", "?": "leave", "h": "leave", "e": "go", "t": "go", "w": "go", "r": "go"}.items():
            await pilot.press(key)
            over = front(app)
            await pilot.press("ctrl+p")
            assert isinstance(front(app), PaletteScreen), key
            await pilot.press("escape")
            assert front(app) is over
            await pilot.press("ctrl+p", *word, "enter")
            assert isinstance(front(app), AtTheNeedles), key
        await pilot.press("n", "ctrl+p")
        assert isinstance(front(app), OneLine)


async def test_in_a_box_it_offers_the_answers(tmp_path: Path) -> None:
    """The text of an answer is enough to choose it."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    app = app_for(folder)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        taken: list[int | None] = []
        app.push_screen(ChoiceBox("Which?", (Choice("the front"), Choice("the back"))), taken.append)
        await settled(pilot)
        await pilot.press("ctrl+p", *"the back", "enter")
        await settled(pilot)
        assert taken == [1]
