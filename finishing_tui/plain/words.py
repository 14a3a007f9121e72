"""The words of this mode: every action of the screen under its id, its key and its label now, and what can be asked.

A word is known or it is not. Nothing is guessed, for a guess could be a wrong count.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from finishing_tui.recipe.reader.near import near
from finishing_tui.talk.action import Offer
from finishing_tui.talk.acts import ACTS, BY_ID
from finishing_tui.talk.keys import Keys


@dataclass(frozen=True, slots=True)
class TypedKeys(Keys):
    """Keys as sentences name them here: each is a word, and a number is its own line."""

    def number(self) -> str:
        """Return how a number is typed and taken."""
        return "and type the number"


ASKS: Mapping[str, str] = MappingProxyType(
    {
        "where": "where you are, and what every needle holds",
        "next": "what comes next, and its rhythm",
        "needles": "what is on every needle and holder",
        "edge": "what comes next on this edge, and where you went off the plan",
        "steps": "all steps and how each stands",
        "words": "all the words of this step",
        "say": "how this step is done",
        "how": "how to count",
        "look": "how it should look when right",
        "mend": "what to do if it does not",
        "mind": "what to watch out for",
        "see": "what to look up for this step",
        "time": "the time of this sitting, and the time left",
        "notes": "the notes",
        "saved": "whether everything is saved",
    }
)
"""What can be asked for at any time; asking changes nothing."""

ORDERS: Mapping[str, str] = MappingProxyType(
    {
        "step": "step 7: look at step 7; step alone goes back to the work",
        "take up": "take up 7: start step 7, or go back to it",
        "count": "count 24, or just 24: the count is 24",
        "hands": "from then on an empty line counts one; type hands again to end that",
        "escape": "leave a question, or a step you are looking at",
    }
)
"""What has no key of its own on the screen."""

TAKES = frozenset(
    {"step", "take up", "count", "recount", "note", "pace", "leave_out", "technique", "ledger", "what_if", "numbers"}
)
"""What may have something behind it on its line."""


@dataclass(frozen=True, slots=True)
class KnownWord:
    """A line that was understood: an action's id or a word of ``ASKS`` or ``ORDERS``, and what stood behind it."""

    what: str
    rest: str = ""


def known() -> dict[str, str]:
    """Return every word that is always known, and what it stands for."""
    words: dict[str, str] = {}
    for act in ACTS:
        words.update(dict.fromkeys(act.words, act.id))
    return {**words, **{word: word for word in (*ASKS, *ORDERS)}}


def understood(line: str, offered: Iterable[Offer]) -> KnownWord | str:
    """Return what a line asks for, or a sentence that says which words there are. Nothing is guessed."""
    words = {**{offer.label.casefold(): offer.action for offer in offered}, **known()}
    if " ".join(line.casefold().split()) in words:
        return KnownWord(words[" ".join(line.casefold().split())])
    for length in (2, 1):
        parts = line.split(maxsplit=length)
        word = " ".join(parts[:length]).casefold()
        if len(parts) <= length or word not in words:
            continue
        if words[word] in TAKES:
            return KnownWord(words[word], parts[length])
        return f"Type {word!r} on a line of its own. Nothing was done."
    shown = line if len(line) <= 40 else f"{line[:40]} ..."
    meant = near(line, words, "")
    return f"{shown!r} isn't a word here; {meant if '?' in meant else 'type help for the list.'} Nothing was done."


def word_for(offer: Offer) -> str:
    """Return the shortest thing to type for an offer."""
    act = BY_ID[offer.action]
    return act.letter or act.shown
