"""A garment that can only be looked at: what another window does with it is followed, about once a second.

The journal is read in a thread of its own, so that neither the keys nor the one who writes ever wait for it.
"""

from collections.abc import Callable
from dataclasses import dataclass

from textual.message import Message

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.evolve import Happening
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal.lock import in_use
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.ledger import LedgerScreen
from finishing_tui.screens.program import program
from finishing_tui.widgets.choices import Choice

EVERY = 1.0
"""Seconds between two looks at the journal."""


@dataclass
class Heard(Message):
    """What was read: the ``news`` since ``known`` events, whether nobody has it in hand, and what kept us from it."""

    news: tuple[Happening, ...]
    known: int
    free: bool
    trouble: str


class Looking(AtTheNeedles):
    """The needles of another window, followed; once that one has put it down, it may be taken up here."""

    def __init__(self, hand: InHand, why: str, take_over: Callable[[], None] | None) -> None:
        """Look at ``hand``; ``why`` only that; ``take_over``: what takes it up here, where that may become possible."""
        super().__init__(hand, None, why)
        self._take_over = take_over
        self._reading = False
        self._offered = False

    def on_mount(self) -> None:
        """Begin to follow."""
        self.set_interval(EVERY, self.follow)

    def follow(self) -> None:
        """Read what is new, unless that is being done."""
        if not self._reading:
            self._reading = True
            self.run_worker(self._read, thread=True, group="reading")

    def _read(self) -> None:
        """Read what is new; this runs in a thread, and touches nothing of the screen."""
        hand = self.talk.hand
        known = hand.known
        try:
            heard = Heard(hand.news(), known, not in_use(hand.folder), "")
        except FinishingError as error:
            heard = Heard((), known, free=False, trouble=str(error))
        self.post_message(heard)

    def on_heard(self, heard: Heard) -> None:
        """Show what is new, or what keeps it from being read; offer to take it up once nobody has it in hand."""
        self._reading = False
        if program(self).leaving:
            return
        try:
            self.talk.hand.hear(heard.news, heard.known)
        except FinishingError as error:
            heard.trouble = str(error)
        if heard.trouble:
            self.talk.said, self.talk.alarm = heard.trouble, True
        if heard.news or heard.trouble:
            self.draw()
            for screen in self.app.screen_stack:
                if isinstance(screen, LedgerScreen):
                    screen.show_books()
        self._offered = self._offered and heard.free
        if heard.free and self._take_over is not None and not self._offered and self.is_active:
            self._offer(self._take_over)

    def _offer(self, take_over: Callable[[], None]) -> None:
        self._offered = True  # by now: more may be heard before the answer is

        def chosen(at: int | None) -> None:
            if at == 0:
                self.talk.hand.close()
                self.dismiss()
                self.app.call_after_refresh(take_over)

        answers = (Choice("pick it up here"), Choice("keep looking"))
        self.app.push_screen(ChoiceBox("The other window has put this garment down.", answers, unasked=True), chosen)
