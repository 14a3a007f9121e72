"""Numbers and places that the recipe names and never uses."""

from collections.abc import Iterator

from finishing_tui.recipe.audit.finding import Finding
from finishing_tui.recipe.audit.printing import places_named, printed_counts
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.sums import names_in


def unused(recipe: Recipe) -> Iterator[Finding]:
    """Yield a warning for each; a printed number with a sum of its own is of use, since the two are compared."""
    named = {name for _, count in printed_counts(recipe) if isinstance(count, str) for name in names_in(count)}
    named |= {name for number in recipe.number.values() if number.is_ for name in names_in(number.is_)}
    for name, number in recipe.number.items():
        if name not in named and not (number.is_ and number.by_size is not None):
            yield _never("number", name, number.text)
    places = places_named(recipe)
    for name, place in recipe.place.items():
        if name not in places:
            yield _never("place", name, place.text)


def _never(what: str, name: str, text: str) -> Finding:
    return Finding(
        level="warning",
        kind="never used",
        message=f"the {what} {name} ({text}) is never used",
        where=(what, name),
        found=name,
        suggestion="use it in a step, or take it out",
    )
