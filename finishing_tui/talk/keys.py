"""Which keys do what: the usual ones, and those that the settings have instead. Every text that names a key asks here.

It is a plain value, made when the program starts. What may stand in it is checked in ``settings.keys``.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from finishing_tui.glance.wishes import Units, Wishes, begins
from finishing_tui.talk.giving_way import given_way
from finishing_tui.talk.key_names import shown
from finishing_tui.talk.rooms import KEYED, SCREENS


@dataclass(frozen=True, slots=True)
class Keys:
    """The keys in force; ``own``: by the id of an action the keys it has instead of its usual ones."""

    own: Mapping[str, tuple[str, ...]] = field(default_factory=lambda: MappingProxyType({}))
    _in_force: dict[str, tuple[str, ...]] = field(default_factory=dict, init=False, repr=False, compare=False)
    _first: dict[str, str] = field(default_factory=dict, init=False, repr=False, compare=False)  # as they are read

    def __post_init__(self) -> None:
        """Let newer actions give way to what is the person's own."""
        self._in_force.update({**given_way(self.own), **self.own})

    def of(self, action: str) -> tuple[str, ...]:
        """Return the keys that do ``action``, the one to name first; never none."""
        keyed = KEYED[action]
        keys = self._in_force.get(action, keyed.usual)
        return (*keys, *(key for key in keyed.always if key not in keys))

    def shown(self, *actions: str) -> str:
        """Return one key of each of ``actions`` as people read it: "up down"."""
        for action in actions:
            if action not in self._first:
                self._first[action] = shown(self.of(action)[0])
        return " ".join(map(self._first.__getitem__, actions))

    def every(self, action: str) -> str:
        """Return all keys that do ``action``, as people read them: "space, f13"."""
        return ", ".join(shown(key) for key in self.of(action))

    def begins(self, action: str) -> str:
        """Return a key to begin a sentence with; a sign is introduced, for it must not become a capital."""
        return begins(self.shown(action))

    def number(self) -> str:
        """Return how a number is typed and taken at the needles, as an order."""
        return f"type the number, then {self.shown('needles.finish')}"

    def wishes(self, units: Units = "as given") -> Wishes:
        """Return what a garment is looked at with: these keys' names, and the units."""
        return Wishes(self.shown("needles.finish"), self.shown("needles.press"), units)

    def help(self, screen: str, words: Mapping[str, str]) -> list[tuple[str, str]]:
        """Return every key of a screen, with what it does; ``words``: by action, where that has words of its own."""
        return [(self.every(action), words.get(action, KEYED[action].help)) for action in SCREENS[screen].ids]

    def does(self, screen: str, key: str) -> str | None:
        """Return the id of the action that ``key`` does on a screen, or None."""
        return next((action for action in SCREENS[screen].ids if key in self.of(action)), None)

    def keymap(self) -> dict[str, str]:
        """Return every action with its keys, as the terminal program takes them; nothing where all are the usual ones.

        All of them: one that is not named there would lose a usual key that another action has now.
        """
        return {action: ",".join(self.of(action)) for action in KEYED} if self.own else {}


USUAL = Keys()
"""The keys as they are without any settings."""
