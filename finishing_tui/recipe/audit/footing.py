"""What the audit of one size stands on, and what it may take. It is given a recipe and never reads one."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Literal

from finishing_tui.recipe.audit.tally import Tally
from finishing_tui.recipe.footing import Footing
from finishing_tui.recipe.model import Recipe, RecipeGauge

GUESSES = (601, 907)
"""Spots that an edge of which nothing is known is taken to have: enough for whatever a pattern takes from it.

Nothing is said that is not so with both of them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What is audited: a recipe in one size, with the knitter's own numbers, gauge and hand where there is a knitter.

    ``size`` is the size's position, from 0. ``own`` must also hold the numbers that are not printed
    (``audit.implied`` finds them out). ``guess``: the spots of an edge of which nothing is known. ``wearer``: who
    will wear it, where the knitter said so. ``tally``: what is counted against the most that one audit may take.
    """

    recipe: Recipe
    size: int
    own: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    gauge: RecipeGauge | None = None
    hand: Literal["right", "left"] = "right"
    guess: int = GUESSES[0]
    wearer: str = ""
    tally: Tally = field(default_factory=Tally, compare=False, repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class AuditFooting(Footing):
    """What one size stands on, with the ``tally`` of its audit."""

    tally: Tally


def footing(inputs: Inputs) -> AuditFooting:
    """Work out what the audit of one size stands on.

    Raises ``NoNumber`` or ``BadSum`` when a number or what a place holds cannot be worked out in this size, ``TooMuch``
    when the audit takes more than it may.
    """
    recipe, tally = inputs.recipe, inputs.tally
    tally.numbers(len(recipe.number) + len(recipe.place))
    return AuditFooting.of(
        recipe,
        inputs.size,
        own=inputs.own,
        gauge=inputs.gauge,
        hand=inputs.hand,
        guess=inputs.guess,
        wearer=inputs.wearer,
        tally=tally,
    )
