"""What a number leads to: a measure, a count, or the conversation of a recount."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import TakeCount, TakeMeasure
from finishing_tui.garment.events import WhyOff
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import due
from finishing_tui.glance.counting import (
    OVER,
    Countable,
    asks_for_value,
    countables,
    elsewhere,
    why_again,
)
from finishing_tui.glance.measured import beside_wanted
from finishing_tui.glance.recounts import RecountView, may_say_where, put_down_to, recount_view, where_asked
from finishing_tui.glance.spoken import spoken_difference
from finishing_tui.talk.asks import Ask, Choose, Explain, HowMany, Option, weigh
from finishing_tui.talk.conversation import KeyNames, Talk
from finishing_tui.talk.counted_again import counted_again, looked_for
from finishing_tui.talk.one_off import in_one_line
from finishing_tui.talk.whereabouts import where_told

NOTHING = "there is nothing to count here"


def take_typed(talk: Talk) -> Ask | None:
    """Take the typed digits for what they mean here: a measure, or the count of what there is to count."""
    if asks_for_value(talk.state):
        _measure(talk)
        return None
    found = countables(talk.state)
    if talk.returned:
        found = tuple(one for one in found if one.expected)
        if not (len(found) == 1 and found[0].near(int(talk.typed))):
            found = (*found, *elsewhere(talk.state))
    if not found:
        talk.typed = ""
        talk.refuse(NOTHING)
        return None
    counted, talk.typed = int(talk.typed), ""
    if len(found) == 1:
        return _counted(talk, found[0], counted)
    likely = sorted(found, key=lambda one: one.meant(counted) != one.expected)
    all_of_them = talk.returned and counted == sum(one.expected for one in found)

    def on(at: int) -> Ask | None:
        if not all_of_them:
            return _counted(talk, likely[at], counted)
        if at:
            return _counted(talk, likely[at - 1], counted)
        for one in likely:
            _take(talk, one, one.expected)
        talk.say(f"{counted} in all, as it should be", aloud=True)
        return None

    together = (Option(f"all of them together: {counted}, as it should be"),) if all_of_them else ()
    return Choose(
        question=f"{counted} counted on which needle{' or holder' if talk.returned else ''}?",
        options=(*together, *(Option(f"{one.text}, which should hold {one.right}") for one in likely)),
        then=on,
    )


def take_as_expected(talk: Talk) -> Ask | None:
    """Take the count of the section under way to be what it should be."""
    expected = due(talk.state)
    if expected is None:
        return None
    (what,) = countables(talk.state)
    if what.section:
        return _look_at(talk, what, expected)
    _take(talk, what, expected)
    return None


def start_recount(talk: Talk) -> Ask | None:
    """Begin a recount, or say what is to be counted and typed; what was just counted is asked where it is."""
    if talk.typed:
        return take_typed(talk)
    talk.looking = None
    found = countables(talk.state)
    if not found:
        talk.refuse(NOTHING)
        return None
    if found[0].section:
        return where_told(talk, found[0].expected) if may_say_where(talk.state) else _how_many(talk, found[0])
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
        talk.refuse(f"{value} written down: {off}; measure again, or note what you do about it")
    else:
        talk.say(f"{value} written down", aloud=True)


def _counted(talk: Talk, what: Countable, typed: int) -> Ask | None:
    """Take a count that is as expected, or of what is only ticked off; any other is counted again first."""
    counted = what.meant(typed)
    if what.section and counted == what.expected:
        return _look_at(talk, what, counted, said="" if counted == typed else f"{typed} on the needle")
    if not what.live or counted == what.expected:
        _take(talk, what, counted)
        return None
    view = _viewed(talk, what, counted)
    if what.section and view is None:
        return talk.asked or _how_many(talk, what)
    if view is not None and view.at_once:
        return _goes_on(talk, view, 0)
    why = view.doubt if view else why_again(counted, what.expected)
    return counted_again(
        what,
        typed,
        lambda: _why(talk, what, view, typed) if view else _look_for(talk, what, counted),
        lambda number: _counted(talk, what, number),
        why,
    )


def _viewed(talk: Talk, what: Countable, counted: int) -> RecountView | None:
    """Return what the count of a section leads to; None, and why in a sentence, where it cannot be."""
    if not what.section:
        return None
    try:
        return recount_view(talk.state, counted)
    except FinishingError as error:
        talk.refuse(str(error))
        return None


def _take(talk: Talk, what: Countable, counted: int) -> None:
    if talk.do(TakeCount(counted, what.place)):
        told = f"; expected {what.expected}" if counted != what.expected and what.place else ""
        talk.say(f"{counted} counted: {what.text}{told}", aloud=True)


def _look_for(talk: Talk, what: Countable, counted: int) -> Ask:
    return looked_for(what, counted, lambda number: _take(talk, what, number), lambda: _how_many(talk, what))


def _how_many(talk: Talk, what: Countable) -> Ask:
    return HowMany(
        question=f"Count {what.text}.",
        told=("if you count another number, type it. You count again before anything changes",),
        on_edge=what.section,
        unit="the count",
        idle="COUNT",
        same=what.expected,
        aside=f"should be {what.right}",
        then=lambda counted: _counted(talk, what, counted),
    )


def _look_at(
    talk: Talk, what: Countable, counted: int, answer: WhyOff | None = None, left: int | None = None, said: str = ""
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
    return _ways(talk, view, what)


def _why(talk: Talk, what: Countable, view: RecountView, typed: int) -> Ask:
    """Ask what a count of a section that differs, taken twice, is to be put down to."""
    where = bool(where_asked(talk.state))
    answers = put_down_to(view, lost=not where)

    def answered(at: int) -> Ask | None:
        answer = answers[at][0]
        if answer is None:
            return _look_at(talk, what, view.expected)
        if answer == "loops" and where:
            return where_told(talk, view.counted)
        return _how_many_left(talk, what, view) if answer == "rows-left" else _look_at(talk, what, view.counted, answer)

    texts = tuple(text for _, text in answers)
    whole = (f"{typed} on the needle: that is {view.counted} since the marker",) if typed != view.counted else ()
    over = (OVER,) if view.counted > view.expected else ()
    return Explain(
        question="The counts differ. What happened?",
        told=(*whole, f"you counted {view.counted}; the count here is {view.expected}", *over),
        spoken=spoken_difference(view.counted, view.expected, texts),
        options=tuple(map(Option, texts)),
        counted=view.counted,
        expected=view.expected,
        then=answered,
        back=lambda: _how_many(talk, what),
    )


def _how_many_left(talk: Talk, what: Countable, view: RecountView) -> Ask:
    return HowMany(
        question=f"How many {view.unit}s are left in the {view.title}?",
        told=(f"count from the {view.unit} after your last stitch to the end of the section",),
        on_edge=True,
        unit="how many",
        idle="COUNT",
        missing=f"Type how many {view.unit}s are left first.",
        then=lambda left: _look_at(talk, what, view.counted, "rows-left", left),
        back=lambda: _why(talk, what, view, view.counted),
    )


def _goes_on(talk: Talk, view: RecountView, at: int) -> Ask | None:
    """Take the count, and go on by one of its ways."""
    if not talk.do(view.commands[at]):
        return talk.asked
    talk.say(f"{view.counted} counted: {view.answers.rows[at].text}", aloud=True)
    return None


def _ways(talk: Talk, view: RecountView, what: Countable) -> Ask:
    def taken(at: int) -> Ask | None:
        if view.cannot and at == 0:
            return _how_many(talk, what)
        if asked := _goes_on(talk, view, at - view.cannot):
            return asked
        at -= view.cannot
        # Whoever missed a press has told what was picked, and not yet where that is on an edge nobody counted.
        if view.commands[at].answer == "presses" and where_asked(talk.state):
            return where_told(talk, view.counted)
        return None

    def back() -> Ask:
        return _why(talk, what, recount_view(talk.state, view.counted), view.counted)

    title = f"{view.title}, {view.unit} {view.spot}"
    return in_one_line(weigh(title, view.count_first if view.cannot else view.answers, taken, back=back))
