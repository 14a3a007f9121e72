"""Random keymaps: tables of a settings file that are valid, whatever they change."""

from collections.abc import Mapping
from random import Random

import hypothesis.strategies as st

from finishing_tui.talk.key_names import NAMED, SIGNS, can_be_typed, is_key, shown
from finishing_tui.talk.keys import Keys
from finishing_tui.talk.rooms import KEYED, NEWER, SCREENS

LETTERS = "abcdefghijklmnopqrstuvwxyzABCZéß"
HELD = [f"{held}{key}" for held in ("ctrl+", "alt+") for key in ("a", "k", "up", "pagedown", "f5")]
POOL = [*NAMED, *LETTERS, *"?/;-!", *(key for key in HELD if is_key(key)), "shift+tab", "shift+f1"]
"""Keys as a settings file writes them."""

BESIDE = {
    action: {other for screen in SCREENS.values() if action in screen.ids for other in screen.ids if other != action}
    for action in KEYED
}
"""The actions that are alive together with one, by its id."""

Table = dict[str, dict[str, str | list[str]]]
"""The table ``keys`` of a settings file."""


def free_for(action: str, own: Mapping[str, tuple[str, ...]]) -> list[str]:
    """Return the keys that may still be given to ``action``, where ``own`` are given already.

    Those of newer actions are among them, as they are in files that were written before.
    """
    keys = Keys(own)
    held = {key for other in BESIDE[action] if other in own or other not in NEWER for key in keys.of(other)}
    held |= {key for screen in SCREENS.values() if action in screen.ids for key in screen.taken}
    free = [key for key in POOL if SIGNS.get(key, key) not in held]
    return [key for key in free if not action.startswith("lines.") or not can_be_typed(SIGNS.get(key, key))]


def all_other(chance: Random) -> dict[str, tuple[str, ...]]:
    """Return a valid key for every action there is, none of them one of its usual ones."""
    own: dict[str, tuple[str, ...]] = {}
    for action in chance.sample(list(KEYED), len(KEYED)):
        free = [SIGNS.get(key, key) for key in free_for(action, own)]
        own[action] = (chance.choice([key for key in free if key not in KEYED[action].usual]),)
    return own


def as_table(own: Mapping[str, tuple[str, ...]]) -> dict[str, dict[str, list[str]]]:
    """Return keys by the ids of actions as the table ``keys`` of a settings file has them."""
    table: dict[str, dict[str, list[str]]] = {}
    for action, keys in own.items():
        group, _, name = action.partition(".")
        table.setdefault(group, {})[name] = [shown(key) for key in keys]
    return table


@st.composite
def keymaps(draw: st.DrawFn, most: int = 12) -> Table:
    """Draw a valid table: some actions get keys that no other action has that is alive with them."""
    own: dict[str, tuple[str, ...]] = {}
    table: Table = {}
    for action in draw(st.lists(st.sampled_from(list(KEYED)), unique=True, max_size=most)):
        keys = draw(st.lists(st.sampled_from(free_for(action, own)), unique=True, min_size=1, max_size=3))
        own[action] = tuple(SIGNS.get(key, key) for key in keys)
        group, _, name = action.partition(".")
        table.setdefault(group, {})[name] = keys[0] if len(keys) == 1 and draw(st.booleans()) else keys
    return table


def as_toml(table: Table) -> str:
    """Return the table as a settings file has it."""
    lines: list[str] = []
    for group, actions in table.items():
        lines.append(f"[keys.{group}]")
        for name, keys in actions.items():
            text = ", ".join(f"'{shown(key)}'" for key in ([keys] if isinstance(keys, str) else keys))
            lines.append(f"{name} = {text}" if isinstance(keys, str) else f"{name} = [{text}]")
    return "\n".join(lines) + "\n"
