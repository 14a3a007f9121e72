"""Techniques: short explanations of how the hands do a thing, and which steps each of them helps at.

They are files beside the recipes, so that a pattern writer can better one without touching a program. Which step a
technique helps at is told by the keys and words of the step alone: nothing here knows a kind by name.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from typing import Any, Literal

from finishing_tui.recipe.keys import Written
from finishing_tui.recipe.kinds.base import Step

WIDE = 36
"""Columns a drawing may have, so that it stands whole on the narrowest screen."""
HIGH = 10
"""Lines a drawing may have."""

_TOLD = frozenset({"say", "how", "look", "mend", "mind", "see"})
"""What a step tells the knitter; it mentions many things that the step is not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HelpsAt(Written):
    """A sort of step. Whatever is said here must be so; what is left out does not matter."""

    do: str
    """The kind of step."""
    has: str = ""
    """A key that the step, or one of its sections or sides, has."""
    units: tuple[str, ...] = ()
    """What the spots of its edges are: each of these is among them."""
    says: str = ""
    """Words in its title, method or pattern, or in any other of its keys that does not tell how it is done."""

    def __call__(self, step: Step) -> bool:
        """Return whether ``step`` is of this sort."""
        found = tuple(_set(step))
        return (
            getattr(step, "do", "") == self.do
            and (not self.has or any(key == self.has for key, _ in found))
            and set(self.units) <= {value for key, value in found if key == "unit"}
            and any(self.says in str(value).lower() for key, value in found if key not in _TOLD)
        )

    @property
    def closeness(self) -> int:
        """How narrowly it is meant: the more is said, the closer."""
        return bool(self.has) + len(self.units) + bool(self.says)


@dataclass(frozen=True, slots=True, kw_only=True)
class Technique(Written):
    """How the hands do one thing."""

    format: Literal[1]
    """The format of the file."""
    title: str
    """What it is called."""
    about: str
    """What it is for, in a sentence."""
    order: int
    """Where it stands among those that help at one step: the smallest first."""
    moves: tuple[str, ...]
    """What the hands do, one thing after the other."""
    look: str
    """How it should look when it is right."""
    mend: str
    """What goes wrong, and how to mend it."""
    mind: str = ""
    """A caution."""
    drawing: str = ""
    """A drawing in plain characters, as a right-handed knitter sees it."""
    shows: str = ""
    """What the drawing shows, in words, for whoever hears it read."""
    helps: tuple[HelpsAt, ...]
    """The steps it helps at."""

    @property
    def lines(self) -> tuple[str, ...]:
        """The lines of the drawing."""
        return tuple(self.drawing.strip("\n").split("\n")) if self.drawing else ()


def helping_at(step: Step, techniques: Iterable[Technique]) -> tuple[Technique, ...]:
    """Return those of ``techniques`` that help at ``step``, the one to look at first in front."""
    found = []
    for technique in techniques:
        close = [one.closeness for one in technique.helps if one(step)]
        if close:
            found.append((technique.order, -max(close), technique.title, technique))
    return tuple(technique for *_, technique in sorted(found, key=lambda one: one[:3]))


def _set(value: Any) -> Iterator[tuple[str, Any]]:
    """Yield (key, value) for every key of ``value`` that says something, and of what stands in it."""
    if is_dataclass(value):
        for field in fields(value):
            inner = getattr(value, field.name)
            if inner not in ((), {}, None, "", False):
                yield field.name.rstrip("_"), inner
            yield from _set(inner)
    elif isinstance(value, Mapping):
        for inner in value.values():
            yield from _set(inner)
    elif isinstance(value, tuple):
        for inner in value:
            yield from _set(inner)
