"""A garment in hand, and what is not part of it: what is typed, looked at, asked, asked twice, and said.

It is the one object that a conversation goes through. ``dispatch`` hands it what the knitter wants, ``acts`` do that,
and the two mouths draw or say what stands in it.
"""

from dataclasses import dataclass
from typing import Any, Literal, Protocol

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import Command, Refusal, may_change_later
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.left_open import left_open
from finishing_tui.garment.state import State
from finishing_tui.glance.counting import MOST_DIGITS, asks_for_value
from finishing_tui.glance.glancing import half_done, steps_words
from finishing_tui.glance.label_words import top_words
from finishing_tui.glance.rings import Ring, ring
from finishing_tui.talk.asks import Ask, weigh
from finishing_tui.talk.one_off import in_one_line


class KeyNames(Protocol):
    """What keys are called in sentences."""

    def shown(self, *actions: str) -> str:
        """Return one key of each of ``actions`` as people read it."""

    def begins(self, action: str) -> str:
        """Return a key of ``action`` to begin a sentence with."""

    def number(self) -> str:
        """Return how a number is typed and taken at the needles, as an order."""


@dataclass(frozen=True, slots=True)
class Held:
    """A key held down since ``since`` events were known: so many ``presses``, one ``group``; ``stopped``: no more."""

    since: int
    presses: int
    group: int
    stopped: bool = False


