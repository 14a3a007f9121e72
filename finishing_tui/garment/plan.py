"""The plan of one garment: the recipe as it was taken, the size, and what the knitter said of her own garment."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Literal

from finishing_tui.craft.ledger import Ledger, opened
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.base import Here
from finishing_tui.recipe.model import Recipe, RecipeGauge
from finishing_tui.recipe.natural import band_stitches, gauges, natural_ratios
from finishing_tui.recipe.numbers import none_in, numbers_for, size_index


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """What is to be done to one garment.

    ``name``: the garment's id; ``source`` and ``text``: where the recipe came from and its very
    text, ``file_text`` that of the garment's own file; ``size``: the
    size's name; ``own``: the knitter's own numbers; ``gauge``: her own gauge, if it is not the recipe's.
    """

    name: str
    title: str
    recipe: Recipe
    source: str
    text: str
    file_text: str = ""
    size: str
    own: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))
    gauge: RecipeGauge | None = None
    hand: Literal["right", "left"] = "right"
    yarn: str = ""
    needles: str = ""
    notes: str = ""

    @property
    def size_index(self) -> int:
        """The position of the size among the recipe's."""
        return size_index(self.recipe, self.size)

    def step(self, index: int) -> AnyStep:
        """Return the step at ``index``, counted from 0."""
        return self.recipe.step[index]

    def is_for(self, index: int) -> bool:
        """Return whether the step at ``index`` is for this size."""
        wanted = self.recipe.step[index].for_
        return not wanted or self.size in wanted

    def numbers(self) -> dict[str, int]:
        """Return every number for this size, the knitter's own among them."""
        return numbers_for(self.recipe, self.size_index, self.own)

    def here(self, ledger: Ledger) -> Here:
        """Return what a step may know when it begins with ``ledger``."""
        numbers = self.numbers()
        body, band = gauges(self.gauge or self.recipe.gauge)
        return Here(
            self.size_index,
            MappingProxyType(numbers),
            ledger,
            MappingProxyType({name: place.text for name, place in self.recipe.place.items()}),
            natural_ratios(self.gauge or self.recipe.gauge),
            self.hand,
            band_stitches(self.gauge or self.recipe.gauge),
            body=body,
            band=band,
            none=none_in(self.recipe, self._live(numbers)),
        )

    def opening(self) -> Ledger:
        """Return the ledger of the garment as its pieces come off the needles."""
        return opened(self._live(self.numbers()), self.recipe.tails)

    def _live(self, numbers: Mapping[str, int]) -> dict[str, int]:
        places = self.recipe.place.items()
        return {name: count_of(place.live, numbers, self.size_index) for name, place in places}

    def with_step(self, index: int, step: AnyStep) -> "Plan":
        """Return the plan with the step at ``index`` replaced."""
        steps = (*self.recipe.step[:index], step, *self.recipe.step[index + 1 :])
        return replace(self, recipe=replace(self.recipe, step=steps))
