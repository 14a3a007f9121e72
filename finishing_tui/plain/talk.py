"""The conversation over a garment in hand: a line is heard, and what it leads to is said.

It neither reads nor writes a stream, so that every answer can be known for what it is.
"""

from finishing_tui.craft.words import sentence
from finishing_tui.garment.clock import Clock
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.state import State
from finishing_tui.glance.counting import worth_counting
from finishing_tui.glance.rings import ring
from finishing_tui.glance.wishes import Wishes
from finishing_tui.plain import telling
from finishing_tui.plain.acts import ACTS, KEEPS_ASKING, offered
from finishing_tui.plain.changed import changed
from finishing_tui.plain.counting import number
from finishing_tui.plain.following import followed
from finishing_tui.plain.held import Held
from finishing_tui.plain.questions import Question, Reply
from finishing_tui.plain.telling import ASKED
from finishing_tui.plain.words import Heard, understood, word_for

_RINGS = {"run": "end of a run.", "recount": "half way.", "target": "this part is complete."}
_ALWAYS = frozenset(
    {"rip_back", "numbers", "note", "pace", "look_back", "look_on", "leave_out", "ledger", "help", "put_down"}
)
"""The actions that are not told each time: they are nearly always there, and help says them."""


class Talk:
    """A garment in hand, worked by lines."""

    def __init__(self, hand: InHand, clock: Clock, wishes: Wishes, *, look: bool = False) -> None:
        self._held = Held(hand, clock, wishes, look=look)
        self._question: Question | None = None
        self._said_offers: tuple[str, ...] = ()

    @property
    def left(self) -> str | None:
        """What was written when it was put down; None while the conversation goes on."""
        return self._held.left

    def greet(self) -> list[str]:
        """Return what is said first: the step under way, what should be counted, and whether the files changed."""
        held = self._held
        plan = None if held.look else held.hand.changed_plan()
        if plan is not None:
            self._question = changed(held.state, plan)
        lines = telling.beginning(held.seen())
        found = worth_counting(held.state)
        if held.state.last_act and found:
            wanted = ", or ".join(f"{one.text}, which should be {one.expected}" for one in found)
            lines.append(f"has anything slipped off? Count {wanted}, and type the number; or go on.")
        return [*lines, *self._prompt()]

    def hear(self, line: str, *, eager: bool = False) -> list[str]:
        """Return the answer to a line, ending in what comes next; ``eager``: it came before the last answer was out."""
        held, before = self._held, self._held.state
        lines = self._answer(line, eager=eager)
        if held.left is not None:
            return lines
        if held.state is not before:
            held.looking = None
            lines = [*lines, *self._after(before)]
        counted, held.counted = held.counted, None
        if counted is not None and self._question is None:
            lines = [*lines, *self._open(followed(counted, held.state))]
        return [*lines, *self._prompt()]

    def meanwhile(self, before: State) -> list[str]:
        """Return what another window has done since ``before``; nothing where it has done nothing."""
        state = self._held.state
        if state is before:
            return []
        down = bool(state.sittings) and state.sittings != before.sittings and bool(state.sittings[-1].ended)
        told = "the other window has put it down." if down else "the other window went on."
        return [told, *(self._after(before) or telling.beginning(self._held.seen()))]

    def hear_nothing(self) -> list[str]:
        """Return what is said after a line that could not be taken: what comes next, or what is asked."""
        self._held.forget()
        return self._prompt()

    def _answer(self, line: str, *, eager: bool) -> list[str]:
        if self._question is not None:
            return self._answered(self._question, line)
        if not line:
            return self._empty(eager=eager)
        if line[0] in "+-.0123456789":
            return self._open(number(self._held, line))
        heard = understood(line, self._held.offers())
        if isinstance(heard, str) or heard.what not in KEEPS_ASKING:
            self._held.forget()
        return [heard] if isinstance(heard, str) else self._done(heard)

    def _answered(self, question: Question, line: str) -> list[str]:
        if line.casefold() == "escape":
            self._question = None
            return ["Left as it is."]
        if not question.free and line.casefold() in {"", "?", "help"}:
            return []
        return self._open(question.hear(self._held, line))

    def _empty(self, *, eager: bool) -> list[str]:
        held = self._held
        if held.again:
            return [f"Nothing was done. To do it, type {held.again} again, as a word."]
        if held.full_hands:
            held.forget()
            return [_TOO_SOON] if eager else self._done(Heard("press"))
        seen = held.shown()
        return [*telling.heading(seen), *telling.standing(seen.face)]

    def _done(self, heard: Heard) -> list[str]:
        if heard.what in ASKED:
            return ASKED[heard.what](self._held.shown())
        act = ACTS.get(heard.what)
        return self._open(act(self._held, heard.rest) if act else offered(self._held, heard.what))

    def _open(self, reply: Reply) -> list[str]:
        lines, self._question = reply
        return lines

    def _after(self, before: State) -> list[str]:
        """Return what a change has led to."""
        seen, was = self._held.seen(), self._held.seen(before)
        rang = ring(before, self._held.state)
        lines = [_RINGS[rang]] if rang else []
        if seen.step != was.step:
            return [*lines, *telling.beginning(seen), *telling.standing(seen.face)]
        if seen.part != was.part:
            lines += telling.part(seen)
        return [*lines, *telling.standing(seen.face)]

    def _prompt(self) -> list[str]:
        if self._question is not None:
            return self._question.asks()
        held, lines = self._held, []
        often = [offer for offer in held.offers() if offer.action not in _ALWAYS]
        sorts = tuple(offer.label if offer.action == "finish" else str(offer.action) for offer in often)
        if sorts != self._said_offers:
            self._said_offers = sorts
            lines.append(f"you may type {', '.join(f'{word_for(one)} for {one.label}' for one in often)}, or help.")
        if held.looking is not None:
            current = held.state.current
            here = "no step" if current is None else f"step {current + 1}"
            lines.append(f"looking at step {held.looking + 1}; under the needles is {here}.")
        return [*lines, f"next: {sentence(telling.upcoming(held.seen().face))}"]


_TOO_SOON = "That came before the last answer could be heard, so it is not counted."
