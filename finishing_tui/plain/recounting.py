"""The recount as a conversation: how many there are, what a difference is put down to, and how to go on."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.events import Answer
from finishing_tui.glance.counting import Countable
from finishing_tui.glance.recounts import ANSWERS, RecountView, recount_view
from finishing_tui.glance.stored_words import verdict_words
from finishing_tui.plain.questions import Choose, Hands, Number, Reply


def how_many(countable: Countable) -> Number:
    """Return the question for the count of a section."""
    asked = f'Count {countable.text}. By presses there are {countable.expected}; "as planned" says it is that.'
    return Number(asked, counted, same=countable.expected)


def counted(hands: Hands, number: int) -> Reply:
    """Take a count of the section under way: as planned it is taken down, else it is asked what the difference is."""
    return _looked_at(hands, number, None, None)


def _looked_at(hands: Hands, number: int, answer: Answer | None, left: int | None) -> Reply:
    try:
        view = recount_view(hands.state, number, answer, left)
    except FinishingError as error:
        return [sentence(str(error))], None if answer is None else _why(hands, number, told=False)
    if view.matches:
        refusal = hands.attempt(view.ways[0].command)
        told = f"{number} counted, as planned; {view.total} on the needle in all."
        return [sentence(refusal.sentence) if refusal else told], None
    return ([], _why(hands, number)) if answer is None else ([], _ways(view))


def _why(hands: Hands, number: int, *, told: bool = True) -> Choose:
    view = recount_view(hands.state, number)
    lines = [f"{view.counted} counted, {view.expected} by presses."] if told else []
    return Choose(lines, "What is it?", [text for _, text in ANSWERS], lambda hands, at: _answered(hands, view, at))


def _answered(hands: Hands, view: RecountView, at: int) -> Reply:
    answer = ANSWERS[at][0]
    if answer != "rows-left":
        return _looked_at(hands, view.counted, answer, None)
    question = f"How many {view.unit}s are left in this section?"
    return [], Number(question, lambda hands, left: _looked_at(hands, view.counted, answer, left))


def _ways(view: RecountView) -> Choose:
    told = [
        f"verdict: {verdict_words(view.verdict)}.",
        *(f"  {line}" for line in view.text.split("\n") if line),
        f"the plan so far: {view.rhythm}.",
        f"{view.total} on the needle in all.",
    ]
    choices = [f"{way.label}. {sentence(way.text)} It goes: {way.rhythm}" for way in view.ways]
    return Choose(told, "How to go on? Nothing has changed yet.", choices, lambda hands, at: _taken(hands, view, at))


def _taken(hands: Hands, view: RecountView, at: int) -> Reply:
    way = view.ways[at]
    refusal = hands.attempt(way.command)
    if refusal is not None:
        return [sentence(refusal.sentence)], _ways(view)
    return [f"{view.counted} counted: {way.label}."], None
