"""Where on an edge a count was taken: what hands know of it; asked once where nobody counted the edge."""

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import plural
from finishing_tui.garment.events import WhyOff
from finishing_tui.glance.recounts import RecountView, may_say_where, recount_view, where_said
from finishing_tui.talk.asks import Ask, Choose, HowMany, Option, weigh
from finishing_tui.talk.conversation import Talk


def where_told(talk: Talk, counted: int) -> Ask:
    """Ask where the count was taken. Leaving that takes the count all the same, and says nothing of the place."""
    found, is_taken = where_said(talk.state), may_say_where(talk.state)

    def answered(at: int) -> Ask | None:
        answer, _, asks, how = found[at]
        return _how_many(talk, counted, answer, (asks, how)) if asks else _taken(talk, counted, answer)

    return Choose(
        question=f"{counted} counted. Where are you on this edge?",
        options=tuple(Option(text) for _, text, *_ in found),
        then=answered,
        left=lambda: None if is_taken else _taken(talk, counted, "not-known"),
    )


def _how_many(talk: Talk, counted: int, answer: WhyOff, asked: tuple[str, str]) -> Ask:
    question, how = asked
    return HowMany(
        question=question,
        told=(how, f"you have {plural(counted, 'stitch')} now"),
        on_edge=True,
        unit="how many",
        idle="COUNT",
        missing="Type the number first.",
        then=lambda number: _taken(talk, counted, answer, number),
        back=lambda: where_told(talk, counted),
    )


def _taken(talk: Talk, counted: int, answer: WhyOff, number: int | None = None) -> Ask | None:
    """Take the count with what is known of its place; where there are ways to choose between, show them first."""
    try:
        view = recount_view(talk.state, counted, answer, number)
    except FinishingError as error:
        talk.refuse(str(error))
        return talk.asked
    if len(view.commands) > 1:
        return _ways(talk, view)
    if not talk.do(view.commands[0]):
        return talk.asked
    about = f"{view.about}; press {talk.keys.shown('needles.edge_ends')} where the edge ends" if view.about else ""
    _said(talk, view, about or view.answers.rows[0].text)
    return None


def _ways(talk: Talk, view: RecountView) -> Ask:
    def taken(at: int) -> Ask | None:
        if not talk.do(view.commands[at]):
            return talk.asked
        _said(talk, view, view.answers.rows[at].text)
        return None

    title = f"{view.title}, {view.unit} {view.spot}"
    return weigh(title, view.answers, taken, back=lambda: where_told(talk, view.counted))


def _said(talk: Talk, view: RecountView, what: str) -> None:
    """Say what was counted and chosen, and how long the edge and its mirror are now, where that was not planned."""
    learned = f". {view.learned}" if view.learned else ""
    talk.say(f"{view.counted} counted: {what}{learned}", aloud=True)
