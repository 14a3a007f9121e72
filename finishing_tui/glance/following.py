"""What a count changes further on, and what may be done about it, in words."""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.garment.consequences import consequences, given_up
from finishing_tui.garment.explained import explained
from finishing_tui.garment.repairs import Mend
from finishing_tui.garment.state import State
from finishing_tui.glance.later import cut, later_lines

SLIP, FAR = 2, Fraction(1, 10)
"""A count that is off by more than both, stitches and a share of what was known, is more likely a slip of the count.

Along an edge that was asked already.
"""


@dataclass(frozen=True, slots=True)
class Following:
    """What a count changes, or a step that is finished or left out although there was more to do.

    ``lines`` name the later numbers and the steps that cannot go as planned; ``ways`` are the repairs, the last to
    carry on; ``undo``: what to take back first of all, in words, where that is the most sensible.
    """

    lines: tuple[str, ...]
    ways: tuple[Mend, ...]
    undo: str = ""


def following(before: State, after: State) -> Following | None:
    """Return what going from ``before`` to ``after`` changes further on; None when it changes nothing."""
    if after.plan != before.plan:  # the count came with its repair: what it changes is put right already
        return None
    found = consequences(before, after)
    if not found.changes and not found.findings:
        return None
    lines, ended = later_lines(found, after), given_up(before, after)
    if ended:
        ways = tuple(one for one in found.mends if one.command.how != "here")
        return Following(cut(lines), ways, undo=f"take it back: step {ended[0] + 1} is worked on") if lines else None
    undo = ""
    if found.changes:
        place = found.changes[0].place
        off = after.ledger.on(place) - before.ledger.on(place)
        lines = (*explained(after, off), *lines)
        if not lines:  # nothing after this is another number than it is now
            name = after.plan.here(after.ledger).name(place)
            lines = (f"{name}: {after.ledger.on(place)}, not {found.changes[0].planned}",)
        if abs(off) > SLIP and abs(off) > FAR * before.ledger.on(place) and not _walking(after):
            undo = "take it back, and count once more"
    # In the middle of an edge no hand makes a stitch or works two together: the section itself is spaced anew.
    walking = _walking(after)
    return Following(cut(lines), tuple(one for one in found.mends if one.command.how != "here" or not walking), undo)


def _walking(state: State) -> bool:
    work = state.standing.work if state.standing else None
    return work is not None and not work.complete and any(stage.unit == "spot" for stage in work.stages)
