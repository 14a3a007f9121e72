"""What a count changes further on, and what may be done about it, in words."""

from dataclasses import dataclass

from finishing_tui.garment.consequences import Mend, consequences
from finishing_tui.garment.explained import explained
from finishing_tui.garment.state import State

MOST_LINES = 5
"""Later numbers that are named one by one; of more, only how many there are."""


@dataclass(frozen=True, slots=True)
class Following:
    """What a count changes: ``lines`` name the later numbers; ``ways`` are the repairs, the last to carry on."""

    lines: tuple[str, ...]
    ways: tuple[Mend, ...]


def following(before: State, after: State) -> Following | None:
    """Return what going from ``before`` to ``after`` changes further on; None when it changes nothing."""
    if after.plan != before.plan:  # the count came with its repair: what it changes is put right already
        return None
    found = consequences(before, after)
    if not found.changes and not found.findings:
        return None
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
    if found.changes:
        place = found.changes[0].place
        lines = [*explained(after, after.ledger.on(place) - before.ledger.on(place)), *lines]
    if len(lines) > MOST_LINES:
        lines = [*lines[: MOST_LINES - 1], f"and {len(lines) - MOST_LINES + 1} more numbers after these"]
    # In the middle of an edge no hand makes a stitch or works two together: the section itself is spaced anew.
    walking = _walking(after)
    return Following(tuple(lines), tuple(one for one in found.mends if one.command.how != "here" or not walking))


def _walking(state: State) -> bool:
    work = state.standing.work if state.standing else None
    return work is not None and not work.complete and any(stage.unit == "spot" for stage in work.stages)
