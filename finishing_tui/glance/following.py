"""What a count changes further on, and what may be done about it, in words."""

from dataclasses import dataclass

from finishing_tui.garment.consequences import Mend, consequences
from finishing_tui.garment.explained import explained
from finishing_tui.garment.state import State
from finishing_tui.glance.later import cut, later_lines


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
    lines = later_lines(found, after)
    if found.changes:
        place = found.changes[0].place
        lines = (*explained(after, after.ledger.on(place) - before.ledger.on(place)), *lines)
    # In the middle of an edge no hand makes a stitch or works two together: the section itself is spaced anew.
    walking = _walking(after)
    return Following(cut(lines), tuple(one for one in found.mends if one.command.how != "here" or not walking))


def _walking(state: State) -> bool:
    work = state.standing.work if state.standing else None
    return work is not None and not work.complete and any(stage.unit == "spot" for stage in work.stages)
