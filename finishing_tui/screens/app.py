"""The terminal program: it opens screens, and puts every garment down when it ends, however it ends."""

import asyncio
import signal
from collections.abc import Callable, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

from textual.binding import Binding
from textual.dom import DOMNode
from textual.events import Event, Key, Resize
from textual.geometry import Size
from textual.message import Message
from textual.screen import Screen

from finishing_tui.garment.clock import Clock
from finishing_tui.garment.given_up import GivenUp
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.opening import open_garment
from finishing_tui.screens.palettes import open_palette
from finishing_tui.screens.program import Program
from finishing_tui.screens.shelf import ShelfScreen
from finishing_tui.screens.too_small import TooSmall, fits
from finishing_tui.settings import Settings
from finishing_tui.settings.model import Bell
from finishing_tui.speech import NoProgram, Speaker, program_for
from finishing_tui.talk.key_names import TOLD_AS
from finishing_tui.widgets.looks import DARK, FALLBACK, LIGHT, LIGHT_OF_FEW

if TYPE_CHECKING:
    from textual.actions import ActionParseResult


class SpeechFailed(Message):
    """Nothing can be spoken any more; ``text`` says why."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.text = text


TIMES: Mapping[Bell, int] = MappingProxyType({"run": 1, "recount": 2, "target": 3, "refused": 1})
"""How often the bell rings."""


class FinishingApp(Program):
    """The shelf, and on top of it whatever was asked for."""

    TITLE = "finishing"
    ENABLE_COMMAND_PALETTE = False
    CSS_PATH = "app.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        Binding("ctrl+q", "quit", show=False, id="app.leave", priority=True),
        Binding("ctrl+c", "quit", show=False, id="app.stop", priority=True),
    ]
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (60, "-normal"), (96, "-wide")]  # noqa: RUF012
    VERTICAL_BREAKPOINTS = [(0, "-low"), (23, "-middling"), (28, "-high"), (38, "-tall")]  # noqa: RUF012

    def __init__(
        self,
        shelf: Path,
        *,
        garment: Path | None = None,
        demos: bool = False,
        settings: Settings | None = None,
        looks: str = "",
        clock: Clock | None = None,
        said: str = "",
    ) -> None:
        """Open the ``shelf``, and on it one ``garment``, or the demo garments to choose from.

        ``looks``: any of the words "light", "terminal" (its own colors) and "ascii"; ``settings``: the usual ones when
        not given; ``said``: what the first screen says.
        """
        words = looks.split()
        # Said now, not by the theme alone: here Textual chooses how it leaves colour out (NO_COLOR), once and for all,
        # and in a terminal's own colours, which have no shade until they are drawn, its grey is black on black.
        super().__init__(settings=settings or Settings(), clock=clock or Clock(), ansi_color="terminal" in words)
        self.set_keymap(self.keys.keymap())
        self._speaker = self._made_to_speak()
        self._said = said
        self.shelf = shelf
        self._given_up: list[GivenUp] = []
        self._first = garment
        self._demos = demos
        light = LIGHT_OF_FEW if self.console.color_system == "standard" else LIGHT
        self.register_theme(DARK)
        self.register_theme(light)
        self.theme = light.name if "light" in words else "ansi-dark" if "terminal" in words else "lamp"
        self.set_class("ascii" in words, "-ascii")

    def get_theme_variable_defaults(self) -> dict[str, str]:
        """Return our colours' names for looks that do not know them."""
        return dict(FALLBACK)

    def on_mount(self) -> None:
        """Open the first screen, and listen for the end."""
        self._listen()
        self.screen_change_signal.subscribe(self, self._fit)
        at_once = self._first is None and not self._demos
        if not at_once:
            self.to_say = f"{self._said} {self.to_say}".strip()
        shelf = ShelfScreen(self.shelf, self._said if at_once else "")
        self.push_screen(shelf)
        if self._first is not None:
            open_garment(self, self._first)
        elif self._demos:
            shelf.call_after_refresh(shelf.action_demos)

    def on_resize(self, event: Resize) -> None:
        """Cover everything while the terminal is too small."""
        self._cover(event.size)

    def _cover(self, size: Size) -> None:
        if fits(*size) or isinstance(self.screen, TooSmall):
            return
        if self.takes_keys:  # those came before it, and go where they were meant to
            self.set_timer(0.02, lambda: self._cover(self.size))
        else:
            self.push_screen(TooSmall())

    async def on_event(self, event: Event) -> None:
        """Take every event; a pedal's key is called by its name, however the terminal sends it."""
        if isinstance(event, Key) and event.key in TOLD_AS:
            told = Key(TOLD_AS[event.key], None)
            told.time = event.time
            event = told
        await super().on_event(event)

    async def run_action(
        self,
        action: "str | ActionParseResult",
        default_namespace: DOMNode | None = None,
        namespaces: Mapping[str, DOMNode] | None = None,
    ) -> bool:
        """Do what a key asks for; nothing for a key that outran its screen, or that comes while all is being left."""
        if self.leaving or (isinstance(default_namespace, Screen) and not default_namespace.is_mounted):
            return False
        return await super().run_action(action, default_namespace, namespaces)

    def _fit(self, screen: Screen[object]) -> None:
        """Tell a screen that comes back how large it is: Textual tells of a change only the two in front."""
        screen.post_message(Resize(self.size, self.size))

    def bell(self) -> None:
        """Ring once: every screen does that for a key that does nothing."""
        if self.settings.rings_for("refused"):
            super().bell()

    def speak(self, text: str) -> None:
        """Speak, if anything is spoken; it never waits."""
        if self._speaker is not None:
            self._speaker.say(text)

    def _made_to_speak(self) -> Speaker | None:
        """Return what speaks, if the settings want that and there is a program that can; else what is in the way."""
        if self.settings.speech == "off":
            return None
        try:
            program = program_for(self.settings.speak_with)
        except NoProgram as error:
            self.to_say = str(error)
            return None
        return Speaker(program, lambda text: self.post_message(SpeechFailed(text)))

    def on_speech_failed(self, message: SpeechFailed) -> None:
        """Say at the needles that nothing is spoken any more, now or when they are come back to."""
        self._speaker, self.to_say = None, message.text
        for screen in self.screen_stack:
            if isinstance(screen, AtTheNeedles):
                screen.tell_trouble()

    def ring_for(self, what: Bell) -> None:
        """Ring for it as often as it is known by, unless the settings leave it out."""
        if self.settings.rings_for(what):
            self.bell_pattern(TIMES[what])

    def bell_pattern(self, times: int) -> None:
        """Ring so many times, far enough apart to be told from one another."""
        super().bell()
        for number in range(1, times):
            self.set_timer(0.25 * number, super().bell)

    async def action_quit(self) -> None:
        """Put everything down and leave."""
        self._leave()

    def _leave(self) -> None:
        self.leaving = True
        self.put_down()
        self.exit()

    def action_palette(self) -> None:
        """Let what the keys of the screen in front do be found by its words."""
        open_palette(self.screen)

    def action_help_quit(self) -> None:
        """Nothing of Textual's own: ctrl+c puts everything down, like ctrl+q."""

    def on_unmount(self) -> None:
        """Put the garment down, however this ends."""
        if self._speaker is not None:
            self._speaker.close()
        self.put_down()

    def put_down(self, where: str = "") -> bool:
        """Put the garment in hand down, if there is one; return whether everything is on the disk."""
        hand, self.in_hand = self.in_hand, None
        if hand is None:
            return True
        saved = hand.put_down(where)
        if hand.given_up is not None:
            self._given_up.append(hand.given_up)
        return saved

    @property
    def given_up(self) -> tuple[GivenUp, ...]:
        """What could not be saved of all that was put down, and was not taken in again since."""
        return tuple(one for one in self._given_up if one.waits)

    def _listen(self) -> None:
        """Put the garment down on a hang-up or a terminate signal, where the system has them."""
        loop = asyncio.get_running_loop()
        for name in ("SIGHUP", "SIGTERM"):
            _on_signal(loop, getattr(signal, name, None), self._leave)


def _on_signal(loop: asyncio.AbstractEventLoop, number: signal.Signals | None, then: Callable[[], None]) -> None:
    if number is None:
        return
    try:
        loop.add_signal_handler(number, then)
    except (NotImplementedError, RuntimeError, ValueError):
        return  # another system, or not the main thread: the journal is safe without it
