"""Newer actions give way: where a person's settings have given their usual key away, another key does them.

A settings file lasts longer than a version of the program. An action that came later must not make a file wrong that
was right, so the key stays what its owner made it.
"""

from collections.abc import Iterator, Mapping

from finishing_tui.talk.key_names import FUNCTION
from finishing_tui.talk.rooms import KEYED, NEWER, SCREENS, Together

SPARE = ("v", "z", "j", "y", "c", "i", "b", *FUNCTION)
"""What a newer action is done with where its own key is taken: the first of these that is free on all its screens."""


def given_way(own: Mapping[str, tuple[str, ...]]) -> dict[str, tuple[str, ...]]:
    """Return the keys of those newer actions that ``own``, the keys of the settings by action, leaves without one.

    Where no spare key is free either it keeps its usual one, and two actions on one key are refused.
    """
    found: dict[str, tuple[str, ...]] = {}
    for action in (one for one in NEWER if own and one not in own):
        usual = KEYED[action].usual
        wanted = {key for screen in _screens(action) for other in screen.ids for key in own.get(other, ())}
        if wanted.isdisjoint(usual):
            continue
        held = {key for screen in _screens(action) for key in _held(screen, {**own, **found})}
        spare = (key for key in SPARE if key not in held)
        found[action] = tuple(key for key in usual if key not in wanted) or (next(spare, usual[0]),)
    return found


def _screens(action: str) -> Iterator[Together]:
    return (screen for screen in SCREENS.values() if action in screen.ids)


def _held(screen: Together, keys: Mapping[str, tuple[str, ...]]) -> Iterator[str]:
    """Yield the keys that mean something on a screen, where ``keys`` are those that are not the usual ones."""
    yield from screen.taken
    for action in screen.ids:
        keyed = KEYED[action]
        yield from (*keys.get(action, keyed.usual), *keyed.always)
