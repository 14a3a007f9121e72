"""Scenes walked to with keys of one's own, each action on another key than the usual: foot, texts and keys agree."""

import re
from pathlib import Path
from random import Random

import pytest
from textual.widgets import Input

from finishing_tui.screens.app import FinishingApp
from finishing_tui.settings.keys import wrong_keys
from finishing_tui.talk.key_names import can_be_typed
from finishing_tui.talk.key_names import shown as key_shown
from finishing_tui.talk.keys import Keys
from finishing_tui.talk.rooms import KEYED
from finishing_tui.widgets.key_line import KeyLine
from tests.screens.hands import WAIT, pressed, pressing, shown
from tests.screens.scenes import SCENES
from tests.settings.keymaps import all_other, as_table

WALKED = (
    "spot-strayed",
    "join-which",
    "spot-typed-refused",
    "value-typed",
    "at-its-end",
    "looked-at",
    "take-back-named",
    "finished-anyway",
    "left-out-anyway",
    "recount-differs",
    "recount-will-pucker",
    "coming-back",
    "coming-back-no-count",
    "help",
    "what-if-rhythm",
    "ledger-below",
    "numbers-asked",
    "rip-back-to",
    "note",
    "shelf-empty",
    "start-recipes",
    "start-reading",
    "start-size",
    "start-number",
    "start-which-size",
    "start-audit",
    "start-audit-clean",
)
"""At least one scene of every screen."""

WORDS = ("enter", "backspace", "escape")
"""Usual keys that are no words of knitting; each may only be named where it is a key."""


def alive(app: FinishingApp) -> dict[str, str]:
    """Return the ids of the bindings that are alive on the screen in front, by their keys."""
    return {key: str(found.binding.id) for key, found in app.screen.active_bindings.items()}


def own_key(app: FinishingApp, key: str, keys: Keys) -> str:
    """Return what does on the screen in front what ``key`` usually does; ``key`` itself for a digit or a sign typed."""
    if isinstance(app.focused, Input) and can_be_typed(key):
        return key
    usual = {"?": "question_mark", "/": "slash"}.get(key, key)
    found = {one for one in alive(app).values() if one in KEYED and usual in KEYED[one].usual}
    assert len(found) <= 1
    return keys.of(found.pop())[0] if found else key


@pytest.mark.turns(of=6)
@pytest.mark.parametrize("name", WALKED)
async def test_a_scene_is_the_same_by_other_keys(name: str, tmp_path: Path) -> None:
    """Each action alive has its keys, each key at the foot is alive, and no text names a key that is not.

    The keymap is drawn from the scene's name, and changes every action there is.
    """
    scene, keys = SCENES[name], Keys(all_other(Random(name)))  # noqa: S311  (no secret)
    assert not list(wrong_keys(as_table(keys.own)))
    app = scene.app(tmp_path)
    app.keys = keys
    app.set_keymap(keys.keymap())
    async with app.run_test(size=(160, 60)) as pilot:
        await pressing(WAIT)(pilot)
        for key in scene.keys:
            await pressing(own_key(app, key, keys))(pilot)
        bound = alive(app)
        for action in {one for one in bound.values() if one in KEYED}:
            for key in keys.of(action):
                assert bound[key] == action or (key in KEYED[action].always and isinstance(app.focused, Input))
        names = {key_shown(key) for key in bound}
        for shown_key, _ in app.screen.query_one(KeyLine).keys_shown:
            assert shown_key == "digits" or all(one in names for one in pressed(shown_key)), shown_key
        text = shown(app).lower()
        assert not [word for word in WORDS if word not in names and re.search(rf"\b{word}\b", text)]
