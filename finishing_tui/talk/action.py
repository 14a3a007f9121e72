"""What an action is: its key and its words, when it is offered, and what it does. Each has a file in ``acts``.

What would be refused for good is not offered: a key for it still says why.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal, get_args

from finishing_tui.garment.commands import Command, Other
from finishing_tui.garment.decide.may import may
from finishing_tui.garment.state import State
from finishing_tui.talk.asks import Ask
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.key_names import shown

Group = Literal["right now", "this step", "this garment", "look something up", "leave"]
"""What an action is about: its heading in the help."""

GROUPS: tuple[Group, ...] = get_args(Group)
"""The headings, in order."""


@dataclass(frozen=True, slots=True)
class Offer:
    """One thing that may be done now, by the id of its ``action``.

    ``label``: what its key will do, in a word or two; ``what``: the same in a few more; ``command``: what to ask for.
    Actions that first ask something (a recount, a note, help) carry no command. ``sides``: needles to choose between,
    as (key of the place, its words).
    """

    action: str
    label: str
    what: str
    command: Command | None = None
    sides: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Action:
    """An action; a settings file names it by its ``id``.

    ``key``: the usual key, as Textual names keys; ``letter``: what is typed for it in a line, where its key is no
    character; ``help``: what it does; ``offered``: what it would do in a state, with another step perhaps looked at, if
    anything; ``does``: does it, and returns what must be asked first, if anything; ``group``: its heading in the help;
    ``also``: further words that may be typed for it. ``changes_nothing``: so that it may be asked for where a garment
    can only be looked at; ``digits``: those that are typed are not in its way; ``held``: what a key for it does that
    is held down: it goes on to where hands stop, does it once, or as often as the key comes.
    """

    id: str
    key: str
    help: str
    offered: Callable[[State, int | None], Offer | None]
    does: Callable[[Talk], Ask | None]
    group: Group
    letter: str = ""
    also: tuple[str, ...] = ()
    changes_nothing: bool = False
    digits: bool = False
    held: Literal["on", "once", "each"] = "each"

    @property
    def words(self) -> tuple[str, ...]:
        """All that is always understood for it in a line, the shortest first."""
        return tuple(dict.fromkeys(filter(None, (self.letter, self.shown, self.id.replace("_", " "), *self.also))))

    @property
    def shown(self) -> str:
        """The usual key as people read it."""
        return shown(self.key)


def possible(state: State, offer: Offer) -> Offer | None:
    """Return ``offer`` if it is accepted, or asked again; of needles to choose between only those that are."""
    if offer.sides:
        sides = tuple(side for side in offer.sides if may(state, Other(side[0])))
        return replace(offer, command=Other(sides[0][0]), sides=sides) if sides else None
    return offer if offer.command is None or may(state, offer.command) else None
