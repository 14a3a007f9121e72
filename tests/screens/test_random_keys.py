"""Keys at random on the screens: whatever is pressed, nothing breaks, and what is in hand is what the journal says."""

from pathlib import Path
from random import Random

import pytest
from textual.events import Key, Paste
from textual.pilot import Pilot
from textual.widgets import Input

from finishing_tui.garment.evolve import begun_with, evolve
from finishing_tui.garment.journal import Journal
from finishing_tui.garment.state import State
from finishing_tui.garment.stored import happenings
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.too_small import TooSmall, fits
from tests.screens.hands import app_for, settled, shown
from tests.screens.scenes import SCENES

KEYS = 50
"""So many keys for each seed: three hundred in all."""

SEEDS = {
    "spot-due": 1707,
    "spot-left": 88,
    "join-uneven": 2024,
    "graft": 5,
    "bind-off-long": 31415,
    "coming-back": 640,
}
"""The scene that is begun with, and its seed."""

WANTED = ("space", "enter", "x", "backspace", "escape", *"0123456789", *"rutqwlmnph?o", "left", "right", "up", "down")
"""The keys that do something somewhere."""

OTHERS = (
    *"abcdefgijkvyzABCQXZ.,-+*/[]{}()<>|\\'\"%$&=~^äß漢",
    *("tab", "shift+tab", "home", "end", "pageup", "pagedown", "delete", "insert", "f1", "f5", "f12"),
    *("ctrl+a", "ctrl+d", "ctrl+e", "ctrl+k", "ctrl+l", "ctrl+p", "ctrl+u", "ctrl+v", "ctrl+w", "ctrl+x", "ctrl+z"),
    *("ctrl+left", "ctrl+right", "shift+up", "alt+enter", "ctrl+@", "ctrl+q", "ctrl+c"),
)
"""Keys that mostly do nothing."""

PASTED = ("14\n15\n\n16", "left in the bag\r\n\x1b[2J[red]second line", "q" * 200, "\n", " x1q\n" * 40)

SIZES = ((80, 24), (100, 30), (40, 20), (39, 19), (20, 5), (1, 1), (160, 50))
"""Terminals, three of them too small."""


def replayed(folder: Path) -> State:
    """Return the state that the garment's whole journal leads to, from its first event and without a snapshot."""
    with Journal.open(folder, look=True) as journal:
        first, *rest = happenings(journal.rows())
    state = begun_with(first)
    for happening in rest:
        state = evolve(state, happening)
    return state


async def play(pilot: Pilot[None], dice: Random) -> int:
    """Do something at random that a hand or a terminal can do; return how many keys that were."""
    throw = dice.random()
    if throw < 0.06:
        pilot.app.post_message(Paste(dice.choice(PASTED)))
        await pilot.pause()
        return 0
    if throw < 0.14:
        await pilot.resize_terminal(*dice.choice(SIZES))
        return 0
    if throw < 0.22:
        keys = [dice.choice(WANTED)] * dice.randint(2, 9)  # held down
    else:
        keys = [dice.choice(WANTED if dice.random() < 0.8 else OTHERS)]
    await pilot.press(*keys)
    return len(keys)


async def check(app: FinishingApp, pilot: Pilot[None]) -> None:
    """Check what must hold after every key: something is drawn, and where a line is written the keys go into it."""
    if not app.is_running:
        return
    if app.in_hand is not None:
        assert app.in_hand.flush(60)
    assert shown(app).strip()
    lines = {line for line in app.screen.query(Input) if line.focusable}
    assert not lines or app.focused in lines
    for _ in range(1000):  # several sizes one soon after the other are taken as one, a moment later
        if isinstance(app.screen, TooSmall) != fits(*app.size):
            return
        await pilot.pause(0.05)
    raise AssertionError((app.screen, app.size))


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("name", SEEDS)
async def test_random_keys(name: str, tmp_path: Path) -> None:
    """Any keys, held down too, lines pasted and terminals resized: no crash, no lost focus, state is the journal's."""
    dice = Random(SEEDS[name])  # noqa: S311  (a hand, not a secret)
    app = SCENES[name].app(tmp_path)
    (folder,) = (path.parent for path in (tmp_path / "shelf").glob("*/garment.toml"))
    pressed = 0
    while pressed < KEYS:
        async with app.run_test() as pilot:
            await settled(pilot)
            while pressed < KEYS and app.is_running and not app._exit:  # noqa: SLF001  (left by a key)
                pressed += await play(pilot, dice)
                await check(app, pilot)
            if app.in_hand is not None:
                assert app.in_hand.flush(60)
                assert replayed(app.in_hand.folder) == app.in_hand.state
        assert sum(replayed(folder).ledger.stitches.values()) == 0
        app = app_for(folder)


@pytest.mark.parametrize("key", ["n", "q"])
async def test_enter_held_down_leaves_a_line_once(key: str, tmp_path: Path) -> None:
    """Enters that arrive faster than the box goes close the box, and none of what lies below it."""
    app = SCENES["spot-loop"].app(tmp_path)
    async with app.run_test() as pilot:
        await pilot.press(key, "a")
        below = app.screen_stack[:-1]
        for _ in range(4):
            app.post_message(Key("enter", "\r"))
        await settled(pilot)
        await settled(pilot)
        assert app.screen_stack == (below if key == "n" else below[:-1])
        assert app.is_running


@pytest.mark.parametrize("key", ["n", "?"])
async def test_whatever_lies_over_it_a_resized_screen_comes_back_as_if_opened_so(key: str, tmp_path: Path) -> None:
    """Resized several times while a box or a page covers it, twice too small: then all is drawn as it was before."""
    app = SCENES["spot-loop"].app(tmp_path)
    async with app.run_test(size=(100, 30)) as pilot:
        await settled(pilot)
        before = shown(app)
        for sizes in (((160, 50), (39, 10)), ((80, 24), (39, 10)), ((40, 20), (160, 50))):
            await pilot.press(key)
            for size in (*sizes, (100, 30)):
                await pilot.resize_terminal(*size)
            await pilot.press("escape")
            await settled(pilot)
            assert shown(app) == before, sizes


async def test_keys_that_outrun_a_screen_do_nothing(tmp_path: Path) -> None:
    """Keys that come before a garment is laid out, or after the program was left, end in no error; it is put down."""
    app = SCENES["spot-loop"].app(tmp_path)
    async with app.run_test() as pilot:
        await pilot.press("q", "enter")
        for key in ("enter", "1", "2", "x", "enter", "ctrl+q", "q", "x", "enter"):
            app.post_message(Key(key, key if len(key) == 1 else None))
        await pilot.pause()
    (folder,) = (path.parent for path in (tmp_path / "shelf").glob("*/garment.toml"))
    assert replayed(folder).sittings[-1].ended
