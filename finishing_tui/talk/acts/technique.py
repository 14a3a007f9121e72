"""How the hands do it: the techniques of the step in the middle, with drawings."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.state import State
from finishing_tui.glance.techniques import others, techniques_for
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, ReadTechniques
from finishing_tui.talk.conversation import Talk


def _offered(state: State, looking_at: int | None) -> Offer | None:
    here = state.current if looking_at is None else looking_at
    what = None if here is None else f"see how to do step {here + 1}, with drawings"
    return None if what is None else Offer("technique", "show how", what)


def _does(talk: Talk) -> Ask | None:
    step = talk.shown_step
    if step is None:
        look = talk.keys.shown("needles.look_back")
        talk.refuse(f"every step is done; look at one ({look}) for the techniques that help at it")
        return None
    try:
        helping = techniques_for(talk.state, step)
        rest = others(helping)
    except FinishingError as error:
        talk.say(str(error))
        return None
    left_handed = talk.state.plan.hand == "left"
    return ReadTechniques(question="Techniques", helping=helping, others=rest, left_handed=left_handed)


ACT = Action(
    "technique",
    "h",
    "see the techniques of this step, with drawings",
    _offered,
    _does,
    "look something up",
    changes_nothing=True,
    digits=True,
)
