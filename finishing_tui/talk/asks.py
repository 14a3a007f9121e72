"""What may be asked of the knitter, as values: one class a shape of question, whatever it is about.

Each says what is asked and holds what an answer leads to (``then``): the next ask, the same one where the answer cannot
be taken, or None when the conversation goes back to the needles. Leaving an ask leads to what ``left`` gives, going one
back in it to what ``back`` gives, where there is something to go back to.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from finishing_tui.garment.commands import WhatIf
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.answers import Answers
from finishing_tui.glance.spoken import spoken_answers
from finishing_tui.glance.what_if import Asked, WhatIfView
from finishing_tui.recipe.techniques import Technique

if TYPE_CHECKING:
    from finishing_tui.glance.numbers import NumberLine  # it needs the audit, which few asks do


def _to_the_needles() -> None:
    """Nothing more is asked."""


@dataclass(frozen=True, eq=False, kw_only=True)
class Ask:
    """What every ask has. ``told``: what it is about, a sentence or line each; ``spoken``: instead of the question.

    ``unasked``: it comes by itself, perhaps under hands that are typing a count.
    """

    question: str
    told: tuple[str, ...] = ()
    spoken: str = ""
    unasked: bool = False
    left: Callable[[], "Ask | None"] = _to_the_needles
    back: Callable[[], "Ask | None"] | None = None


@dataclass(frozen=True, slots=True)
class Option:
    """One answer of a few, in a few words; ``aside``: what follows from it."""

    text: str
    aside: str = ""


@dataclass(frozen=True, eq=False, kw_only=True)
class Choose(Ask):
    """One of a few."""

    options: tuple[Option, ...]
    then: Callable[[int], Ask | None]


@dataclass(frozen=True, eq=False, kw_only=True)
class Explain(Choose):
    """What a count that differs is put down to: ``counted`` is not what was ``expected``."""

    counted: int
    expected: int


@dataclass(frozen=True, eq=False, kw_only=True)
class Pick(Choose):
    """One of a list that may be long, as the places that work can be taken out to."""


@dataclass(frozen=True, eq=False, kw_only=True)
class HowMany(Ask):
    """A whole number. ``unit``: of what, in a word; ``same``: the number that taking it untyped stands for, if any.

    ``idle``: the word that stands large beside it; ``aside``: what is said of ``same``; ``most``: the
    largest there is, where that is known; ``missing``: what is said where something must be typed; ``takes``: what
    taking a number does, in a word or two; ``on_edge``: it is about the edge under way, so that is to be seen with it.
    """

    unit: str
    then: Callable[[int], Ask | None]
    same: int | None = None
    idle: str = ""
    aside: str = ""
    most: int | None = None
    missing: str = ""
    takes: str = "it's {}"
    on_edge: bool = False


@dataclass(frozen=True, eq=False, kw_only=True)
class WriteLine(Ask):
    """A line of text. ``hint``: what it is for; ``keep`` and ``leave``: what those two do; ``empty`` it may be."""

    hint: str
    keep: str
    leave: str
    then: Callable[[str], Ask | None]
    empty: bool = False


@dataclass(frozen=True, eq=False, kw_only=True)
class Weigh(Ask):
    """Ways to go on, side by side; the answer is which. ``title``: what they are about, in a few words."""

    title: str
    answers: Answers
    then: Callable[[int], Ask | None]


def weigh(
    title: str,
    answers: Answers,
    then: Callable[[int], Ask | None],
    told: tuple[str, ...] = (),
    back: Callable[[], Ask | None] | None = None,
    *,
    unasked: bool = False,
) -> Weigh:
    """Return the question which of ``answers`` to take: its heading is the difference, never how one of them lies."""
    question = f"{answers.heading[:1].upper()}{answers.heading[1:]}: {answers.said}"
    return Weigh(
        question=question,
        told=told,
        spoken=spoken_answers(answers),
        title=title,
        answers=answers,
        then=then,
        back=back,
        unasked=unasked,
    )


@dataclass(frozen=True, eq=False, kw_only=True)
class WeighPlans(Ask):
    """The plan there is beside another one: ``view`` looks at what is typed, and the answer is such a view.

    ``typed``: digits that were typed already. ``view`` raises ``FinishingError`` with a sentence.
    """

    asked: Asked
    typed: str
    view: Callable[[WhatIf], WhatIfView]
    then: Callable[[WhatIfView], Ask | None]


@dataclass(frozen=True, eq=False, kw_only=True)
class SetNumber(Ask):
    """The numbers of a garment, of which one is changed: the answer is its line and its value.

    None for a value gives the knitter's own up again. ``at``: the name of the one to begin with.
    """

    lines: "tuple[NumberLine, ...]"
    at: str
    then: "Callable[[NumberLine, int | None], Ask | None]"


@dataclass(frozen=True, eq=False, kw_only=True)
class WorkOut(Ask):
    """Nothing is asked: ``find`` takes a while, and what it returned, or the error it raised, is the answer."""

    find: Callable[[], Any]
    then: Callable[[Any], Ask | None]


@dataclass(frozen=True, eq=False, kw_only=True)
class ReadHelp(Ask):
    """All keys, and how the step in the middle is done."""


@dataclass(frozen=True, eq=False, kw_only=True)
class ReadTechniques(Ask):
    """The techniques that help at a step, best first, and all the ``others``."""

    helping: tuple[Technique, ...]
    others: tuple[Technique, ...]
    left_handed: bool


@dataclass(frozen=True, eq=False, kw_only=True)
class ReadLedger(Ask):
    """Where everything of the garment in ``hand`` is, and what was entered last."""

    hand: InHand


@dataclass(frozen=True, eq=False, kw_only=True)
class FindAction(Ask):
    """Everything that can be done now; whoever finds it there asks for it as by its own key."""


Read = ReadHelp | ReadTechniques | ReadLedger | FindAction
"""A page: it is only read, and left."""
