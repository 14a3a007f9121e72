"""A recipe with one printed number off, and which of the audit's corrections is the right one."""

from collections.abc import Iterator
from dataclasses import dataclass

from finishing_tui.recipe.audit import Finding, audit
from finishing_tui.recipe.audit.auditing import errors_in
from finishing_tui.recipe.audit.corrections import Corrections
from finishing_tui.recipe.audit.finding import Correction
from finishing_tui.recipe.audit.printing import printed_numbers, value_at, with_value
from finishing_tui.recipe.audit.tally import Tally
from finishing_tui.recipe.model import Recipe
from tests.recipe.audit.mutation import Mutant

BY = (1, -1, 10, -10)
"""How far off a number is printed, each in its turn."""


@dataclass(frozen=True, slots=True)
class Corrected:
    """The first error of a misprint, what is said to correct it, and the ``rank`` of the right one; None: it is not."""

    mutant: Mutant
    error: Finding
    found: tuple[Correction, ...]
    rank: int | None


def misprints(recipe: Recipe) -> Iterator[Mutant]:
    """Yield the recipe with every number that is printed by size off by 1 and by 10, in one size at a time."""
    for where in printed_numbers(recipe):
        value = value_at(recipe, where)
        if isinstance(value, tuple):
            for size, count in enumerate(value):
                for by in BY:
                    if count + by >= 0:
                        changed = (*value[:size], count + by, *value[size + 1 :])
                        yield Mutant(with_value(recipe, where, changed), where, by, size)


def corrected(mutant: Mutant) -> Corrected | None:
    """Return how a misprint is corrected; nothing where no error comes of it in its size."""
    assert mutant.size is not None
    errors = errors_in(mutant.recipe, (mutant.size,), Tally())
    if not errors:
        return None
    found = tuple(Corrections(mutant.recipe, errors_in, Tally()).of(errors[0], mutant.size, errors))
    right = value_at(mutant.recipe, mutant.where)[mutant.size] - mutant.by
    ranks = (at for at, one in enumerate(found) if one.wheres == (mutant.where,) and one.now == right)
    return Corrected(mutant, errors[0], found, next(ranks, None))


def errors_after(recipe: Recipe, one: Correction) -> list[Finding]:
    """Return the errors of a recipe in all sizes with a correction made."""
    for where in one.wheres:
        value = value_at(recipe, where)
        now = one.now if one.size is None else (*value[: one.size], one.now, *value[one.size + 1 :])
        recipe = with_value(recipe, where, now)
    return [finding for finding in audit(recipe).findings if finding.level == "error"]
