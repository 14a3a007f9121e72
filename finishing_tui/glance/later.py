"""The later numbers that change, and the later steps that cannot go as planned, in lines."""

from collections.abc import Mapping
from typing import TYPE_CHECKING

from finishing_tui.craft.words import plural
from finishing_tui.garment.state import State

if TYPE_CHECKING:
    from finishing_tui.garment.consequences import Consequences
    from finishing_tui.recipe.audit import Finding, Stop

AFFECTS_LATER = "this affects later steps"
"""What stands over such lines."""

MOST_LINES = 5
"""Later numbers that are named one by one; of more, only how many there are."""


def later_lines(found: "Consequences", after: State) -> tuple[str, ...]:
    """Return what ``found`` names, a line each, without full stops: what is wrong first, and numbers after it."""
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
    if found.stop is not None:
        return _stopped(found.stop, texts)
    bare = found.told is not None and not found.told.planned  # what is left live is the heading then
    findings = [one for one in found.findings if not (bare and one.kind == "stitches left")]
    lines = [_found(finding) for finding in findings if _told(finding)]
    lines += [
        f"step {one.step + 1}, {one.title}, has {one.real} on the {texts.get(one.place, one.place)}, not {one.planned}"
        for one in later
    ]
    return (*lines, *(_found(finding, _OWN[_too(finding)]) for finding in found.own if _told(finding)))


_OWN = {
    -1: "the plan's own number is too small: ",
    0: "the plan's own number is wrong: ",
    1: "the plan's own number is too large: ",
}


def _stopped(stop: "Stop", texts: Mapping[str, str]) -> tuple[str, ...]:
    """Name the first step that cannot be done, and how many after it: sums beyond it are of a number nobody has."""
    first = f"step {stop.step + 1}: {stop.why}"
    if stop.place:
        there = "none is" if not stop.there else "1 is" if stop.there == 1 else f"{stop.there} are"
        place = texts.get(stop.place, stop.place)
        first = f"step {stop.step + 1}, {stop.title}, needs {stop.needs} on the {place}; {there} there"
    return (first, f"{plural(stop.after, 'step')} after it won't work as planned") if stop.after else (first,)


def _found(finding: "Finding", of: str = "") -> str:
    return f"{'' if finding.step is None else f'step {finding.step + 1}: '}{of}{finding.message}"


def _told(finding: "Finding") -> bool:
    return finding.level != "implied" and not finding.place  # counts of places are named by themselves


def _too(finding: "Finding") -> int:
    """Return whether what was found is too small (-1) or too large (1) a number; 0 for neither."""
    found, wanted = finding.found, finding.expected
    return (found > wanted) - (found < wanted) if isinstance(found, int) and isinstance(wanted, int) else 0


def cut(lines: tuple[str, ...], most: int = MOST_LINES) -> tuple[str, ...]:
    """Return ``lines``, of more than ``most`` the first ones and how many more there are."""
    if len(lines) <= most:
        return lines
    return (*lines[: most - 1], f"and {len(lines) - most + 1} more")
