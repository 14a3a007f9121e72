"""A garment in hand and what is not part of it: another step that is looked at, and something that is asked twice."""

from datetime import UTC

from finishing_tui.craft.words import sentence
from finishing_tui.garment.clock import Clock
from finishing_tui.garment.commands import Command, Refusal, may_change_later
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.state import State
from finishing_tui.glance.glancing import look_at
from finishing_tui.talk.offers import Offer, offers
from finishing_tui.glance.values import Glance
from finishing_tui.glance.wishes import Wishes


class Held:
    """The garment; ``wishes``: what it is told in; ``look``: nothing of it can be changed here.

    ``looking``: another step that is looked at, from 0; ``full_hands``: an empty line is a press.
    ``counted``: the state before a count, or before a step was given up, until it is told what that changes.
    ``left``: what was written when it was put down; None while it goes on. ``again``: what to type for what was refused
    and may be asked again, empty when nothing was.
    """

    def __init__(self, hand: InHand, clock: Clock, wishes: Wishes, *, look: bool = False) -> None:
        self.hand = hand
        self.look = look
        self.looking: int | None = None
        self.full_hands = False
        self.counted: State | None = None
        self.left: str | None = None
        self.again = ""
        self._clock = clock
        self._wishes = wishes
        self._asked: tuple[State, Command | None, Command | None] | None = None

    @property
    def state(self) -> State:
        """The garment's state right now."""
        return self.hand.state

    @property
    def shown_step(self) -> int | None:
        """The step that is looked at, from 0; None when all are done and none is."""
        return self.state.current if self.looking is None else self.looking

    def seen(self, state: State | None = None) -> Glance:
        """Return all there is to see of the step under the needles, now or in another ``state``."""
        state = state or self.state
        return self._look_at(state, state.current)

    def shown(self) -> Glance:
        """Return all there is to see of the step that is looked at."""
        return self._look_at(self.state, self.shown_step)

    def offers(self) -> tuple[Offer, ...]:
        """Return what may be done now."""
        return offers(self.state, self.looking)

    def offer(self, action: str) -> Offer | None:
        """Return one of the offers, if it stands."""
        return next((offer for offer in self.offers() if offer.action == action), None)

    def attempt(self, command: Command) -> Refusal | None:
        """Carry out ``command``, or return why not."""
        before = self.state
        refusal = self.hand.do(command)
        if refusal is None and may_change_later(command):
            self.counted = before
        return refusal

    def do(self, command: Command, word: str, said: str = "") -> list[str]:
        """Carry out ``command``, typed as ``word``; asked again at once, it is done in spite of what spoke against it.

        Returns ``said``, or the refusal.
        """
        asked = self._asked
        self.forget()
        if asked is not None and asked[0] is self.state and asked[1] == command and asked[2] is not None:
            command = asked[2]
        refusal = self.attempt(command)
        if refusal is None:
            return [said] if said else []
        if refusal.again is None:
            return [sentence(refusal.sentence)]
        self._asked, self.again = (self.state, command, refusal.again), word
        return [sentence(refusal.sentence), f"to do it all the same, type {word} again."]

    def take_back(self, word: str) -> list[str]:
        """Take the latest thing back; what is no press is named first."""
        asked = self._asked
        self.forget()
        label = self.state.top_label if self.state.top else ""
        if label and not (asked is not None and asked[0] is self.state and asked[1] is None):
            self._asked, self.again = (self.state, None, None), word
            return [f"this would take back {label}. Type {word} again for that."]
        return self.take_back_last()

    def take_back_last(self) -> list[str]:
        """Take back what was done last, and say what that was."""
        label = self.state.top_label if self.state.top else ""
        refusal = self.hand.take_back()
        return [sentence(refusal.sentence) if refusal else f"taken back{f': {label}' if label else ''}."]

    def _look_at(self, state: State, step: int | None) -> Glance:
        now = self._clock.now().astimezone(UTC)
        return look_at(state, step, now, self._wishes, lasted=self.hand.lasted)

    def forget(self) -> None:
        """Forget what was asked twice: something else came between."""
        self._asked, self.again = None, ""
