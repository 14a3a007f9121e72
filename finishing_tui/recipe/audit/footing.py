"""What the audit of one size stands on, worked out once: its numbers, the gauge, the pieces as they come.

It is given a recipe and never reads one. What ``garment.plan`` tells a step at the needles, this tells it on paper.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType
from typing import Literal

from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.ledger import Ledger, opened
from finishing_tui.recipe.audit.tally import Tally
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.kinds.base import Here
from finishing_tui.recipe.model import Recipe, RecipeGauge
from finishing_tui.recipe.natural import band_stitches, gauges, natural_ratios
from finishing_tui.recipe.numbers import none_in, numbers_for


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """What is audited: a recipe in one size, with the knitter's own numbers, gauge and hand where there is a knitter.

    ``size`` is the size's position, from 0. ``own`` must also hold the numbers that are not printed
    (``audit.implied`` finds them out). ``tally``: what is counted against the most that one audit may take.
    """

    recipe: Recipe
    size: int
    own: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    gauge: RecipeGauge | None = None
    hand: Literal["right", "left"] = "right"
    tally: Tally = field(default_factory=Tally, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Footing:
    """The same, worked out: ``numbers`` of this size, ``live`` stitches at the start, and all that a ``Here`` needs."""

    inputs: Inputs
    numbers: Mapping[str, int]
    live: Mapping[str, int]
    none: frozenset[str]
    texts: Mapping[str, str]
    natural: Mapping[str, Fraction]
    per_10cm: int | None
    body: Gauge | None
    band: Gauge | None

    @property
    def recipe(self) -> Recipe:
        """The recipe."""
        return self.inputs.recipe

    @property
    def size(self) -> str:
        """The size's name."""
        return self.inputs.recipe.sizes[self.inputs.size]

    def here(self, ledger: Ledger) -> Here:
        """Return what a step may know when it begins with ``ledger``."""
        return Here(
            self.inputs.size,
            self.numbers,
            ledger,
            self.texts,
            self.natural,
            self.inputs.hand,
            self.per_10cm,
            body=self.body,
            band=self.band,
            none=self.none,
        )

    def opening(self) -> Ledger:
        """Return the ledger of the pieces as they come off the needles."""
        return opened(self.live, self.recipe.tails)

    def steps(self) -> tuple[int, ...]:
        """Return the positions of the steps that are for this size, in the recipe's order."""
        size = self.size
        return tuple(at for at, step in enumerate(self.recipe.step) if not step.for_ or size in step.for_)


def footing(inputs: Inputs) -> Footing:
    """Work out what the audit of one size stands on.

    Raises ``NoNumber`` or ``BadSum`` when a number or what a place holds cannot be worked out in this size, ``TooMuch``
    when the audit takes more than it may.
    """
    recipe, size = inputs.recipe, inputs.size
    inputs.tally.numbers(len(recipe.number) + len(recipe.place))
    numbers = MappingProxyType(numbers_for(recipe, size, inputs.own))
    live = {name: count_of(place.live, numbers, size) for name, place in recipe.place.items()}
    gauge = inputs.gauge or recipe.gauge
    return Footing(
        inputs,
        numbers,
        MappingProxyType(live),
        none_in(recipe, live),
        MappingProxyType({name: place.text for name, place in recipe.place.items()}),
        _natural(gauge),
        _per_10cm(gauge),
        *_gauges(gauge),
    )


_natural = lru_cache(maxsize=64)(natural_ratios)
_per_10cm = lru_cache(maxsize=64)(band_stitches)
_gauges = lru_cache(maxsize=64)(gauges)
