"""Where hands stop by themselves: at the end of a part, and where a count is due."""

from finishing_tui.garment.state import State
from finishing_tui.garment.walk import at_pin, waits_for_count
from finishing_tui.garment.ways import counted_stage
from finishing_tui.garment.work import StepWork
from finishing_tui.recipe.stage import Stage

LONG = 15
"""A section of more stitches than these is counted at its end: no marker is further away from the next."""

JUST_COUNTED = 2
"""Whoever counted so few stitches before the end has counted it."""


def due(state: State) -> int | None:
    """Return what should be counted now, where a section waits for it at halfway or at its end; else None."""
    work = state.work
    if work is None:
        return None
    ended = counted_at_end(work)
    if ended is not None:
        return work.progress[ended].mark.loops
    if work.complete:
        return None
    stage, progress = work.stages[work.at], work.progress[work.at]
    waits = stage.unit == "spot" and waits_for_count(stage, progress, state.pace)
    waits = waits or at_pin(stage, progress)
    return progress.mark.loops if waits else None


def counted_at_end(work: StepWork) -> int | None:
    """Return the index of the section that just ended and waits for its count; None once anything after it was done.

    It is worth one where nobody counted the edge, and where it is long.
    """
    at = work.at
    if not work.complete and work.progress[at].mark.units + work.progress[at].mark.within:
        return None
    index = counted_stage(work)
    return index if index is not None and index < at and not_counted(work, index) else None


def not_counted(work: StepWork, index: int) -> bool:
    """Return whether a section that was walked is worth a count at its end and did not get one."""
    stage, progress = work.stages[index], work.progress[index]
    left = progress.mark.loops - progress.confirmed[0]
    return left > 0 if stage.pinned else worth_it(stage) and left > JUST_COUNTED


def worth_it(stage: Stage) -> bool:
    """Return whether a section that is not pinned is counted at its end; of one that is, the end is a pin too."""
    return stage.uncounted == "spots" or bool(stage.halts and stage.unit == "spot" and stage.target > LONG)


def stops(state: State) -> bool:
    """Return whether a part has just ended, or a count is due: nothing of the next part is done yet."""
    work = state.work
    if work is None or work.complete:
        return True
    mark = work.progress[work.at].mark
    return not (mark.units or mark.within) or due(state) is not None
