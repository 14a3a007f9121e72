"""One stitch off is one line and one key; every way to go on is behind another."""

from finishing_tui.craft.words import sentence
from finishing_tui.talk.asks import Ask, Choose, Option, Weigh

EVERY_WAY = "See every way"
"""What leads on to the list."""


def in_one_line(ask: Weigh) -> Ask:
    """Return ``ask``, as one line where it is about one stitch and its first way puts that right unseen."""
    answers, first = ask.answers, ask.answers.rows[0]
    off = abs(answers.numbers[0] - answers.numbers[1]) if answers.numbers else 0
    if off != 1 or len(answers.rows) == 1 or first.shows or first.note or first.ripped:
        return ask
    lies = answers.lies(first)
    return Choose(
        question=sentence(f"{answers.heading}: {answers.said}"),
        options=(Option(first.text, sentence(lies) if lies else ""), Option(EVERY_WAY)),
        then=lambda at: ask if at else ask.then(0),
        left=ask.left,
        back=ask.back,
        unasked=ask.unasked,
    )
