"""The plan of one garment: the recipe as it was taken, the size, and what the knitter said of her own garment."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Literal

from finishing_tui.craft.ledger import Ledger
from finishing_tui.recipe.footing import Footing
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.base import Here
from finishing_tui.recipe.model import Recipe, RecipeGauge
from finishing_tui.recipe.numbers import size_index


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
    _footing: list[Footing] = field(default_factory=list, init=False, repr=False, compare=False)  # once worked out

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
        return dict(self.footing.numbers)

    @property
    def footing(self) -> Footing:
        """What the steps stand on: worked out when it is first asked for, since every press asks for it.

        Raises ``NoNumber`` or ``BadSum``.
        """
        if not self._footing:
            self._footing.append(
                Footing.of(self.recipe, self.size_index, own=self.own, gauge=self.gauge, hand=self.hand)
            )
        return self._footing[0]

    def here(self, ledger: Ledger) -> Here:
        """Return what a step may know when it begins with ``ledger``."""
        return self.footing.here(ledger)

    def opening(self) -> Ledger:
        """Return the ledger of the garment as its pieces come off the needles."""
        return self.footing.opening()

    def with_step(self, index: int, step: AnyStep) -> "Plan":
        """Return the plan with the step at ``index`` replaced."""
        steps = (*self.recipe.step[:index], step, *self.recipe.step[index + 1 :])
        return replace(self, recipe=replace(self.recipe, step=steps))
