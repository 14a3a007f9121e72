"""The conversation over a garment in hand, line by line: a line is heard, and what it leads to is said.

It neither reads nor writes a stream, so that every answer can be known for what it is, and it decides nothing.
"""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.clock import Clock
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.state import State
from finishing_tui.glance.counting import coming_back_asks
from finishing_tui.glance.rings import ring
from finishing_tui.glance.wishes import Wishes
from finishing_tui.plain import telling, typed
from finishing_tui.plain.asks import BACK, SHAPES, hears
from finishing_tui.plain.pages import KEPT, PAGES
from finishing_tui.plain.prompt import Prompt
from finishing_tui.plain.seeing import Seeing, changes
from finishing_tui.plain.words import TypedKeys, understood
from finishing_tui.talk.acts import BY_ID
from finishing_tui.talk.asks import Ask, SetNumber, WeighPlans, WorkOut
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.dispatch import begin
from finishing_tui.talk.offers import open_to

_ONLY_LOOKED_AT = "You can only look at this garment here."
_TOO_SOON = "That came too soon after the last answer, so it is not counted."


class LineByLine:
    """A garment in hand, worked by lines; ``wishes``: what it is told in; ``look``: nothing of it can be changed."""

    def __init__(self, hand: InHand, clock: Clock, wishes: Wishes, *, look: bool = False) -> None:
        self._talk = Talk(hand, _ONLY_LOOKED_AT if look else "", TypedKeys())
        self._seeing = Seeing(self._talk, clock, wishes)
        self._prompt = Prompt(self._talk, self._seeing)
        self._full_hands = False
        self._answered: tuple[type[Ask], ...] = ()  # questions that the line they came from answered too

    @property
    def ends(self) -> bool:
        """Whether it is to be put down."""
        return self._talk.ends

    @property
    def where(self) -> str:
        """What was written about where it is left."""
        return self._talk.where

    def greet(self) -> list[str]:
        """Return what is said first: the step under way, what should be counted, and whether the files changed."""
        state = self._talk.state
        begin(self._talk)
        self._talk.asks(None)
        lines = telling.beginning(self._seeing.under_way())
        asked = coming_back_asks(state)
        if state.last_act and asked:
            self._talk.returned = True
            lines.append(f"{asked} Type the number, or go on.")
        return [*lines, *self._prompt.lines()]

    def hear(self, line: str, *, eager: bool = False) -> list[str]:
        """Return the answer to a line, ending in what comes next; ``eager``: it came before the last answer was out."""
        talk, before = self._talk, self._talk.state
        talk.quiet()
        ask = talk.asked
        lines = self._at_the_needles(line, eager=eager) if ask is None else self._at_a_question(ask, line)
        if talk.ends:
            return lines
        if talk.asked is None:
            talk.typed = ""
        if talk.state is not before:
            lines = [*lines, *self._changes(before)]
        return [*lines, *self._prompt.lines()]

    def meanwhile(self, before: State) -> list[str]:
        """Return what another window has done since ``before``; nothing where it has done nothing."""
        state = self._talk.state
        if state is before:
            return []
        down = bool(state.sittings) and state.sittings != before.sittings and bool(state.sittings[-1].ended)
        told = "the other window has put it down." if down else "the other window went on."
        return [told, *(self._changes(before) or telling.beginning(self._seeing.under_way()))]

    def hear_nothing(self) -> list[str]:
        """Return what is said after a line that could not be taken: what comes next, or what is asked."""
        self._talk.again = None
        return self._prompt.lines()

    def _at_a_question(self, ask: Ask, line: str) -> list[str]:
        talk, word = self._talk, line.casefold()
        if word == "escape":
            talk.leave()
            lines = self._said()
            return lines if lines or talk.asked is not None else ["Nothing changed."]
        if word in BACK and ask.back is not None:
            talk.back()
            return self._said()
        if word in {"", "?", "help"} and not SHAPES[type(ask)].free:
            self._prompt.ask_whole()
            return []
        return [*hears(talk, line), *self._said()]

    def _at_the_needles(self, line: str, *, eager: bool) -> list[str]:
        self._answered = ()
        if not line:
            return self._empty(eager=eager)
        if line[0] in "+-.0123456789":
            return self._took(typed.number(self._talk, line))
        heard = understood(line, open_to(self._talk))
        return self._took([heard]) if isinstance(heard, str) else self._word(heard.what, heard.rest)

    def _empty(self, *, eager: bool) -> list[str]:
        talk = self._talk
        if talk.again is not None:
            word = talk.keys.shown(f"needles.{talk.again[0]}")
            return [f"Nothing was done. To confirm, type {word}."]
        if self._full_hands:
            return [_TOO_SOON] if eager else self._word("press", "")
        seen = self._seeing.shown()
        return [*telling.heading(seen), *telling.standing(seen.face)]

    def _word(self, what: str, rest: str) -> list[str]:
        talk = self._talk
        if what not in BY_ID and what != "take up":
            talk.again = None
        if what in telling.ASKED:
            return telling.ASKED[what](self._seeing.shown())
        if what in KEPT:
            return KEPT[what](talk.hand)
        if what == "hands":
            self._full_hands = not self._full_hands
            return [f"an empty line now {'counts one' if self._full_hands else 'changes nothing'}."]
        self._answered = (WeighPlans, SetNumber) if rest else ()
        lines = self._took(typed.word(talk, what, rest), rest)
        return self._seeing.turned_to() if what in typed.TURNS and not lines else lines

    def _took(self, misheard: list[str], rest: str = "") -> list[str]:
        """Return what is said of a line; one that could not be taken comes between asking twice."""
        if misheard:
            self._talk.again = None
        return [*misheard, *self._said(rest)]

    def _said(self, rest: str = "") -> list[str]:
        """Go on to what must be answered, or to the needles, and return what is said until then."""
        talk = self._talk
        lines = [talk.said]
        while (ask := talk.asked) is not None:
            if isinstance(ask, WorkOut):
                talk.answer(_found(ask))
            elif type(ask) in PAGES:
                lines += PAGES[type(ask)](talk, ask, rest)
                talk.leave()
            elif isinstance(ask, self._answered):
                talk.leave()
            else:
                break
            lines.append(talk.said)
        return [line for line in lines if line]

    def _changes(self, before: State) -> list[str]:
        see = self._seeing.under_way
        return changes(see(before), see(), ring(before, self._talk.state))


def _found(ask: WorkOut) -> object:
    try:
        return ask.find()
    except FinishingError as error:
        return error
