"""Where hands stop by themselves: at the end of a part, and where a count is due."""

from finishing_tui.garment.state import State
from finishing_tui.garment.walk import at_pin, waits_for_count


def due(state: State) -> int | None:
    """Return what should be counted now, where a section waits for its count at halfway; None where none does."""
    work = state.work
    if work is None or work.complete:
        return None
    stage, progress = work.stages[work.at], work.progress[work.at]
    waits = stage.unit == "spot" and waits_for_count(stage, progress, state.pace)
    waits = waits or at_pin(stage, progress.mark.units, progress.confirmed[0])
    return progress.mark.loops if waits else None


def stops(state: State) -> bool:
    """Return whether a part has just ended, or a count is due: nothing of the next part is done yet."""
    work = state.work
    if work is None or work.complete:
        return True
    mark = work.progress[work.at].mark
    return not (mark.units or mark.within) or due(state) is not None
