"""Keys that come in a burst, as from a pedal that sends several: each goes where it would have gone typed slowly."""

import asyncio
from pathlib import Path
from typing import ClassVar

import pytest
from textual.binding import Binding
from textual.events import Key, Paste
from textual.screen import Screen
from textual.widgets import Input

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.coming_back import ComingBackScreen
from finishing_tui.screens.in_turn import InTurn
from finishing_tui.screens.starting.questions import StartScreen
from finishing_tui.screens.too_small import TooSmall
from tests.screens.hands import PICK_UP, Hours, app_for, comes_to, front, needles, settled, shelf, shown, work_to
from tests.screens.opened import Opened, draft

SIGNS = {"enter": "\r", "space": " ", "ctrl+q": "\x11"}


def burst(app: InTurn, *keys: str) -> None:
    """Send ``keys`` before the program has time for the first."""
    for key in keys:
        app.post_message(Key(key, SIGNS.get(key, key if len(key) == 1 else None)))


async def test_answers_go_each_to_its_own_question(tmp_path: Path) -> None:
    """A size, an empty line, a number, half of the next answer: no digit goes to the question before or is lost."""
    (tmp_path / "shelf").mkdir()
    app = Opened(tmp_path / "shelf", "", lambda at: StartScreen(draft(), at))
    async with app.run_test() as pilot:
        await settled(pilot)
        burst(app, "enter", "enter", "2", "6", "enter", "2", "1")
        await settled(pilot)
        screen = front(app)
        assert isinstance(screen, StartScreen)
        assert screen.at == 3
        assert screen.draft.own == {"front_rows": 26}
        assert screen.query_one(Input).value == "21"


async def test_what_is_typed_after_a_key_that_opens_a_line_stands_on_the_line(tmp_path: Path) -> None:
    """Letters and a paste right behind the key that puts down; then the garment is down, with them as its note."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await settled(pilot)
        if front(app).query("#asked"):
            await pilot.press("escape")
        burst(app, "q", "b", "a", "g", "space")
        app.post_message(Paste("by the\ndoor"))
        burst(app, "enter")
        await settled(pilot)
        await settled(pilot)
    assert InHand.open(folder).state.sittings[-1].where == "bag by the door"


async def test_presses_before_the_key_that_leaves_are_kept(tmp_path: Path) -> None:
    """The key that leaves the program waits for its turn too."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await settled(pilot)
        burst(app, "space", "space", "space", "ctrl+q")
        await pilot.pause()
    work = InHand.open(folder).state.steps[PICK_UP].work
    assert work is not None
    assert work.progress[work.at].mark.loops == 3


async def test_a_count_is_typed_once_it_is_asked(tmp_path: Path) -> None:
    """1 takes the garment at place 1; what came with it, before where it was left could be seen, is no count of it."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 4)
    hand = InHand.open(folder, clock=Hours().clock())
    hand.pick_up()
    assert hand.put_down()
    app = FinishingApp(folder.parent, clock=Hours().clock())
    async with app.run_test() as pilot:
        await settled(pilot)
        burst(app, "1", "1", "0", "enter", "space")
        await settled(pilot)
        assert isinstance(front(app), ComingBackScreen), shown(app)
        burst(app, "1", "0", "4")
        await settled(pilot)
        await pilot.press("enter")
        await settled(pilot)
        assert "104" in shown(app)


async def test_what_is_typed_before_the_first_picture_is_thrown_away(tmp_path: Path) -> None:
    """Keys that wait in the terminal as the program starts do nothing; the same keys do once it can be seen."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = app_for(folder)
    early = [Key("space", " ") for _ in range(3)]
    for key in early:
        key.time -= 1000
    async with app.run_test() as pilot:
        await settled(pilot)
        for key in early:
            app.post_message(key)
        await settled(pilot)
        assert needles(app).talk.state.standing is not None
        assert "0" in shown(app)
        known = needles(app).talk.hand.known
        burst(app, "space", "space")
        await settled(pilot)
        assert needles(app).talk.hand.known == known + 2


async def test_presses_before_the_terminal_grows_too_small_are_kept(tmp_path: Path) -> None:
    """What says that it is too small comes after the keys that came before."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    app = app_for(folder)
    async with app.run_test() as pilot:
        await settled(pilot)
        burst(app, *["space"] * 6)
        await pilot.resize_terminal(20, 5)
        await comes_to(pilot, lambda: isinstance(app.screen, TooSmall))
        await pilot.resize_terminal(100, 30)
        await comes_to(pilot, lambda: not isinstance(app.screen, TooSmall))
        standing = needles(app).talk.state.steps[PICK_UP].work
        assert standing is not None
        assert standing.progress[standing.at].mark.loops == 6


class _First(Screen[None]):
    """Enter opens the next screen, and has more to do after that."""

    BINDINGS: ClassVar = [Binding("enter", "on")]

    def __init__(self) -> None:
        super().__init__()
        self.next, self.done = _Next(), asyncio.Event()

    async def action_on(self) -> None:
        self.app.push_screen(self.next)
        await self.done.wait()


class _Next(Screen[None]):
    BINDINGS: ClassVar = [Binding("enter", "take")]

    def __init__(self) -> None:
        super().__init__()
        self.drawn, self.taken = asyncio.Event(), 0

    def on_mount(self) -> None:
        self.call_after_refresh(self.drawn.set)

    def action_take(self) -> None:
        self.taken += 1


@pytest.mark.parametrize(("before", "after", "taken"), [(1, 1, 1), (2, 0, 0)])
async def test_a_key_that_left_a_screen_is_meant_for_the_next_one_once_that_can_be_seen(
    before: int, after: int, taken: int
) -> None:
    """Whatever the program still has to do then; a key held down that came before it was drawn does nothing on it."""
    app, first = InTurn(), _First()
    async with app.run_test() as pilot:
        await app.push_screen(first)
        burst(app, *["enter"] * before)
        await first.next.drawn.wait()
        burst(app, *["enter"] * after)
        first.done.set()
        while app.takes_keys:
            await pilot.pause()
        assert first.next.taken == taken
