"""When the bell rings after something was done, so that eyes can stay on the needles."""

from typing import Literal

from finishing_tui.garment.state import State
from finishing_tui.garment.walk import planned, run_end
from finishing_tui.garment.work import Progress, StepWork
from finishing_tui.recipe.stage import Stage

Ring = Literal["run", "recount", "target"]
"""At the end of a run, when a recount is due, and when a part of a step, or a list of ticks, is complete."""


def ring(before: State, after: State) -> Ring | None:
    """Return what the bell rings for between two states, if it does."""
    was, now = _work(before), _work(after)
    if was is not None and was.complete and was.ticks and before.current != after.current:
        return "target"
    if was is None or now is None or before.current != after.current or was.complete:
        return None
    index = was.at
    if index >= len(now.stages) or now.at < index:
        return None
    if now.at > index:
        return "target"
    stage, progress = now.stages[index], now.progress[index]
    old = was.progress[index]
    if stage.pinned and old.mark.units < progress.mark.units in stage.halts:
        return "recount"
    if stage.unit != "spot" or progress.mark.units <= old.mark.units:
        return None
    if any(old.mark.units < halt <= progress.mark.units for halt in stage.halts):
        return "recount"
    return "run" if _at_the_end_of_a_run(stage, progress) and not _at_the_end_of_a_run(stage, old) else None


def _at_the_end_of_a_run(stage: Stage, progress: Progress) -> bool:
    """Return whether only skips are left of the run the mark is in; a run of one spot has no end worth hearing."""
    at = progress.mark.units
    if not 0 < at < stage.units:
        return False
    end = run_end(progress, at)
    long = at > 1 and run_end(progress, at - 1) == end
    return long and not any(planned(progress, spot) for spot in range(at + 1, end + 1))


def _work(state: State) -> StepWork | None:
    return state.work
