"""Which numbers of a recipe nobody need count: those that only say how long an edge is."""

from dataclasses import replace

from finishing_tui.recipe.audit.printing import numbers_under
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along, Section
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.sums import names_in


def only_spots(recipe: Recipe) -> frozenset[str]:
    """Return the names of the numbers that only the spots of edges rest on; the edge is then worked at its rate."""
    spots: set[str] = set()
    steps: list[AnyStep] = []
    for step in recipe.step:
        if not isinstance(step, PickUpAndKnit):
            steps.append(step)
            continue
        sections: list[Section] = []
        for section in step.section:
            if isinstance(section, Along) and isinstance(section.spots, str) and not (section.slope or section.length):
                spots.update(names_in(section.spots))
                sections.append(replace(section, spots=None))
            else:
                sections.append(section)
        steps.append(replace(step, section=tuple(sections)))
    rest = replace(recipe, step=tuple(steps))
    sums = {name for number in recipe.number.values() if number.is_ for name in names_in(number.is_)}
    return frozenset(spots & recipe.number.keys() - numbers_under(rest, ()) - sums)