class Talk:
    """The conversation; ``said`` is the last sentence, ``alarm``: it is a refusal.

    ``read_only``: why the garment can only be looked at, empty where it is in hand; ``keys``: those that sentences
    name; ``typed``: digits that stand for nothing yet; ``looking``: another step that is looked at, from 0; ``asked``:
    what the knitter is asked now; ``rings``: what the bell is to ring for; ``again``: what the same action does when it
    is asked for once more, and the state that this holds for; ``warned``: the action that was refused because of typed
    digits, and these; ``aloud``: what is said is spoken even where little is; ``took_back``: something was just taken
    back; ``held``: the key held down last; ``joins``: what is done belongs to what was done last, as with such a key;
    ``ends``: it is to be put down; ``where``: what was written about where it is left; ``returned``: she has just come
    back, and any needle or holder may be counted.
    """

    def __init__(self, hand: InHand, read_only: str, keys: KeyNames) -> None:
        self.hand = hand
        self.read_only = read_only
        self.keys = keys
        self.typed = ""
        self.looking: int | None = None
        self.asked: Ask | None = None
        self.said = ""
        self.alarm = False
        self.aloud = False
        self.took_back = False
        self.rings: Ring | Literal["refused"] | None = None
        self.again: tuple[str, State, Command | None] | None = None
        self.warned: tuple[str, str] | None = None
        self.held: Held | None = None
        self.joins = False
        self.ends = False
        self.where = ""
        self.returned = False
        self._waiting: list[Ask] = []

    @property
    def state(self) -> State:
        """The garment's state right now."""
        return self.hand.state

    @property
    def shown_step(self) -> int | None:
        """The step in the middle, counted from 0; None when all are done and none is looked at."""
        return self.state.current if self.looking is None else self.looking

    def digit(self, sign: str) -> None:
        """Take a digit, or the point of a measure."""
        self.quiet()
        self.looking = None
        if self.read_only:
            self.refuse(self.read_only)
        elif sign == "." and (not asks_for_value(self.state) or "." in self.typed):
            self.refuse("a count is a whole number")
        elif len(self.typed) < MOST_DIGITS:
            self.typed += sign
        else:
            self.refuse(f"use up to {MOST_DIGITS} digits")

    def clear(self) -> None:
        """Forget digits, what was to be asked twice, and looking at another step."""
        self.quiet()
        self.typed = ""
        self.looking = None
        self.again = None

    def do(self, command: Command, action: str = "") -> bool:
        """Carry ``command`` out, or say why not; return whether it was.

        ``action``: the one that asked, so that the same again may do it all the same.
        """
        refusal = self.attempt(command)
        self.refused(refusal, action)
        return refusal is None

    def attempt(self, command: Command) -> Refusal | None:
        """Carry ``command`` out, or return why not."""
        self.quiet()
        before = self.state
        refusal = self.hand.do(command, joins=self.joins)
        if refusal is None:
            self.looking = None
            self.rings = ring(before, self.state)
            if self.state.current != before.current:
                self._say_left(before)
            if may_change_later(command):
                self._follow(before)
        return refusal

    def _say_left(self, before: State) -> None:
        """Say which steps are left half done, and which were left open just now."""
        was = left_open(before)
        opened = steps_words(self.state, [step for step in left_open(self.state) if step not in was])
        waiting = (("left half done", half_done(self.state)), ("left open", opened))
        if said := " ".join(sentence(f"{how}: {steps}") for how, steps in waiting if steps):
            self.say(said)

    def refused(self, refusal: Refusal | None, action: str = "") -> None:
        """Say why something was refused, and by which key it is done all the same, if there is one."""
        if refusal is None:
            return
        self.refuse(refusal.sentence)
        if refusal.again is not None and action:
            self.again = (action, self.state, refusal.again)
            self.said = f"{self.said} {self.keys.begins(f'needles.{action}')} again {refusal.does}."

    def take_back(self) -> None:
        """Take back what was done last, and say what that was."""
        self.quiet()
        label, held = top_words(self.state), self.held
        if held is not None and held.group == self.state.top and held.presses > 1:
            label = f"{held.presses} of a held key"
        refusal = self.hand.take_back()
        self.refused(refusal, "take_back")
        self.took_back = refusal is None
        if refusal is None and label:
            self.say(f"taken back: {label}")

    def asks(self, ask: Ask | None) -> None:
        """Ask ``ask`` next, or what waited to be asked."""
        self.asked = ask if ask is not None or not self._waiting else self._waiting.pop(0)

    def waits(self, ask: Ask) -> None:
        """Let ``ask`` be asked once nothing else is."""
        self._waiting.append(ask)

    def answer(self, *answer: Any) -> None:
        """Take the answer to what is asked: of the type its shape says."""
        self.quiet()
        ask: Any = self.asked
        try:
            self.asks(ask.then(*answer))
        except FinishingError as error:
            self.refuse(str(error))

    def leave(self) -> None:
        """Leave what is asked, without an answer."""
        self.quiet()
        if self.asked is not None:
            self.asks(self.asked.left())

    def back(self) -> None:
        """Go one back in what is asked, where there is something to go back to."""
        self.quiet()
        if self.asked is not None and self.asked.back is not None:
            self.asks(self.asked.back())

    def say(self, text: str, *, aloud: bool = False) -> None:
        """Say something that is no refusal; ``aloud``: it is what was asked for, not only about what was done."""
        self.said, self.alarm, self.aloud = sentence(text), False, aloud

    def refuse(self, text: str) -> None:
        """Say why nothing is done, and ring for it."""
        self.said, self.alarm, self.rings = sentence(text), True, "refused"

    def quiet(self) -> None:
        """Say nothing, and ring for nothing."""
        self.said, self.alarm, self.rings = "", False, None
        self.aloud = self.took_back = False

    def _follow(self, before: State) -> None:
        """Let what was counted, or given up, be followed by the question what to do about what that changes later."""
        from finishing_tui.glance.following import following  # noqa: PLC0415  (the audit: few commands need it)

        follows = following(before, self.state)
        if follows is None:
            return

        def chosen(at: int) -> None:
            does = follows.does[at]
            if does.undo:
                self.take_back()
            if does.command is not None and self.do(does.command):
                self.say(f"{follows.answers.rows[at].text}: noted")

        ways = weigh("This affects later steps", follows.answers, chosen, told=follows.told, unasked=True)
        self.waits(in_one_line(ways))
