"""Questions: what must be asked before something can be done, each answered by one line.

An answer that fits none of what was offered does nothing, and the question stands. ``escape`` leaves any of them.
"""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Protocol

from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import Command, Refusal
from finishing_tui.garment.state import State
from finishing_tui.glance.counting import MOST_DIGITS

_WHOLE = re.compile(rf"[0-9]{{1,{MOST_DIGITS}}}")


class Hands(Protocol):
    """What a question may do: look at the state, and try a command."""

    @property
    def state(self) -> State:
        """The state right now."""

    def attempt(self, command: Command) -> Refusal | None:
        """Carry out ``command``, or return why not."""

    def take_back_last(self) -> list[str]:
        """Take back what was done last, and say what that was."""


class Question(Protocol):
    """Something asked. ``free``: any line is the answer, an empty one too."""

    @property
    def free(self) -> bool:
        """Whether any line is an answer."""

    def asks(self) -> list[str]:
        """Return the question in lines; the last of them is what stands before the answer."""

    def hear(self, hands: Hands, line: str) -> "Reply":
        """Return what an answer leads to."""


Reply = tuple[list[str], "Question | None"]
"""Lines to say, and what is asked next; None when nothing is."""


def whole(line: str) -> int | None:
    """Return the whole number a line is, of at most six plain digits; None when it is anything else."""
    return int(line) if _WHOLE.fullmatch(line) else None


@dataclass(frozen=True)
class Choose:
    """One of a few: by its number. ``then`` is called with which, counted from 0."""

    told: Sequence[str]
    question: str
    choices: Sequence[str]
    then: Callable[[Hands, int], Reply]
    free: bool = False

    def asks(self) -> list[str]:
        """Return the choices by number, and the question."""
        numbered = [f"{number}: {sentence(text)}" for number, text in enumerate(self.choices, 1)]
        to = f"1 to {len(self.choices)}" if len(self.choices) > 1 else "1"
        return [*self.told, *numbered, f"{self.question} Type {to}, or escape."]

    def hear(self, hands: Hands, line: str) -> Reply:
        """Take the number of a choice."""
        number = whole(line)
        if number is None or not 1 <= number <= len(self.choices):
            return ["That is none of the choices. Nothing was done."], self
        return self.then(hands, number - 1)


@dataclass(frozen=True)
class YesOrNo:
    """Yes does it, no leaves it."""

    told: Sequence[str]
    then: Callable[[Hands], Reply]
    free: bool = False

    def asks(self) -> list[str]:
        """Return the question."""
        return [*self.told, "Type yes or no."]

    def hear(self, hands: Hands, line: str) -> Reply:
        """Take yes or no, written out."""
        word = line.casefold()
        if word == "no":
            return ["Left as it is."], None
        return self.then(hands) if word == "yes" else (["Yes or no is asked. Nothing was done."], self)


@dataclass(frozen=True)
class Number:
    """A whole number is asked. ``same``: what the words "as planned" stand for, where they may be typed."""

    question: str
    then: Callable[[Hands, int], Reply]
    same: int | None = None
    free: bool = False

    def asks(self) -> list[str]:
        """Return the question."""
        return [f"{self.question} Type the number, or escape."]

    def hear(self, hands: Hands, line: str) -> Reply:
        """Take the number."""
        number = self.same if line.casefold() == "as planned" else whole(line)
        if number is None:
            return [f"A whole number of at most {MOST_DIGITS} digits is asked. Nothing was done."], self
        return self.then(hands, number)


@dataclass(frozen=True)
class Text:
    """A line of text is asked."""

    question: str
    then: Callable[[Hands, str], Reply]
    free: bool = True

    def asks(self) -> list[str]:
        """Return the question."""
        return [self.question]

    def hear(self, hands: Hands, line: str) -> Reply:
        """Take the line, whatever it is."""
        return self.then(hands, line)
