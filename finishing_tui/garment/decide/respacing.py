"""Picking more or fewer stitches in a step to come, so that a band still comes to what was planned."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.kinds.base import Here
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along
from finishing_tui.recipe.sums import MOST


@dataclass(frozen=True, slots=True)
class Respaced:
    """One section that is picked with another number of stitches."""

    title: str
    now: int
    was: int


def sections_words(sections: Iterable[Respaced]) -> str:
    """Return what is picked in each section, and was to be."""
    return ", ".join(f"{one.title} {one.now} instead of {one.was}" for one in sections)


def respaced(step: PickUpAndKnit, lacks: int, here: Here) -> tuple[PickUpAndKnit, tuple[Respaced, ...]] | None:
    """Return ``step`` with ``lacks`` stitches more (or, negative, fewer) picked, and the sections they are picked in.

    They go to the longest section that no other mirrors; to both of a mirrored pair where they can be halved. None
    where no section can take them.
    """
    numbers, size = here.numbers, here.size
    paired = {one.mirrors for one in step.section if isinstance(one, Along) and one.mirrors}
    counts = {
        at: (one, MOST if one.uncounted(here) else 0 if one.spots is None else count_of(one.spots, numbers, size))
        for at, one in enumerate(step.section)
        if isinstance(one, Along) and (one.stitches is not None or not one.uncounted(here))
    }
    single = [at for at, (one, _) in counts.items() if not one.mirrors and one.along not in paired]
    both = [at for at, (one, _) in counts.items() if one.mirrors or one.along in paired]
    chosen = (
        [max(single, key=lambda at: counts[at][1])] if single else both if len(both) == 2 and lacks % 2 == 0 else []
    )
    if not chosen:
        return None
    each, sections, found = lacks // len(chosen), list(step.section), list[Respaced]()
    for at in chosen:
        one, spots = counts[at]
        was = one.wanted(here, spots)
        if not 1 <= was + each <= 2 * spots:
            return None
        sections[at] = replace(one, stitches=was + each)
        found.append(Respaced(one.along, was + each, was))
    return replace(step, section=tuple(sections)), tuple(found)
