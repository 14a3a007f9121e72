"""How every answer ends: with what is asked, or with what may be typed where that has changed, and what comes next."""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.craft.words import sentence
from finishing_tui.plain import telling
from finishing_tui.plain.asks import BACK, SHAPES
from finishing_tui.plain.seeing import Seeing
from finishing_tui.plain.words import word_for
from finishing_tui.talk.action import Offer
from finishing_tui.talk.asks import Ask
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.offers import open_to

_ALWAYS = frozenset(
    {
        "rip_back",
        "numbers",
        "note",
        "pace",
        "look_back",
        "look_on",
        "leave_out",
        "ledger",
        "help",
        "palette",
        "put_down",
    }
)
"""The actions that are not told each time: they are nearly always there, and help says them."""

_STANDING: Mapping[str, str] = MappingProxyType({"press": "the next one", "other": "the other way"})
"""What is said of actions whose labels change from press to press: what may be typed is not said anew for that."""


class Prompt:
    """The end of an answer. What was said already, of what may be typed or before a question, is not said again."""

    def __init__(self, talk: Talk, seeing: Seeing) -> None:
        self._talk = talk
        self._seeing = seeing
        self._offered: tuple[str, ...] = ()
        self._told: list[str] = []

    def lines(self) -> list[str]:
        """Return the end of an answer."""
        if self._talk.asked is not None:
            return self._question(self._talk.asked)
        self._told = []
        talk, lines = self._talk, []
        often = [offer for offer in open_to(talk) if offer.action not in _ALWAYS]
        sorts = tuple(offer.label if offer.action == "finish" else offer.action for offer in often)
        if sorts != self._offered:
            self._offered = sorts
            lines.append(f"you may type {', '.join(f'{word_for(one)} for {_said(one)}' for one in often)}, or help.")
        if talk.looking is not None:
            current = talk.state.current
            here = "no step" if current is None else f"step {current + 1}"
            lines.append(f"looking at step {talk.looking + 1}; you are at {here}.")
        return [*lines, f"next: {sentence(telling.upcoming(self._seeing.under_way().face))}"]

    def ask_whole(self) -> None:
        """Let the question be asked with all that is said before it, though that was said already."""
        self._told = []

    def _question(self, ask: Ask) -> list[str]:
        shape = SHAPES[type(ask)]
        told = [line for line in shape.told(ask) if line not in self._told]
        self._told += told
        *answers, how = shape.answers(ask)
        back = [f"{BACK[0]}: One question back."] if ask.back is not None else []
        return [sentence(ask.question).replace(" · ", ", "), *told, *answers, *back, how]


def _said(offer: Offer) -> str:
    return _STANDING.get(offer.action, offer.label)
