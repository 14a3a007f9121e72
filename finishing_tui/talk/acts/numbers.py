"""The numbers of the garment: one is changed, once it was shown what that changes later."""

from functools import partial
from typing import TYPE_CHECKING

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import Replan
from finishing_tui.garment.state import State
from finishing_tui.glance.label_words import reason_words
from finishing_tui.talk.action import Action, Offer
from finishing_tui.talk.asks import Ask, Choose, Option, SetNumber, WorkOut, WriteLine
from finishing_tui.talk.conversation import Talk

if TYPE_CHECKING:
    from finishing_tui.glance.numbers import NumberLine, Renumbering


def _offered(state: State, _: int | None) -> Offer | None:
    what = "change a number of this garment; you see the effect first"
    return Offer("numbers", "edit numbers", what) if state.plan.recipe.number else None


def _does(talk: Talk) -> Ask | None:
    if not talk.state.plan.recipe.number:
        talk.refuse("this recipe has no numbers")
        return None
    from finishing_tui.glance.numbers import of_step  # noqa: PLC0415  (the audit: few commands need it)

    return _all(talk, of_step(talk.state, talk.shown_step))


def _all(talk: Talk, at: str) -> SetNumber:
    from finishing_tui.glance.numbers import number_lines, renumbering  # noqa: PLC0415  (the audit)

    def changed(line: "NumberLine", value: int | None) -> Ask:
        return WorkOut(
            question="", find=partial(renumbering, talk.state, line, value), then=partial(_found, talk, line)
        )

    plan = talk.state.plan
    return SetNumber(
        question="Numbers",
        told=("Changes affect only what you haven't started. You can undo them.",),
        lines=number_lines(plan.recipe, plan.size, plan.own),
        at=at,
        then=changed,
    )


def _found(talk: Talk, line: "NumberLine", found: "Renumbering | FinishingError") -> Ask:
    if isinstance(found, FinishingError):
        talk.refuse(str(found))
        return _all(talk, line.name)

    def taken(command: Replan) -> Ask:
        if talk.do(command):
            talk.say(reason_words(talk.state.plan, command))
        return _all(talk, line.name)

    def answered(at: int) -> Ask:
        if at == 0:
            return _all(talk, line.name)
        return taken(found.command) if at == 1 else why

    why = WriteLine(
        question="Why?",
        hint="It stands in the record.",
        keep="change it",
        leave="keep it as it was",
        then=lambda text: taken(found.because(text)),
        empty=True,
        left=lambda: _all(talk, line.name),
    )
    return Choose(
        question=sentence(found.said),
        told=found.lines or ("no count that comes later differs",),
        options=(Option("keep it as it was"), Option("change it"), Option("change it and add a note")),
        then=answered,
        left=lambda: _all(talk, line.name),
    )


ACT = Action(
    "numbers",
    "e",
    "change a number of this garment; you see the effect first",
    _offered,
    _does,
    "this garment",
    digits=True,
)
