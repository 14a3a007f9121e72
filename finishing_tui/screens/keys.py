"""The keys of the screens: bindings made from the registry of all actions, and the keys in force."""

from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Any

from textual.binding import Binding
from textual.screen import Screen

from finishing_tui.screens.program import program
from finishing_tui.talk.keys import Keys
from finishing_tui.talk.rooms import KEYED, SCREENS

PALETTES = ("lists.palette", "pages.palette")
"""The actions that open what the keys of a screen do, to find by its words."""


def keys_of(screen: Screen[Any]) -> Keys:
    """Return the keys that are in force."""
    return program(screen).keys


def bindings(screen: str, does: Mapping[str, str]) -> list[Binding]:
    """Return the bindings of a screen of the registry at the usual keys; the settings give them others by their ids.

    ``does``: by the id of each of its actions, what Textual is to do for it; the palette is the program's own.
    """
    does = {**does, **{name: "app.palette" for name in PALETTES if name in SCREENS[screen].ids}}
    if {*does} != {*SCREENS[screen].ids}:
        raise ValueError(
            f"the actions of {screen!r} are not those of the registry: {does.keys() ^ {*SCREENS[screen].ids}}"
        )
    return [
        Binding(key, action, KEYED[name].help, show=False, id=name)
        for name, action in does.items()
        for key in KEYED[name].usual
    ]


def digits(action: str, which: Iterable[int] = range(10), *, less: int = 0) -> list[Binding]:
    """Return the bindings of the digits, which always count or choose: ``action`` with the digit, ``less`` so many."""
    return [Binding(str(one), action.format(one - less), show=False, id=f"digit.{one}") for one in which]


def is_alive(screen: Screen[Any], key: str) -> bool:
    """Return whether ``key`` does something of our own on ``screen`` just now."""
    active = screen.active_bindings.get(key)
    return active is not None and active.binding.id is not None


def numbers(many: int) -> str:
    """Return the digits that stand before ``many`` choices (2 or more), as the foot shows them, and no others."""
    return f"1-{min(many, 9)}"


MOVE = ("lists.up", "lists.down")
"""The actions that move the caret of a list."""

LISTS: Mapping[str, str] = MappingProxyType({"lists.up": "move(-1)", "lists.down": "move(1)", "lists.take": "take"})
"""What the keys of every list do: arrows move, enter chooses what the caret is at."""

LONG_LISTS: Mapping[str, str] = MappingProxyType({**LISTS, "lists.find": "find"})
"""The same where there may be more lines than digits."""

TYPED: Mapping[str, str] = MappingProxyType({**LISTS, "lists.take_off": "take_off"})
"""The same where numbers are typed."""

NUMBERS = digits("take({})", range(1, 10), less=1)
"""The digits of a list choose at once what they stand before."""
