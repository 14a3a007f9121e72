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
    """What a press stands for in a garment that is picked up for the first time: "loop", one loop; "spot", one row or
    other spot of the edge; "run", one run of the rhythm. A garment under way keeps the pace it has."""
    bell: bool | tuple[Bell, ...] = True
    """What the bell rings for: true for all of it, false for nothing, or a list of some: "run", once at the end of a
    run; "recount", twice where a recount is due; "target", three times where a part is complete; "refused", once when
    a key does nothing."""
    speech: Speech = "off"
    """What is spoken at the needles, with a program that is on this computer already: "off", nothing; "next", the next
    word when it changes; "counts", the next word and the count after each press ("pick, 14 of 24"); "all", also
    what is said at the foot of the screen, and each new step with how it is done. Refusals, questions, the end of a
    run, a recount that is due and what it found are spoken whenever anything is."""
    speak_with: tuple[str, ...] = ()
    """The program that speaks and what it is started with, as a list such as ["espeak-ng", "-s", "140"]; it is given
    what it is to say on its standard input. Left out, one of those that are usual is looked for. No shell is used."""
    units: Units = "as given"
    """In what lengths are said that are worked out, such as the yarn still needed: "cm", "in", or "as given", as the
    gauge of the garment is given. What a recipe asks to be measured stays in its own unit, and a length may always be
    typed in either."""
    hand: Literal["right", "left"] = "right"
    """The hand that knits, for a garment that is started; it can be changed for each."""
    looks: ScreenLook | tuple[ScreenLook, ...] = "auto"
    """How the screens look: "dark", "light", or "terminal" for the terminal's own colors; "ascii" for plain letters
    only, alone or in a list with one of these; "auto" for dark, with plain letters where the terminal lacks other
    signs. FINISHING_LOOKS, if set, counts instead."""
    keys: OwnKeys = field(default_factory=lambda: MappingProxyType({}))
    """The keys of actions, in a table for each group, such as [keys.needles] with press = ["space", "f13"]: a key or a
    list of keys, instead of the usual ones. A pedal or a remote sends keys too; "keys and pedals" on the shelf says
    which. With --plain, where words are typed, they change nothing."""

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
