"""A garment in hand and what is not part of it: digits being typed, another step looked at, a question asked twice.

It is the conversation at the needles, without any drawing. ``asked`` has what each key does to it; a key leads to a
command, or to something that must be opened first, which the screen then opens (``openings``).
"""

from typing import TYPE_CHECKING, Literal

from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import Command, Refusal, may_change_later
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.state import State
from finishing_tui.glance.actions import ActionId
from finishing_tui.glance.counting import MOST_DIGITS, Countable, asks_for_value, countables, meaning
from finishing_tui.glance.glancing import half_done
from finishing_tui.talk.keys import USUAL
from finishing_tui.talk.offers import Offer, offers
from finishing_tui.glance.rings import Ring, ring

if TYPE_CHECKING:
    from finishing_tui.glance.following import Following

Opening = ActionId | Literal["other: which needle", "count: which needle"]
"""What must be opened before anything can be decided: what an action asks for, or which needle is meant."""


class AtHand:
    """A garment in hand and the keys pressed on it; ``said`` is the last sentence, ``alarm``: it is a refusal.

    ``rings``: what the bell is to ring for; ``follows``: what the last count changes further on, to be asked about;
    ``again``: what the same key does when it is pressed once more, and the state that this holds for; ``warned``: the
    action that was refused because of typed digits, and these; ``keys``: those in force, which its sentences name;
    ``aloud``: what is said is spoken even where little is; ``back``: something was just taken back.
    """

    def __init__(self, hand: InHand, look: str = "") -> None:
        """``look``: why it can only be looked at; empty where it is in hand."""
        self.hand = hand
        self.keys = USUAL
        self.look = look
        self.typed = ""
        self.looking: int | None = None
        self.said = ""
        self.alarm = False
        self.aloud = False
        self.back = False
        self.rings: Ring | Literal["refused"] | None = None
        self.follows: Following | None = None
        self.again: tuple[str, State, Command | None] | None = None
        self.warned: tuple[ActionId, str] | None = None

    @property
    def state(self) -> State:
        """The garment's state right now."""
        return self.hand.state

    @property
    def shown_step(self) -> int | None:
        """The step in the middle of the screen, counted from 0; None when all are done."""
        return self.state.current if self.looking is None else self.looking

    def offers(self) -> tuple[Offer, ...]:
        """Return what may be done now."""
        return offers(self.state, self.looking)

    def offer(self, action: ActionId) -> Offer | None:
        """Return what ``action`` may do now, if it may do anything."""
        return next((offer for offer in self.offers() if offer.action == action), None)

    def meaning(self) -> str:
        """Return what the digits typed so far would mean."""
        return meaning(self.state, self.keys)

    def countables(self) -> tuple[Countable, ...]:
        """Return what could be counted now."""
        return countables(self.state)

    def digit(self, sign: str) -> None:
        """Take a digit, or the point of a measure."""
        self.quiet()
        self.looking = None
        if self.look:
            self.refuse(self.look)
        elif sign == "." and (not asks_for_value(self.state) or "." in self.typed):
            self.refuse("a count is a whole number")
        elif len(self.typed) < MOST_DIGITS:
            self.typed += sign
        else:
            self.refuse(f"a number has at most {MOST_DIGITS} digits here")

    def clear(self) -> None:
        """Forget digits, questions, and looking at another step."""
        self.quiet()
        self.typed = ""
        self.looking = None
        self.again = None

    def do(self, command: Command, action: ActionId | Literal[""] = "") -> bool:
        """Carry out ``command``; ``action``: the key that asked, so that the same key may answer a question."""
        self.quiet()
        before = self.state
        refusal = self.hand.do(command)
        self.done(refusal, action)
        if refusal is None:
            self.rings = ring(before, self.state)
            if self.state.current != before.current and (waiting := half_done(self.state)):
                self.say(f"left half done: {waiting}")
            self.follows = self._follows(before) if may_change_later(command) else None
        return refusal is None

    def _follows(self, before: State) -> "Following | None":
        from finishing_tui.glance.following import following  # noqa: PLC0415  (the audit: few commands need it)

        return following(before, self.state)

    def done(self, refusal: Refusal | None, action: ActionId | Literal[""]) -> None:
        """Say why something was refused, and by which key it is done all the same, if there is one."""
        if refusal is None:
            return
        self.refuse(refusal.sentence)
        if refusal.again is not None and action != "":
            self.again = (action, self.state, refusal.again)
            if " Again" not in refusal.sentence:
                self.said = f"{self.said} {self.keys.begins(f'needles.{action}')} again does it all the same."

    def take_back(self) -> None:
        """Take back what was done last, and say what that was."""
        self.quiet()
        label = self.state.top_label
        refusal = self.hand.take_back()
        self.done(refusal, "take_back")
        self.back = refusal is None
        if refusal is None and label:
            self.say(f"taken back: {label}")

    def say(self, text: str, *, aloud: bool = False) -> None:
        """Say something that is no refusal; ``aloud``: it is what a key was pressed for, not only about what it did."""
        self.said, self.alarm, self.aloud = sentence(text), False, aloud

    def refuse(self, text: str) -> None:
        """Say why nothing is done, and ring for it."""
        self.said, self.alarm, self.rings = sentence(text), True, "refused"

    def quiet(self) -> None:
        """Say nothing, and ring for nothing."""
        self.said, self.alarm, self.rings = "", False, None
        self.aloud = self.back = False
