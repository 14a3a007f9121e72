"""What a number leads to: a measure, a count, or the conversation of a recount."""

from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import TakeCount, TakeMeasure
from finishing_tui.garment.events import WhyOff
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import due
from finishing_tui.glance.answers import AGAIN, Answer
from finishing_tui.glance.counting import Countable, asks_for_value, countables, far_off, to_the_pin
from finishing_tui.glance.measured import beside_wanted
from finishing_tui.glance.recounts import ANSWERS, RecountView, recount_view, where_asked
from finishing_tui.glance.spoken import spoken_difference
from finishing_tui.talk.asks import Ask, Choose, Explain, HowMany, Option, weigh
from finishing_tui.talk.conversation import KeyNames, Talk
from finishing_tui.talk.whereabouts import where_told

NOTHING = "there is nothing to count here"


def take_typed(talk: Talk) -> Ask | None:
    """Take the typed digits for what they mean here: a measure, or the count of what there is to count."""
    if asks_for_value(talk.state):
        _measure(talk)
        return None
    found = countables(talk.state)
    if not found:
        talk.typed = ""
        talk.refuse(NOTHING)
        return None
    if len(found) == 1:
        return _counted(talk, found[0])

    options = tuple(Option(f"{one.text}, which should hold {one.expected}") for one in found)
    question = f"{talk.typed} counted on which needle?"
    return Choose(question=question, options=options, then=lambda at: _counted(talk, found[at]))


def take_as_expected(talk: Talk) -> Ask | None:
    """Take the count of the section under way to be what it should be."""
    expected = due(talk.state)
    if expected is None:
        return None
    (what,) = countables(talk.state)
    if what.section:
        return _look_at(talk, expected)
    _take(talk, what, expected)
    return None


def start_recount(talk: Talk) -> Ask | None:
    """Begin a recount, or say what is to be counted and typed."""
    if talk.typed:
        return take_typed(talk)
    talk.looking = None
    found = countables(talk.state)
    if not found:
        talk.refuse(NOTHING)
        return None
    if found[0].section:
        return _how_many(talk, found[0])
    talk.say(f"count {' or '.join(one.text for one in found)}, {talk.keys.number()}", aloud=True)
    return None


def meaning(state: State, keys: KeyNames) -> str:
    """Return what digits being typed would mean, in a few words, with the key that takes them."""
    take = keys.shown("needles.finish")
    work = state.work
    if work is not None and asks_for_value(state):
        return f"{work.stages[work.at].of}: {take} writes it down"
    found = countables(state)
    if not found:
        return "nothing can be counted here"
    if len(found) > 1:
        return f"{take}: counted on which needle?"
    return f"{take}: {found[0].short}"


def _measure(talk: Talk) -> None:
    value, talk.typed = talk.typed, ""
    off = beside_wanted(talk.state, value)
    if not talk.do(TakeMeasure(value)):
        return
    if off:
        talk.refuse(f"{value} written down: {off}; measure again, or note what is done about it")
    else:
        talk.say(f"{value} written down", aloud=True)


def _counted(talk: Talk, what: Countable) -> Ask | None:
    counted, talk.typed = int(talk.typed), ""
    if what.section:
        return _section(talk, what, counted)
    if what.live and far_off(counted, what.expected):
        return _again(talk, what, counted)
    _take(talk, what, counted)
    return None


def _take(talk: Talk, what: Countable, counted: int) -> None:
    if talk.do(TakeCount(counted, what.place)):
        differs = counted != what.expected
        told = (
            f"; expected {what.expected}"
            if differs and what.place
            else to_the_pin(talk.state, counted - what.expected)
            if differs
            else ""
        )
        talk.say(f"{counted} counted: {what.text}{told}", aloud=True)


def _again(talk: Talk, what: Countable, counted: int) -> Ask:
    """Ask for a count once more that is far from what should be there; the same again is what is there."""

    def again(number: int) -> Ask | None:
        if number != counted and far_off(number, what.expected):
            return _again(talk, what, number)
        _take(talk, what, number)
        return None

    return HowMany(
        question=f"{counted}? It should be {what.expected}. Count {what.text} again.",
        unit="the count",
        idle="COUNT",
        aside=f"should be {what.expected}; or type {counted} again",
        missing="Type the count first.",
        then=again,
    )


