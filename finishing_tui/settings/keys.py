"""Checks the keys of a settings file: every action stays reachable, and no two of a screen share a key."""

from collections.abc import Iterator, Mapping
from itertools import combinations
from typing import Any

from finishing_tui.craft.words import listing
from finishing_tui.recipe.reader.errors import Path
from finishing_tui.recipe.reader.near import near
from finishing_tui.recipe.reader.sentences import given
from finishing_tui.talk.key_names import NoKey, can_be_typed, key_named, names, shown
from finishing_tui.talk.keys import Keys
from finishing_tui.talk.rooms import GROUPS, KEYED, SCREENS


def wrong_keys(own: Any) -> Iterator[tuple[Path, str]]:
    """Yield (path, sentence) for everything that is wrong with the table ``keys`` of a settings file."""
    if not isinstance(own, dict):
        yield ("keys",), f"{given(own)} stands here; a table for each group is wanted, such as [keys.needles]"
        return
    found: dict[str, tuple[str, ...]] = {}
    paths: dict[str, Path] = {}
    for group, table in own.items():
        if group not in GROUPS:
            yield ("keys", group), _no_group(group)
        elif not isinstance(table, dict):
            yield ("keys", group), f"{given(table)} stands here; a table is wanted: [keys.{group}]"
        else:
            for name, keys in table.items():
                action, path = f"{group}.{name}", ("keys", group, name)
                wrong = list(_wrong_action(action, keys, path))
                yield from wrong
                if not wrong:
                    found[action], paths[action] = tuple(map(key_named, _several(keys))), path
    yield from _clashes(found, paths)


def _several(keys: str | tuple[str, ...]) -> tuple[str, ...]:
    return (keys,) if isinstance(keys, str) else tuple(keys)


def _no_group(group: str) -> str:
    inside = [one.group for one in KEYED.values() if one.name == group]
    if inside:
        return f"{group!r} is an action of {listing(inside, 'or')}; write it under [keys.{inside[0]}]"
    return f"there is no group {group!r}; {near(group, GROUPS, 'the groups are')}"


def _wrong_action(action: str, keys: Any, path: Path) -> Iterator[tuple[Path, str]]:
    group, _, name = action.partition(".")
    if action not in KEYED:
        others = [one.name for one in KEYED.values() if one.group == group]
        yield path, f"{name!r} is not an action of {group}; {near(name, others, 'these are')}"
    elif isinstance(keys, str):
        yield from _wrong_key(action, keys, path)
    elif not isinstance(keys, list) or not all(isinstance(key, str) for key in keys):
        yield path, f'{given(keys)} stands here; a key in quotes is wanted, or a list such as ["space", "f13"]'
    elif not keys:
        yield path, "an action needs a key; leave the line out for the usual one"
    else:
        for at, key in enumerate(keys):
            yield from _wrong_key(action, key, (*path, at))


def _wrong_key(action: str, written: str, path: Path) -> Iterator[tuple[Path, str]]:
    try:
        key = key_named(written)
    except NoKey as error:
        meant = near(written, names(), "")
        hint = f"; {meant}" if "name" in str(error) and "?" in meant else ""
        seek = "" if hint or "name" not in str(error) else "; the shelf's 'keys and pedals' says what a key is called"
        yield path, f"{given(written)} cannot be given: {error}{hint}{seek}"
        return
    if action.startswith("lines.") and can_be_typed(key):
        yield path, f"{shown(key)} writes or moves in a line of text; give a key that does not, such as f13"
    for screen in SCREENS.values():
        if action in screen.ids and key in screen.taken:
            yield path, f"{shown(key)} is {screen.taken[key]} {screen.where}; give another key"


def _clashes(found: Mapping[str, tuple[str, ...]], paths: Mapping[str, Path]) -> Iterator[tuple[Path, str]]:
    keys, order, told = Keys(found), list(found), set[tuple[str, str, str]]()
    for screen in SCREENS.values():
        for one, other in combinations(screen.ids, 2):
            if one not in found and other not in found:
                continue
            for key in keys.of(one):
                if key not in keys.of(other) or (one, other, key) in told:
                    continue
                told.add((one, other, key))
                late = max((action for action in (one, other) if action in found), key=order.index)
                first = other if late == one else one
                yield paths[late], f"{shown(key)} is a key of {first} too, {screen.where}; give one of them another key"
