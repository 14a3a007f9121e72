"""Changes one printed number of a recipe by one, in one size, and says what came of it.

It works on the recipe as typed values, so that a whole recipe is tried in a second or two.
"""

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.audit import Inputs, audit, implied
from finishing_tui.recipe.audit.finding import Compared, Where
from finishing_tui.recipe.audit.footing import footing
from finishing_tui.recipe.audit.numbers import misprinted, sums
from finishing_tui.recipe.audit.printing import printed_numbers, value_at, with_value
from finishing_tui.recipe.audit.running import run
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.sums import names_in


@dataclass(frozen=True, slots=True)
class Mutant:
    """A recipe with the number at ``where`` changed by ``by``; ``size``: in this one only, or None for all sizes."""

    recipe: Recipe
    where: Where
    by: int
    size: int | None

    @property
    def name(self) -> str:
        """What was changed, as a person reads it."""
        sizes = "" if self.size is None else f" in size {self.recipe.sizes[self.size]}"
        return f"{'.'.join(str(part) for part in self.where)} {self.by:+d}{sizes}"


def mutants(recipe: Recipe) -> Iterator[Mutant]:
    """Yield the recipe with every printed number one more and one less, one at a time."""
    for where in printed_numbers(recipe):
        value = value_at(recipe, where)
        for by in (1, -1):
            if isinstance(value, tuple):
                for size, count in enumerate(value):
                    if count + by >= 0:
                        entries = (*value[:size], count + by, *value[size + 1 :])
                        yield Mutant(with_value(recipe, where, entries), where, by, size)
            elif value + by >= 0 or value < 0:
                yield Mutant(with_value(recipe, where, value + by), where, by, None)


def findings_in(recipe: Recipe, sizes: tuple[int, ...]) -> frozenset[tuple[str, str, str]]:
    """Return everything found in some sizes, as values that can be compared."""
    return frozenset((one.kind, one.size, one.message) for one in audit(recipe, sizes).findings)


def offs(recipe: Recipe, size: int) -> dict[Any, int] | None:
    """Return how far off every comparison is in one size; None where the numbers cannot be worked out at all.

    The ledger is followed as it is: nothing is put right on the way, so everything that hangs together shows.
    """
    try:
        inputs = Inputs(recipe=recipe, size=size)
        ground = footing(dataclasses.replace(inputs, own=implied(inputs).values))
    except FinishingError:
        return None
    both = (*sums(ground, misprinted(ground)), *run(ground, trust="ledger").compared)
    return {(one.step, one.where, one.about): one.off for one in both if isinstance(one, Compared)}


def summed(recipe: Recipe) -> set[str]:
    """Return the numbers that a printed sum hangs together with: those it names, and itself."""
    printed = {name: number for name, number in recipe.number.items() if number.is_ and number.by_size is not None}
    return {*printed, *(part for number in printed.values() for part in names_in(number.is_))}
