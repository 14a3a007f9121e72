"""What the steps of one size stand on, worked out once: its numbers, the gauge, the pieces as they come.

The plan of a garment tells a step at the needles what it may know from this, and the audit tells it on paper.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType
from typing import Any, Literal, Self

from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.ledger import Ledger, opened
from finishing_tui.craft.wearers import is_childs
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.base import FAR, Here
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.model import Recipe, RecipeGauge
from finishing_tui.recipe.natural import band_stitches, gauges, natural_ratios
from finishing_tui.recipe.numbers import NOT_COUNTED, none_in, numbers_for


@dataclass(frozen=True, slots=True)
class Footing:
    """A recipe in the size at ``index``, for one hand: its ``numbers``, ``live`` stitches at the start, and the rest.

    The rest is what a ``Here`` needs, under the same names.
    """

    recipe: Recipe
    index: int
    hand: Literal["right", "left"]
    numbers: Mapping[str, int]
    live: Mapping[str, int]
    none: frozenset[str]
    texts: Mapping[str, str]
    natural: Mapping[str, Fraction]
    per_10cm: int | None
    body: Gauge | None
    band: Gauge | None
    uncounted: frozenset[str]
    guess: int
    wearer: str

    @classmethod
    def of(
        cls,
        recipe: Recipe,
        index: int,
        *,
        own: Mapping[str, int],
        gauge: RecipeGauge | None,
        hand: Literal["right", "left"],
        guess: int = FAR,
        wearer: str = "",
        **more: Any,
    ) -> Self:
        """Work out what the size at ``index`` stands on; ``own``: the knitter's numbers, ``gauge``: hers, if any.

        ``wearer``: who will wear it, where that was said.

        Raises ``NoNumber`` or ``BadSum`` when a number or what a place holds cannot be worked out in this size.
        """
        numbers = MappingProxyType(numbers_for(recipe, index, own))
        live = {name: count_of(place.live, numbers, index) for name, place in recipe.place.items()}
        texts = MappingProxyType({name: place.text for name, place in recipe.place.items()})
        natural, per_10cm, body, band = _of_gauge(gauge or recipe.gauge)
        none = none_in(recipe, live)
        uncounted = frozenset(name for name, value in own.items() if value == NOT_COUNTED)
        known = (recipe, index, hand, numbers, MappingProxyType(live), none, texts, natural, per_10cm, body, band)
        return cls(*known, uncounted, guess, wearer, **more)

    @property
    def size(self) -> str:
        """The size's name."""
        return self.recipe.sizes[self.index]

    def here(self, ledger: Ledger) -> Here:
        """Return what a step may know when it begins with ``ledger``."""
        return Here(
            self.index,
            self.numbers,
            ledger,
            self.texts,
            self.natural,
            self.hand,
            self.per_10cm,
            body=self.body,
            band=self.band,
            none=self.none,
            uncounted=self.uncounted,
            guess=self.guess,
        )

    def opening(self) -> Ledger:
        """Return the ledger of the pieces as they come off the needles."""
        return opened(self.live, self.recipe.tails)

    def steps(self) -> tuple[int, ...]:
        """Return the positions of the steps that are for this size and wearer, in the recipe's order."""
        return tuple(at for at, step in enumerate(self.recipe.step) if is_for(step, self.size, self.wearer))


def is_for(step: AnyStep, size: str, wearer: str = "") -> bool:
    """Return whether a step is for this size; checks that all children's sizes have are for any child that wears it."""
    if not step.for_ or size in step.for_:
        return True
    return isinstance(step, Check) and all(map(is_childs, step.for_)) and is_childs(wearer)


@lru_cache(maxsize=64)
def _of_gauge(
    gauge: RecipeGauge | None,
) -> tuple[Mapping[str, Fraction], int | None, Gauge | None, Gauge | None]:
    return natural_ratios(gauge), band_stitches(gauge), *gauges(gauge)
