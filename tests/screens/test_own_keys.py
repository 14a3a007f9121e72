"""Keys of one's own on the screens: every action stays reachable and does its thing, and texts name the keys as set."""

import importlib
import pkgutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from hypothesis import given
from hypothesis import settings as examples
from textual.binding import Binding, BindingsMap
from textual.screen import Screen

from finishing_tui import screens
from finishing_tui.garment.commands import Press
from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.pedals import PedalsScreen
from finishing_tui.settings.reading import settings_in
from finishing_tui.talk.acts import BY_ID
from finishing_tui.talk.rooms import KEYED, SCREENS
from tests.examples import share
from tests.screens.hands import JOIN, PICK_UP, Hours, needles, settled, shelf, shown, work_to
from tests.settings.keymaps import Table, as_toml, keymaps


def _classes() -> Iterator[type[Screen[Any]]]:
    """Yield every screen of the program."""
    seen = set()
    for found in pkgutil.walk_packages(screens.__path__, f"{screens.__name__}."):
        for one in vars(importlib.import_module(found.name)).values():
            if isinstance(one, type) and issubclass(one, Screen) and one.__module__.startswith(screens.__name__):
                seen.add(one)
    yield from sorted(seen, key=lambda one: one.__name__)


CLASSES = tuple(_classes())


def own(bindings: BindingsMap) -> dict[str, set[str]]:
    """Return, by the id of each action of the registry, the keys that lead to it."""
    found: dict[str, set[str]] = {}
    for key, binding in bindings:
        if binding.id in KEYED:
            found.setdefault(str(binding.id), set()).add(key)
    return found


def test_every_binding_of_every_screen_is_of_the_registry() -> None:
    """The settings can change every key of every screen, but digits, the point, and escape where keys are tried."""
    used = set()
    for screen in CLASSES:
        bindings = [one for one in vars(screen).get("BINDINGS", ()) if isinstance(one, Binding)]
        ids = {str(one.id) for one in bindings}
        assert all(one in KEYED or one.startswith(("digit.", "fixed.")) for one in ids), (screen, ids)
        used |= ids
    assert set(KEYED) <= used


@given(keymaps(most=30))
def test_every_action_stays_reachable_on_every_screen(table: Table) -> None:
    """After the terminal program took the keymap, each key of each action leads to it, and no other key does."""
    keys = settings_in(as_toml(table), "settings.toml").in_force
    keymap = FinishingApp._normalize_keymap(keys.keymap())  # noqa: SLF001  (what set_keymap does)
    for screen in CLASSES:
        bindings = screen._merged_bindings  # noqa: SLF001  (what an instance begins with)
        if bindings is None or not own(bindings):
            continue
        usual = {one.id: one.action for _, one in bindings}
        bindings = bindings.copy()
        bindings.apply_keymap(keymap)
        for action, found in own(bindings).items():
            assert found == set(keys.of(action)), (screen, action)
            for key in found:
                ids = [one.id for one in bindings.key_to_bindings[key]]
                others = {one for one in ids if one != action}
                alone = [one for one in SCREENS.values() if action in one.ids and others & set(one.ids)]
                assert not alone, (screen, key, ids)
                assert usual[action] in [one.action for one in bindings.key_to_bindings[key]]
        assert set(own(bindings)) == {one for one in usual if one in KEYED}


MINE = """
bell = false
[keys.needles]
press = ["f13", "b"]
take_back = "z"
finish = "ctrl+k"
other = "space"
look_back = ["home", "A"]
look_on = "end"
help = "f1"
[keys.lists]
take = "f13"
leave = "v"
[keys.lines]
keep = "f14"
[keys.pages]
leave = "f2"
down = "j"
"""


def app_with(folder: Path, text: str) -> FinishingApp:
    """Return the program with a garment in hand and settings."""
    return FinishingApp(
        folder.parent, garment=folder, settings=settings_in(text, "settings.toml"), clock=Hours().clock()
    )


async def test_a_garment_is_worked_with_keys_of_ones_own(tmp_path: Path) -> None:
    """The keys do what they are set to; the usual ones of the same actions do nothing; all texts name the new ones."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP, *[Press()] * 3)
    app = app_with(folder, MINE)
    async with app.run_test(size=(100, 90)) as pilot:
        await settled(pilot)
        hand = needles(app).talk
        work = hand.state.standing
        assert "f13 pick" in shown(app)
        await pilot.press("f13", "b")
        assert hand.state.standing != work
        await pilot.press("z", "z")
        assert hand.state.standing == work
        await pilot.press("backspace", "enter", "left", "question_mark")
        assert hand.state.standing == work
        await pilot.press("1")
        assert "ctrl+k:" in shown(app)
        await pilot.press("f13")
        assert "Ctrl+k uses 1; f13 again clears it and goes on." in shown(app)
        await pilot.press("z", "f1")
        text = " ".join(shown(app).split())
        assert "f13, b pick up the next stitch" in text
        assert "digits type a count, then ctrl+k" in text
        await pilot.press("f1", "home")
        assert hand.looking == PICK_UP - 1
        assert "Ctrl+k takes this step up." not in shown(app)
        await pilot.press("escape", "n", "a", "v", "f14")
        assert hand.said == "The note is kept."


async def test_what_takes_back_is_named_by_its_own_key(tmp_path: Path) -> None:
    """A sentence begins with the key as it is set, and a sign is not made a capital."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN + 1)
    app = app_with(folder, MINE)
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.press("z")
        assert "The key z again takes back:" in shown(app)


