"""The edge ends here: with as many stitches as were wanted, or too few of them, or with rows left over."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.events import WhyOff
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import owed_skips
from finishing_tui.garment.ways import counted_stage
from finishing_tui.glance.recounts import recount_view
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, HowMany, weigh
from finishing_tui.talk.conversation import Talk

_ENDS: WhyOff = "edge-ends"

FEW_MISSING = 3
"""Where more are missing, the key was more likely pressed too soon."""


def _offered(state: State, _: int | None) -> Offer | None:
    work = state.work
    index = counted_stage(work) if work else None
    if work is None or index is None or not work.progress[index].mark.loops:
        return None
    if work.stages[index].pinned and work.progress[index].confirmed[0] >= work.stages[index].units:
        return None
    return Offer("edge_ends", "edge ends", f"say that the {work.stages[index].title} ends here")


def may_end_anywhere(state: State) -> bool:
    """Return whether nobody counted the edge that is picked up, and no pin says how it is shared."""
    work = state.work
    index = counted_stage(work) if work else None
    if work is None or index is None:
        return False
    return bool(work.stages[index].uncounted) and not work.stages[index].pinned


def _does(talk: Talk) -> Ask | None:
    work = talk.state.work
    index = counted_stage(work) if work else None
    if work is None or index is None:
        talk.refuse("you are not picking up along an edge")
        return None
    stage, loops = work.stages[index], work.progress[index].mark.loops
    counted = int(talk.typed) if talk.typed else loops
    talk.typed = ""
    all_there = counted == stage.target and stage.uncounted != "all"
    if stage.pinned or (not all_there and not owed_skips(stage, work.progress[index])):
        return _ended(talk, counted, 0)
    unit = stage.spot
    return HowMany(
        question=f"You have {'all ' if all_there else ''}{counted}. How many {unit}s come after your last stitch?",
        told=(
            f"count the {unit}s between your last stitch and the end of the edge",
            "if there are any, you see what to do about them" if all_there else f"the next {unit} is one you skip",
        ),
        on_edge=True,
        unit=f"{stage.spot}s left over",
        idle="COUNT",
        same=0,
        aside="none",
        then=lambda over: _ended(talk, counted, over),
    )


def _ended(talk: Talk, counted: int, over: int) -> Ask | None:
    try:
        view = recount_view(talk.state, counted, _ENDS, over)
    except FinishingError as error:
        talk.refuse(str(error))
        return None

    about = f", {view.about}" if view.about else ""
    early = view.short > FEW_MISSING

    def taken(at: int) -> Ask | None:
        if early and at == 0:
            return None
        at -= early
        if not talk.do(view.commands[at]):
            return talk.asked
        talk.say(f"{view.title}{about}: {counted} counted; {view.answers.rows[at].text}", aloud=True)
        return None

    if len(view.commands) == 1 and not early:
        return taken(0)
    at = f"{view.unit} {view.spot}"
    where = f"{view.title}, last stitch in {at}" if over else f"{view.title} ends at {at}"
    return weigh(f"{where}{about}", view.not_yet if early else view.answers, taken)


ACT = Action(
    "edge_ends",
    "z",
    "the edge ends here: with enough stitches, or too few, or with rows left over",
    _offered,
    _does,
    "right now",
    also=("end of the edge",),
    digits=True,
)
