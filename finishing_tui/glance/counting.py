"""What a typed number would mean right now, and what could be counted: asked before anything is decided."""

from dataclasses import dataclass

from finishing_tui.garment.recounting import counted_stage
from finishing_tui.garment.state import State

MOST_DIGITS = 6
"""More digits than any count has."""


@dataclass(frozen=True, slots=True)
class Countable:
    """Something that can be counted now.

    ``place``: the key to ask for, empty for what is under way; ``text``: what is counted, in words; ``expected``: what
    should be there; ``short``: what the number would be, in two or three words; ``section``: it is a section of an
    edge, which a recount looks at.
    """

    place: str
    text: str
    expected: int
    short: str
    section: bool = False


def countables(state: State) -> tuple[Countable, ...]:
    """Return what can be counted now: one thing, two needles of a join to choose between, or nothing."""
    work = state.standing.work if state.standing else None
    if work is None:
        return ()
    index = counted_stage(work)
    if index is not None:
        stage = work.stages[index]
        since = "the start" if not index else "the last marker"
        text = f"the loops of {stage.title}, from {since}"
        return (Countable("", text, work.progress[index].mark.loops, "loops counted", section=True),)
    if work.complete:
        return ()
    stage, mark = work.stages[work.at], work.progress[work.at].mark
    name = state.plan.here(state.ledger).name
    if stage.bars:
        return ()  # the bars of a seam are on no needle
    if stage.unit == "pair":
        return tuple(
            Countable(place, name(place), state.ledger.on(place), "counted") for place in (stage.front, stage.back)
        )
    if stage.counts:
        return (Countable("", f"the {name(stage.place)}", stage.units, "stitches counted"),)
    if stage.takes_all:
        return (Countable("", f"those done of {stage.title}", mark.units, "so many are done"),)
    if stage.place and stage.unit != "value":
        return (Countable("", f"the {name(stage.place)}", state.ledger.on(stage.place), "stitches counted"),)
    return ()


def worth_counting(state: State) -> tuple[Countable, ...]:
    """Return what is worth counting after the work lay: what should be there at all, so that something can be gone."""
    return tuple(one for one in countables(state) if one.expected)


def asks_for_value(state: State) -> bool:
    """Return whether a measure is asked for now, so that what is typed is that."""
    work = state.standing.work if state.standing else None
    return work is not None and not work.complete and work.stages[work.at].unit == "value"