@examples(max_examples=share(2))
@given(keymaps(most=40))
def test_every_key_at_the_needles_asks_for_its_action(table: Table) -> None:
    """In the running program each key of each action is pressed, and asks for that action."""
    import asyncio  # noqa: PLC0415  (hypothesis and an async test do not go together)
    import tempfile  # noqa: PLC0415

    settings = settings_in(as_toml(table), "settings.toml")
    keys, asked = settings.in_force, list[str]()

    class Asked(AtTheNeedles):
        """The needles, where keys are only written down."""

        CSS_PATH = str(Path(str(screens.__file__)).parent / "at_the_needles.tcss")

        def action_ask(self, action: str) -> None:
            asked.append(action)

        def action_clear(self) -> None:
            asked.append("clear")

    async def press_all() -> None:
        with tempfile.TemporaryDirectory() as at:
            folder = shelf(Path(at))
            work_to(folder, PICK_UP)
            app = FinishingApp(folder.parent, garment=folder, settings=settings, clock=Hours().clock())
            async with app.run_test() as pilot:
                app.push_screen(Asked(needles(app).talk.hand, None))
                await pilot.pause()
                for action in (*BY_ID, "clear"):
                    for key in keys.of(f"needles.{action}"):
                        await pilot.press(key)
                        assert asked.pop() == action, (key, action)
                assert not asked

    asyncio.run(press_all())


async def test_words_that_are_cut_off_name_the_key_that_shows_them(tmp_path: Path) -> None:
    """Where a step's words are longer than there is room for, the key of the help is named as it is set."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    async with app_with(folder, MINE).run_test(size=(80, 24)) as pilot:
        app = pilot.app
        assert isinstance(app, FinishingApp)
        assert "f1 shows all" in shown(app)
        assert "? shows all" not in shown(app)


async def test_a_list_and_a_line_take_their_own_keys(tmp_path: Path) -> None:
    """A question is answered and left by the keys set; its foot names them; other keys ring the bell."""
    folder = shelf(tmp_path)
    work_to(folder, JOIN)
    app = app_with(folder, MINE)
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.press("6", "ctrl+k")
        assert "f13 1-2 choose" in shown(app)
        assert "v leave" in shown(app)
        await pilot.press("enter", "escape")
        assert not isinstance(app.screen, AtTheNeedles)
        await pilot.press("v")
        assert isinstance(app.screen, AtTheNeedles)


async def test_keys_and_pedals_tells_of_any_key(tmp_path: Path) -> None:
    """It names the key as the settings want it and what it does; nothing else happens; escape twice leaves."""
    app = FinishingApp(tmp_path, settings=settings_in('[keys.needles]\npress = "f13"\n', "x"), clock=Hours().clock())
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.press("k")
        assert isinstance(app.screen, PedalsScreen)
        told = {
            "f13": ('In a settings file it is "f13".', "At the needles it is press: count one, or tick it off."),
            "question_mark": ('In a settings file it is "?".', "At the needles it is help: this help."),
            "quotation_mark": ("In a settings file it is '\"'.", "It does nothing at the needles yet."),
            "7": ("You can't assign it: digits are for counts", "At the needles it is a digit of a count."),
            "tab": ('In a settings file it is "tab".', 'write press = ["f13", "tab"] under [keys.needles].'),
            "full_stop": ('In a settings file it is ".".', "At the needles it is the point of a measure."),
            "q": ('In a settings file it is "q".', "At the needles it is put_down: put it down"),
            "enter": ('In a settings file it is "enter".', "At the needles it is finish:"),
            "escape": ('In a settings file it is "escape".', "At the needles it is clear: forget what was typed"),
            "super+hyper+f9": ("You can't assign it: no key has this name.", "It does nothing at the needles yet."),
        }
        for key, lines in told.items():
            await pilot.press(key)
            assert isinstance(app.screen, PedalsScreen)
            text = " ".join(shown(app).split())
            assert all(line in text for line in lines), (key, text)
        await pilot.press("escape", "a", "escape")
        assert isinstance(app.screen, PedalsScreen)
        await pilot.press("escape")
        assert not isinstance(app.screen, PedalsScreen)
