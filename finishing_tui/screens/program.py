"""What a screen may ask of the program it is drawn in; the program that opens all screens is made of it."""

from datetime import UTC, datetime
from typing import Any, cast

from textual.screen import Screen

from finishing_tui.garment.clock import Clock
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.wishes import Wishes
from finishing_tui.screens.in_turn import InTurn
from finishing_tui.settings import Settings
from finishing_tui.settings.model import Bell
from finishing_tui.talk.keys import Keys


class Program(InTurn):
    """Its clock, its keys and settings, what is in hand; it speaks, rings, and puts down.

    ``to_say``: what the needles must say, such as why nothing is spoken, until they have.
    ``leaving``: it is on its way out, and opens nothing any more.
    """

    def __init__(self, *, settings: Settings, clock: Clock, ansi_color: bool) -> None:
        super().__init__(ansi_color=ansi_color)
        self.settings = settings
        self.keys: Keys = settings.in_force
        self.clock = clock
        self.in_hand: InHand | None = None
        self.to_say = ""
        self.leaving = False

    @property
    def wishes(self) -> Wishes:
        """What a garment is looked at with."""
        return self.keys.wishes(self.settings.units)

    @property
    def now(self) -> datetime:
        """The time of day, in universal time."""
        return self.clock.now().astimezone(UTC)

    def speak(self, text: str) -> None:
        """Speak, if anything is spoken; it never waits."""
        raise NotImplementedError

    def ring_for(self, what: Bell) -> None:
        """Ring for it as often as it is known by, unless the settings leave it out."""
        raise NotImplementedError

    def put_down(self, where: str = "") -> bool:
        """Put the garment in hand down, if there is one; return whether everything is on the disk."""
        raise NotImplementedError


def program(screen: Screen[Any]) -> Program:
    """Return the program a screen is drawn in."""
    return cast("Program", screen.app)
