"""A count that differs is counted again; the same number twice is what is there, and then it is asked why."""

from collections.abc import Callable

from finishing_tui.craft.words import sentence
from finishing_tui.glance.counting import Countable, found_words, look_for
from finishing_tui.glance.spoken import spoken_question
from finishing_tui.talk.asks import Ask, Explain, HowMany, Option


def counted_again(
    what: Countable, counted: int, same: Callable[[], Ask | None], other: Callable[[int], Ask | None], why: str = ""
) -> Ask:
    """Ask for the second count: ``same`` is what follows the same number, ``other`` what follows another one.

    ``why``: what is doubtful in the first one.
    """
    return HowMany(
        question=f"You counted {counted}; it should be {what.right}. Count {what.text} again.",
        told=(*((why,) if why else ()), "nothing changes until you have counted the same number twice"),
        on_edge=what.section,
        unit="the count",
        idle="COUNT",
        aside=f"still {counted}? Type it again",
        missing="Type the count first.",
        then=lambda number: same() if number == counted else other(number),
    )


def looked_for(what: Countable, counted: int, then: Callable[[int], Ask | None], back: Callable[[], Ask | None]) -> Ask:
    """Ask whether what live stitches lack, or have too many, is found: it is looked for before anything is mended."""
    question = look_for(counted, what.expected)
    texts = (found_words(what.expected), f"Nothing found: it's {counted}")
    return Explain(
        question=sentence(question),
        told=(f"you counted {counted} on {what.text}; it should be {what.expected}",),
        spoken=spoken_question(question, texts),
        options=tuple(map(Option, texts)),
        counted=counted,
        expected=what.expected,
        then=lambda at: then(counted if at else what.expected),
        back=back,
    )
