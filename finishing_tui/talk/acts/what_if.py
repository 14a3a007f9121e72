"""Another plan for this part is looked at, before it is taken."""

from functools import partial

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.state import State
from finishing_tui.glance.what_if import WhatIfView, asked_here, can_ask, what_if_view
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, WeighPlans
from finishing_tui.talk.conversation import Talk

MOST_LATER = 8
"""So many later numbers are named at the most."""


def _offered(state: State, _: int | None) -> Offer | None:
    what = "try other numbers here; nothing changes yet"
    return Offer("what_if", "try what if", what) if can_ask(state) else None


def _does(talk: Talk) -> Ask | None:
    talk.looking = None
    try:
        asked = asked_here(talk.state)
    except FinishingError as error:
        talk.refuse(str(error))
        return None
    typed, talk.typed = talk.typed, ""

    def taken(view: WhatIfView) -> Ask | None:
        if not talk.do(view.command):
            return talk.asked
        talk.say(f"changed: {view.now}")
        return None

    return WeighPlans(
        question=f"What if ... · {asked.title}",
        asked=asked,
        typed=typed,
        view=partial(what_if_view, talk.state, most=MOST_LATER),
        then=taken,
    )


ACT = Action(
    "what_if",
    "w",
    "try another total, rows, rhythm or rounds; nothing changes until you choose it",
    _offered,
    _does,
    "this step",
    digits=True,
)