def _how_many(talk: Talk, what: Countable) -> Ask:
    return HowMany(
        question=f"Count {what.text}.",
        unit="the count",
        idle="COUNT",
        same=what.expected,
        aside=f"should be {what.right}",
        then=lambda counted: _section(talk, what, counted),
    )


def _section(talk: Talk, what: Countable, counted: int) -> Ask | None:
    """Look at the count of a section, or of the whole needle, which stands for one; what cannot be is asked again."""
    meant = what.meant(counted)
    try:
        ask = _look_at(talk, meant, said="" if meant == counted else f"{counted} on the needle")
    except FinishingError as error:
        talk.refuse(str(error))
        return talk.asked or _how_many(talk, what)
    return ask


def _look_at(
    talk: Talk, counted: int, answer: WhyOff | None = None, left: int | None = None, said: str = ""
) -> Ask | None:
    """Look at what the count leads to with this answer; where it is as planned, take it and go.

    ``said``: what was counted, where that was the whole needle. Raises ``FinishingError`` with a sentence.
    """
    view = recount_view(talk.state, counted, answer, left)
    if answer is None and view.matches and where_asked(talk.state):
        return where_told(talk, counted)
    if view.matches:
        if talk.do(view.commands[0]):
            also = f"; {view.total} on the needle" if view.total != counted else ""
            talk.say(f"{said}: as it should be" if said else f"{counted} counted, as planned{also}", aloud=True)
        return None
    return _why(talk, view, said) if answer is None else _ways(talk, view)


def _why(talk: Talk, view: RecountView, said: str = "") -> Ask:
    found = countables(talk.state)

    def again() -> Ask:
        return _how_many(talk, found[0])

    first = 1 if view.doubt else 0

    def answered(at: int) -> Ask | None:
        if texts[at] == AGAIN:
            return again()
        answer = answers[at - first][0]
        if answer == "loops" and where_asked(talk.state):
            return where_told(talk, view.counted)
        return _how_many_left(talk, view) if answer == "rows-left" else _look_at(talk, view.counted, answer)

    answers = ANSWERS[:2] if where_asked(talk.state) else ANSWERS
    said_of = [text for _, text in answers]
    texts = (AGAIN, *said_of) if first else (*said_of, AGAIN)
    whole = (f"{said}: that is {view.counted} since the marker",) if said else ()
    return Explain(
        question="The counts differ. What happened?",
        told=(*whole, f"you counted {view.counted}; the count here is {view.expected}", *filter(None, [view.doubt])),
        spoken=spoken_difference(view.counted, view.expected, texts, view.doubt),
        options=tuple(map(Option, texts)),
        counted=view.counted,
        expected=view.expected,
        then=answered,
        back=again,
    )


def _how_many_left(talk: Talk, view: RecountView) -> Ask:
    return HowMany(
        question=f"How many {view.unit}s are left in this section?",
        unit="how many",
        idle="COUNT",
        missing=f"Type how many {view.unit}s are left first.",
        then=lambda left: _look_at(talk, view.counted, "rows-left", left),
        back=lambda: _why(talk, view),
    )


def _ways(talk: Talk, view: RecountView) -> Ask:
    first = [Answer(AGAIN, "COUNT", None, None, more=sentence(view.doubt))] if view.doubt and view.cannot_be else []
    answers = replace(view.answers, rows=(*first, *view.answers.rows))

    def taken(at: int) -> Ask | None:
        if at < len(first):
            return _how_many(talk, countables(talk.state)[0])
        if not talk.do(view.commands[at - len(first)]):
            return talk.asked
        talk.say(f"{view.counted} counted: {answers.rows[at].text}", aloud=True)
        return None

    title = f"{view.title}, {view.unit} {view.spot}"
    return weigh(title, answers, taken, back=lambda: _why(talk, recount_view(talk.state, view.counted)))
