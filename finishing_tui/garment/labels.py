"""What an act was, as it is stored for ever: an id with what fills its words. The words are in ``glance.label_words``.

A step is named by its id, so that a label goes on to mean the same step when another is inserted before it.
"""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.rhythm import Rhythm
from finishing_tui.garment.plan import StepId
from finishing_tui.recipe.sums import MOST

AgainstPlan = Literal["skipped", "picked", "picked-once", "doubled"]
"""What was done at a spot otherwise than planned."""

Deed = (
    AgainstPlan
    | Literal[
        "step-begun",
        "step-ended",
        "step-taken-up",
        "step-left-out",
        "step-inserted",
        "done-elsewhere",
        "whole-lot",
        "many-of-lot",
        "measured",
        "recounted",
        "place-counted",
        "two-together",
        "two-at-once",
        "other-tail",
        "stitches-made",
        "stitches-worked-off",
        "kept-as-it-is",
        "re-spaced",
        "first-round-changed",
        "mirrored-as-worked",
        "mirrored-as-planned",
        "edge-pinned",
        "plan-altered",
        "plan-taken",
        "ripped-to-start",
        "ripped-to-spot",
        "ripped-to-unit",
    ]
)
"""Something that can be taken back."""

RippedTo = Literal["start", "spot", "unit"]
"""Where work was ripped back to: the start of a stage, a spot of an edge, or so many units of any other stage."""

Reason = Literal[
    "recount-to-first-round",
    "to-first-round",
    "sections-re-spaced",
    "section-altered",
    "rounds-altered",
    "number-first-given",
    "number-changed",
    "number-not-counted",
    "files-changed",
]
"""Why a plan is another one."""

EndDoubt = Literal["nothing-typed", "unfinished", "unexpected-count", "no-whole-repeat", "no-whole-repeat-and"]
"""What speaks against a step being done."""

Said = Deed | RippedTo | Reason | EndDoubt | Literal["as-said"]
"""What a label can say; ``as-said`` is a text that was stored in words, or quotes a sentence."""


MOST_FILLS = 8
"""Names, numbers or rhythms that a label has at most: ours have four."""


@dataclass(frozen=True, slots=True)
class Label:
    """An id (``what``) and what fills its words, in the order in which they come.

    ``steps``: steps that are named; ``names``: what the recipe or the knitter calls things, such as a section, a place
    or a unit; ``numbers``: counts and where they were; ``rhythms``: how a section is picked.
    """

    what: Said
    steps: tuple[StepId, ...] = ()
    names: tuple[str, ...] = ()
    numbers: tuple[int, ...] = ()
    rhythms: tuple[Rhythm, ...] = ()

    def __post_init__(self) -> None:
        """Raise ``ValueError`` for more than is ever said, and an edge longer than any there is: nobody wrote that."""
        if any(len(fills) > MOST_FILLS for fills in (self.names, self.numbers, self.rhythms)):
            raise ValueError("there is more in it than is ever said")
        if any(rhythm.spots > MOST for rhythm in self.rhythms):
            raise ValueError("an edge is longer than any there is")


def as_said(text: str) -> Label:
    """Return the label that says ``text`` and nothing else."""
    return Label("as-said", names=(text,))
