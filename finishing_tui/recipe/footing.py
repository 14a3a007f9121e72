"""What the steps of one size stand on, worked out once: its numbers, the gauge, the pieces as they come.

The plan of a garment tells a step at the needles what it may know from this, and the audit tells it on paper.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from types import MappingProxyType
from typing import Any, Self

from finishing_tui.craft.ledger import Ledger, opened
from finishing_tui.craft.wearers import is_childs
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.base import Here
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.model import Recipe, RecipeGauge
from finishing_tui.recipe.natural import band_stitches, gauges, natural_ratios
from finishing_tui.recipe.numbers import NOT_COUNTED, none_in, numbers_for


@dataclass(frozen=True, slots=True, kw_only=True)
class Footing(Here):
    """A recipe in one size, for one hand, before anything is done: what every step of it may know.

    ``live``: the stitches that the places hold at the start; ``wearer``: who will wear it, where that was said.
    """

    recipe: Recipe
    live: Mapping[str, int]
    wearer: str = ""

    @classmethod
    def of(
        cls,
        recipe: Recipe,
        size: int,
        *,
        own: Mapping[str, int],
        gauge: RecipeGauge | None,
        **more: Any,
    ) -> Self:
        """Work out what a size stands on; ``own``: the knitter's numbers, ``gauge``: hers, if any; ``more``: the rest.

        Raises ``NoNumber`` or ``BadSum`` when a number or what a place holds cannot be worked out in this size.
        """
        numbers = MappingProxyType(numbers_for(recipe, size, own))
        live = {name: count_of(place.live, numbers, size) for name, place in recipe.place.items()}
        return cls(
            recipe=recipe,
            size=size,
            numbers=numbers,
            ledger=Ledger(),
            live=MappingProxyType(live),
            none=none_in(recipe, live),
            texts=MappingProxyType({name: place.text for name, place in recipe.place.items()}),
            uncounted=frozenset(name for name, value in own.items() if value == NOT_COUNTED),
            **_of_gauge(gauge or recipe.gauge),
            **more,
        )

    @property
    def size_name(self) -> str:
        """What the size is called."""
        return self.recipe.sizes[self.size]

    def here(self, ledger: Ledger) -> Here:
        """Return what a step may know when it begins with ``ledger``."""
        return replace(self, ledger=ledger)

    def opening(self) -> Ledger:
        """Return the ledger of the pieces as they come off the needles."""
        return opened(self.live, self.recipe.tails)

    def steps(self) -> tuple[int, ...]:
        """Return the positions of the steps that are for this size and wearer, in the recipe's order."""
        size = self.size_name
        return tuple(at for at, step in enumerate(self.recipe.step) if is_for(step, size, self.wearer))


def is_for(step: AnyStep, size: str, wearer: str = "") -> bool:
    """Return whether a step is for this size; checks that all children's sizes have are for any child that wears it."""
    if not step.for_ or size in step.for_:
        return True
    return isinstance(step, Check) and all(map(is_childs, step.for_)) and is_childs(wearer)


@lru_cache(maxsize=64)
def _of_gauge(gauge: RecipeGauge | None) -> Mapping[str, Any]:
    """Return what a ``Here`` knows from a gauge."""
    body, band = gauges(gauge)
    return {"natural": natural_ratios(gauge), "per_10cm": band_stitches(gauge), "body": body, "band": band}
