"""Finding the size that a garment was knitted in, from the stitches its pieces hold, when it was never written down."""

from collections.abc import Mapping
from dataclasses import dataclass

from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.numbers import numbers_for


@dataclass(frozen=True, slots=True)
class SizeFit:
    """How a size fits what is held: ``off`` are the places that differ, with (held, what the recipe has)."""

    size: str
    off: Mapping[str, tuple[int, int]]

    @property
    def far(self) -> int:
        """By how many stitches it differs in all."""
        return sum(abs(held - wanted) for held, wanted in self.off.values())


def which_size(recipe: Recipe, held: Mapping[str, int]) -> tuple[SizeFit, ...]:
    """Return how every size fits the counts ``held`` by place, nearest first, equally near ones as in the recipe.

    A size whose numbers cannot be worked out is left out. Raises ``FinishingError`` for a place the recipe has not.
    """
    for place in held:
        if place not in recipe.place:
            raise FinishingError(f"the recipe has no place {place!r}; its places are {', '.join(recipe.place)}")
    fits = []
    for index, size in enumerate(recipe.sizes):
        try:
            numbers = numbers_for(recipe, index)
            wanted = {place: count_of(recipe.place[place].live, numbers, index) for place in held}
        except FinishingError:
            continue
        off = {place: (held[place], wanted[place]) for place in held if held[place] != wanted[place]}
        fits.append(SizeFit(size, off))
    return tuple(sorted(fits, key=lambda fit: (fit.far, len(fit.off))))
