"""Where the plan says that everything should be by now, had nothing gone another way: to lay the real ledger beside it.

It plans every step anew from the pieces as they came off the needles, so it is asked for only when a person looks.
"""

from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Ledger
from finishing_tui.garment.decide.stages import entered
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Progress, Reached, StepWork, fresh
from finishing_tui.recipe.stage import Stage, whole


def supposed(state: State) -> Ledger | None:
    """Return the ledger the plan has at this point; None where that cannot be told.

    It is what the steps that are done leave as they are planned, and of the one under the needles what its presses
    would have entered by the plan. It cannot be told while two steps are under way by turns, nor when the plan cannot
    be worked as it stands.
    """
    under_way = [index for index, one in enumerate(state.steps) if one.status == "under-way"]
    if any(index != state.current for index in under_way):
        return None
    done = [index for index, one in enumerate(state.steps) if one.status == "done" and state.plan.is_for(index)]
    try:
        ledger = state.plan.opening()
        for index in done:
            for stage in state.plan.step(index).stages(state.plan.here(ledger)):
                ledger = ledger.enter(*whole(stage))
        work = state.work
        if state.current is None or work is None:
            return ledger
        stages = state.plan.step(state.current).stages(state.plan.here(ledger))
        if len(stages) != len(work.stages):
            return None
        progress = tuple(map(_so_far, stages, work.progress))
        return ledger.enter(*entered(StepWork(stages, progress, ledger)))
    except FinishingError:
        return None


def _so_far(stage: Stage, real: Progress) -> Progress:
    """Return how the planned stage stands after as many units as were really done."""
    units = min(real.mark.units, stage.units)
    loops = stage.rhythm.up_to(units) if stage.rhythm is not None else units
    return replace(fresh(stage), mark=Reached(units, 0, loops))
