"""The step is finished, or all of a part; a count that is due is right; digits are taken; another step is started."""

from finishing_tui.garment.commands import Finish, Press, TakeCount, TakeUp
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import due
from finishing_tui.garment.work import StepWork
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.counting import take_as_expected, take_typed


def _offered(state: State, looking_at: int | None) -> Offer | None:
    if looking_at is not None and looking_at != state.current:
        return Offer("finish", "start it", f"start step {looking_at + 1}", TakeUp(looking_at))
    if state.current is None:
        return None
    work = state.standing.work if state.standing else None
    if work is None:
        return Offer("finish", "start it", "start this step", Finish())
    expected = due(state)
    if expected is not None:
        return Offer("finish", f"it's {expected}", f"it's {expected}, as it should be", TakeCount(expected))
    if not work.complete and work.stages[work.at].takes_all:
        stage = work.stages[work.at]
        return Offer("finish", f"all {stage.units}", f"enter all {stage.units} of {stage.title}", Finish())
    if _is_last_tick(work):
        return Offer("finish", "tick it", "tick the last one off and end this step", Press())
    return Offer("finish", "end step", "end this step", Finish())


def _is_last_tick(work: StepWork) -> bool:
    """Return whether one thing is left to tick off, and nothing else: there is no reason to stop once it is."""
    if work.complete or not work.ticks:
        return False
    return sum(stage.units for stage in work.stages) - sum(one.mark.units for one in work.progress) == 1


def _does(talk: Talk) -> Ask | None:
    if talk.typed:
        return take_typed(talk)
    offer = _offered(talk.state, talk.looking)
    if offer is not None and isinstance(offer.command, TakeCount):
        return take_as_expected(talk)
    done = talk.do(Finish() if offer is None or offer.command is None else offer.command, "finish")
    if done and offer is not None and isinstance(offer.command, Press):
        talk.do(Finish(), "finish")
    return None


ACT = Action(
    "finish",
    "enter",
    "end the step, with its last tick; at halfway: the count is right; after digits: the count is that",
    _offered,
    _does,
    "right now",
    letter="f",
    also=("step done", "the lot"),
    digits=True,
)
