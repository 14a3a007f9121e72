"""Whether a command would be carried out, without carrying it out on paper where the state says so by itself.

What is offered is asked after every key, and most of it is never in doubt: what only moves loops from the edge to a
needle cannot be refused before the section ends. Where there is doubt, ``decide`` has the word.
"""

from finishing_tui.craft.ledger import OUTSIDE
from finishing_tui.garment.commands import ChoosePace, Command, Finish, Other, Press, Refusal, TakeCount
from finishing_tui.garment.decide import decide
from finishing_tui.garment.events import Pace
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import run_end, to_come
from finishing_tui.garment.work import Progress, StepWork
from finishing_tui.recipe.stage import Stage


def may(state: State, command: Command) -> bool:
    """Return whether ``command`` is carried out, or asked again, and not refused for good."""
    work = state.work
    if _certain(state, work, command):
        return True
    answer = decide(state, command)
    return not isinstance(answer, Refusal) or answer.again is not None


def _certain(state: State, work: StepWork | None, command: Command) -> bool:
    """Return whether nothing can speak against ``command`` for good."""
    match command:
        case ChoosePace():
            return True
        case Finish():  # every doubt about it is asked again
            return work is not None and (work.complete or not work.stages[work.at].takes_all)
        case TakeCount(counted, place=""):  # that all is as it should be
            if work is None or work.complete:
                return False
            return work.stages[work.at].unit == "spot" and work.progress[work.at].mark.loops == counted
        case Press() | Other():
            if work is None or work.complete:
                return False
            stage, progress = work.stages[work.at], work.progress[work.at]
            pace = state.pace if isinstance(command, Press) else "spot"
            return _only_picks_up(stage) and not _may_end(stage, progress, pace)
        case _:
            return False


def _only_picks_up(stage: Stage) -> bool:
    """Return whether the units of a stage enter nothing but loops from outside, of which there are always enough."""
    outside = OUTSIDE.issuperset([flow.source for flow in stage.flows])
    return stage.unit == "spot" and outside and not stage.items and not stage.counts


def _may_end(stage: Stage, progress: Progress, pace: Pace) -> bool:
    """Return whether one press at this pace may be the last of the stage."""
    mark = progress.mark
    if pace == "spot":
        return mark.units + 1 >= stage.units
    if pace == "run":
        return run_end(progress, mark.units + 1) >= stage.units
    return to_come(stage, progress, mark.units) - mark.within <= 2  # a spot takes up to two
