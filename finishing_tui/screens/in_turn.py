"""Keys are taken one at a time: the next one once all that the one before it led to is there.

Textual hands a key on to what has the focus just then, and looks up what it is bound to when it comes back from there.
Of keys that come in a burst (a pedal that sends several, a paste into a terminal that marks none, a slow machine) the
later ones would go where the first is only just leading away from: to the line before, or to a screen that is going.
A key that is held down is another matter: one that left a screen does nothing on the next one, if that was not drawn
yet when the key came. Whoever presses it on a screen that can be seen means that screen.
Digits and letters are not held to be so: 1 and then 26 is a size and a number. What comes by itself, and what says
where a garment was left, takes no key at all that came before it could be seen: a digit of a count would choose there
what nobody has read. So does the first picture of all.
"""

import asyncio
import contextlib

from textual.app import App
from textual.events import Event, Key, Paste
from textual.message import Message
from textual.message_pump import MessagePump
from textual.screen import Screen

from finishing_tui.screens.leaving import Leaving

PATIENCE = 0.5
"""Seconds to wait for any one of what a key goes through; what is gone meanwhile must not keep the next key waiting."""

ROUNDS = 2
"""A key goes up from its line to the program, and what it is bound to goes the same way once more ("submitted")."""


class InTurn(App[None]):
    """A program that takes its keys in turn; ``ansi_color``: it is drawn in the terminal's own colours."""

    def __init__(self, *, ansi_color: bool = False) -> None:
        super().__init__(ansi_color=ansi_color)
        self._waiting: asyncio.Queue[tuple[Key | Paste, Screen[object] | None]] = asyncio.Queue()
        self._drawn: Screen[object] | None = None
        self._since = float("inf")  # when anything could be seen first
        self._read: tuple[object | None, float] = None, 0.0
        self._taking = False

    def on_mount(self) -> None:
        """Begin to take keys."""
        self.run_worker(self._take_in_turn(), name="keys in turn", group="keys")

    async def on_event(self, event: Event) -> None:
        """Take every event; a key waits for its turn."""
        if isinstance(event, Key | Paste) and not event.is_forwarded:
            self._taking = True
            self._waiting.put_nowait((event, self._drawn))
        else:
            await super().on_event(event)

    def post_display_hook(self) -> None:
        """Know which screen can be seen: Textual calls this as soon as anything of it was drawn."""
        if self._drawn is None:
            self._since = Message().time
        self._drawn = self.screen
        if self._unasked is not self._read[0]:
            self._read = self._unasked, Message().time  # by the clock that says when a key came

    @property
    def takes_keys(self) -> bool:
        """Whether keys that came are not taken yet, with all that they lead to, or what came by itself is not drawn."""
        return self._taking or self._drawn is None or (self._unasked is not None and self._unasked is not self._read[0])

    async def _take_in_turn(self) -> None:
        before, on = "", None
        while True:
            event, seen = await self._waiting.get()
            key = event.key if isinstance(event, Key) and not event.is_printable else ""
            outran = self.screen not in (on, seen)
            if not self._could_mean(event):
                self.bell()
            elif not (outran and key and key == before):
                before, on = key, self.screen
                await self._take(event)
            self._taking = not self._waiting.empty()

    @property
    def _unasked(self) -> object | None:
        """What came by itself and is asked now."""
        return self.screen.unasked if isinstance(self.screen, Leaving) else None

    def _could_mean(self, event: Key | Paste) -> bool:
        """Return whether anything, and what came by itself, where anything did, could be seen when a key came."""
        unasked, (read, since) = self._unasked, self._read
        return event.time >= self._since and (unasked is None or (unasked is read and event.time >= since))

    async def _take(self, event: Key | Paste) -> None:
        """Hand a key on and wait until it was dealt with; a screen it opened deals with nothing before it is there."""
        through = (self.focused or self.screen).ancestors_with_self
        await super().on_event(event)
        for node in through * ROUNDS:
            await self._through(node)
        await self._through(self.screen)

    async def _through(self, node: MessagePump) -> None:
        """Wait until ``node`` has dealt with all that was sent to it by now."""
        reached = asyncio.Event()
        if node.call_later(reached.set):
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(reached.wait(), PATIENCE)
