"""The later numbers that change, and the later steps that cannot go as planned, in lines."""

from typing import TYPE_CHECKING

from finishing_tui.garment.state import State

if TYPE_CHECKING:
    from finishing_tui.garment.consequences import Consequences

AFFECTS_LATER = "this affects later steps"
"""What stands over such lines."""

MOST_LINES = 5
"""Later numbers that are named one by one; of more, only how many there are."""


def later_lines(found: "Consequences", after: State) -> tuple[str, ...]:
    """Return what ``found`` names, a line each, without full stops."""
    seen: dict[str, tuple[int, int]] = {}
    later = []
    for change in found.changes:
        # A number that goes on differing is named once, and what was counted just now not at all.
        differs = (change.planned, change.real)
        if seen.get(change.place) != differs and (
            change.step != after.current or change.real != after.ledger.on(change.place)
        ):
            later.append(change)
        seen[change.place] = differs
    texts = {name: place.text for name, place in after.plan.recipe.place.items()}
    lines = [
        f"step {one.step + 1}, {one.title}: {texts.get(one.place, one.place)} {one.real}, not {one.planned}"
        for one in later
    ]
    lines += [
        finding.message if finding.step is None else f"step {finding.step + 1}: {finding.message}"
        for finding in found.findings
        if finding.level != "implied" and not finding.place  # counts of places are named above
    ]
    return tuple(lines)


def cut(lines: tuple[str, ...], most: int = MOST_LINES) -> tuple[str, ...]:
    """Return ``lines``, of more than ``most`` the first ones and how many more there are."""
    if len(lines) <= most:
        return lines
    return (*lines[: most - 1], f"and {len(lines) - most + 1} more numbers after these")
