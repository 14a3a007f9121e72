"""The settings, field by field. What stands under a field is what the person who sets it reads."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Literal

from finishing_tui.garment.events import Pace
from finishing_tui.glance.spoken import Speech
from finishing_tui.glance.wishes import Units
from finishing_tui.talk.key_names import key_named
from finishing_tui.talk.keys import Keys

Bell = Literal["run", "recount", "target", "refused"]
"""What the bell can ring for."""

ScreenLook = Literal["auto", "dark", "light", "terminal", "ascii"]
"""A word for how the screens look."""

OwnKeys = Mapping[str, Mapping[str, str | tuple[str, ...]]]
"""By group and action: a key or several."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """What stands in a settings file; what does not stand there is as usual."""

    pace: Pace = "loop"
    """What one press counts in a new garment: "loop", one stitch; "spot", one row, ridge or chain of the edge; "run",
    one repeat of the rhythm. A garment in progress keeps its pace."""
    bell: bool | tuple[Bell, ...] = True
    """What the bell rings for: true for everything, false for nothing, or a list: "run", once at the end of a repeat;
    "recount", twice when a count is due; "target", three times when a part is complete; "refused", once when a key does
    nothing."""
    speech: Speech = "off"
    """What is spoken at the needles, with a program that is on this computer already: "off", nothing; "next", the next
    word when it changes; "counts", the next word and the count after each press ("pick, 14 of 24"); "all", also the
    line at the foot of the screen, and how to work each new step. Unless it is off, you also hear refusals, questions,
    the end of a repeat, and counts that are due with what they found."""
    speak_with: tuple[str, ...] = ()
    """The program that speaks, and its options, as a list such as ["espeak-ng", "-s", "140"]; it reads what to say from
    its standard input. If empty, a common one is used. No shell is used."""
    units: Units = "as given"
    """Units for calculated lengths, such as yarn needed: "cm", "in", or "as given", the unit of the garment's gauge. A
    measurement in a recipe keeps its own unit. You can always type a length in either."""
    hand: Literal["right", "left"] = "right"
    """Which hand you knit with, for new garments; you can change it for each."""
    looks: ScreenLook | tuple[ScreenLook, ...] = "auto"
    """How the screens look: "dark", "light", or "terminal" for the terminal's own colors; "ascii" for plain letters
    only, alone or in a list with one of these; "auto" for dark, with plain letters where the terminal lacks other
    signs. FINISHING_LOOKS, if set, counts instead."""
    keys: OwnKeys = field(default_factory=lambda: MappingProxyType({}))
    """Your own keys for actions, in a table for each group, such as [keys.needles] with press = ["space", "f13"]: a key
    or a list of keys, instead of the usual ones. A pedal or a remote sends keys too; "keys and pedals" on the shelf
    shows which. They change nothing with --plain, where you type words."""

    def rings_for(self, what: Bell) -> bool:
        """Return whether the bell rings for it."""
        return self.bell if isinstance(self.bell, bool) else what in self.bell

    @property
    def in_force(self) -> Keys:
        """The keys in force; what stands in ``keys`` was checked when it was read."""
        return Keys(
            MappingProxyType(
                {
                    f"{group}.{name}": tuple(map(key_named, (keys,) if isinstance(keys, str) else keys))
                    for group, table in self.keys.items()
                    for name, keys in table.items()
                }
            )
        )

    @property
    def look_words(self) -> tuple[ScreenLook, ...]:
        """The words for how the screens look."""
        return (self.looks,) if isinstance(self.looks, str) else self.looks
