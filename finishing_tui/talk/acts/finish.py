"""The step is finished, or all of a part; a count that is due is right; digits are taken; another step is started."""

from finishing_tui.craft.words import plural
from finishing_tui.garment.commands import Finish, FinishAll, Press, TakeCount, TakeUp
from finishing_tui.garment.decide.may import may
from finishing_tui.garment.decide.press import is_told_whole
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import due
from finishing_tui.garment.work import StepWork
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, Choose, Option
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.counting import take_as_expected, take_typed

LAST = "tick it"
"""What the key says where it ticks the last thing off and ends the step."""


def _offered(state: State, looking_at: int | None) -> Offer | None:
    if looking_at is not None and looking_at != state.current:
        return Offer("finish", "start it", f"start step {looking_at + 1}", TakeUp(looking_at))
    if state.current is None:
        return None
    work = state.work
    if work is None:
        return Offer("finish", "start it", "start this step", Finish())
    expected = due(state)
    if expected is not None:
        return Offer("finish", f"it's {expected}", f"it's {expected}, as it should be", TakeCount(expected))
    if not work.complete and work.stages[work.at].takes_all:
        stage = work.stages[work.at]
        return Offer("finish", f"all {stage.units}", f"enter all {stage.units} of {stage.title}", Finish())
    if not work.complete and is_told_whole(work.stages[work.at]) and may(state, FinishAll()):
        stage = work.stages[work.at]
        what = f"all {plural(stage.units, stage.unit)} are done, without a press for each; it asks first"
        return Offer("finish", f"all {stage.units}", what, FinishAll())
    if _is_last_tick(work):
        return Offer("finish", LAST, "tick the last one off and end this step", Press())
    return Offer("finish", "end step", "end this step", Finish())


def _is_last_tick(work: StepWork) -> bool:
    """Return whether one thing is left to tick off, and nothing else: there is no reason to stop once it is."""
    if work.complete or work.stages[work.at].unit != "item":
        return False
    return sum(stage.units for stage in work.stages) - sum(one.mark.units for one in work.progress) == 1


def _does(talk: Talk) -> Ask | None:
    if talk.typed:
        return take_typed(talk)
    offer = _offered(talk.state, talk.looking)
    if offer is not None and isinstance(offer.command, TakeCount):
        return take_as_expected(talk)
    if offer is not None and isinstance(offer.command, FinishAll):
        return _all_or_some(talk)
    done = talk.do(Finish() if offer is None or offer.command is None else offer.command, "finish")
    if done and offer is not None and isinstance(offer.command, Press):
        talk.do(Finish(), "finish")
    return None


def _all_or_some(talk: Talk) -> Ask:
    """Ask once whether all of a join, a seam or a bind off is done, or it is to end with some left."""
    work = talk.state.work
    if work is None:
        raise ValueError("no step is under way")
    stage, done = work.stages[work.at], work.progress[work.at].mark.units

    def answered(at: int) -> None:
        if at:
            talk.do(Finish(sure=True))
        elif talk.do(FinishAll()):
            talk.say(f"all {plural(stage.units, stage.unit)} done", aloud=True)

    left = plural(stage.units - done, stage.unit)
    return Choose(
        question=f"All {plural(stage.units, stage.unit)} done?",
        told=(f"{done} of {stage.units} counted",),
        options=(Option(f"yes, all {stage.units}"), Option(f"end the step with {left} left")),
        then=answered,
    )


ACT = Action(
    "finish",
    "enter",
    "end the step; a due count is right; all of a join, seam or bind off is done; digits are the count",
    _offered,
    _does,
    "right now",
    letter="f",
    also=("step done", "the lot"),
    digits=True,
    held="once",
)
