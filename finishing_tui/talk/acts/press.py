"""The next thing is counted, or ticked off."""

from finishing_tui.craft.words import plural
from finishing_tui.garment.commands import Press
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import counted_at_end
from finishing_tui.garment.walk import next_pick, planned
from finishing_tui.garment.work import Progress
from finishing_tui.glance.stored_words import ACTS
from finishing_tui.recipe.stage import Stage
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.conversation import Talk


def _offered(state: State, _: int | None) -> Offer | None:
    if state.current is None:
        return None
    work = state.work
    if work is None:
        return Offer("press", "start it", "start this step", Press())
    if work.complete:
        return None
    if counted_at_end(work) is not None:
        stage = work.stages[work.at]
        return Offer("press", ACTS[stage.act].lower(), f"go on without a count: {stage.title}", Press())
    label, what = _words(state, work.stages[work.at], work.progress[work.at])
    return Offer("press", label, what, Press())


def _words(state: State, stage: Stage, progress: Progress) -> tuple[str, str]:
    """Return what a press will do, in the words of the hands: as wide as each other from press to press."""
    match stage.unit:
        case "spot" if state.pace == "spot" and not planned(progress, progress.mark.units + 1):
            return "skip", f"skip {stage.spot} {progress.mark.units + 1}"
        case "spot" if state.pace == "run":
            return "pick", "pick up the next repeat"
        case "spot":
            return _up_to_the_next(stage, progress)
        case "round":
            return "count it", f"count the next {stage.spot}"
        case "item":
            return "tick off", "tick off the next thing"
        case "pair":
            return ACTS[stage.act].lower(), "count the next pair"
        case _:
            return ACTS[stage.act].lower(), "count the next stitch"


def _up_to_the_next(stage: Stage, progress: Progress) -> tuple[str, str]:
    """Return what a press at the usual pace will do: it skips first where the plan skips."""
    here, pick = progress.mark.units + 1, next_pick(stage, progress)
    if pick == here:
        return "pick", "pick up the next stitch"
    if pick is None:
        return "skip", f"skip the last {plural(stage.units + 1 - here, stage.spot)}"
    return f"skip {pick - here}, pick", f"skip {pick - here}, then pick up the next stitch"


def _does(talk: Talk) -> None:
    talk.looking = None
    talk.do(Press(), "press")


ACT = Action(
    "press",
    "space",
    "count one, or tick it off",
    _offered,
    _does,
    "right now",
    letter="d",
    also=("done",),
    held="on",
)
