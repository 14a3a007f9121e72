"""What a command leads to by the end of the step under way: the stitches there are then, and the work it adds."""

from dataclasses import dataclass

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import Command, Refusal
from finishing_tui.garment.decide import decide
from finishing_tui.garment.decide.first_round import first_rounds_on, mended_by
from finishing_tui.garment.decide.mirror import foreseen, short_by
from finishing_tui.garment.decide.stages import rest_of, under_way
from finishing_tui.garment.events import Act
from finishing_tui.garment.evolve import applied
from finishing_tui.garment.state import State
from finishing_tui.recipe.kinds.base import RepeatOf
from finishing_tui.recipe.kinds.work import Work


@dataclass(frozen=True, slots=True)
class Outcome:
    """``total``: the stitches on the needle when the step is done and its first round has put right what is left to it.

    ``planned``: what the plan has there. ``made``: the increases that round has more than before (below 0:
    decreases); ``repeat``: what the band's total must be of, where that is known; ``unit``: what the band is worked in,
    a round or a row.
    """

    total: int
    planned: int
    made: int
    repeat: RepeatOf | None
    unit: str


def outcome(state: State, command: Command, place: str) -> Outcome:
    """Return what ``command`` leads to on ``place``. Raises ``FinishingError`` with a sentence where it is refused."""
    events = decide(state, command)
    if isinstance(events, Refusal):
        raise FinishingError(events.sentence)
    after = applied(state, (event for event in events if isinstance(event, Act)))
    was, now = _band(state, place), _band(after, place)
    left = mended_by(now) if now else 0
    before = mended_by(was) if was else 0
    _, work = under_way(state)
    planned = _at_the_end(state, place) + before + short_by(work)
    total, repeat = _at_the_end(after, place) + left, repeat_of(now) if now else None
    return Outcome(total, planned, left - before, repeat, worked_in(now) if now else "round")


def _at_the_end(state: State, place: str) -> int:
    """Return what is on ``place`` when the step under way has gone on as it stands to its end."""
    _, work = under_way(state)
    return state.ledger.enter(*rest_of(foreseen(state, work))).on(place)


def worked_in(band: Work) -> str:
    """Return what a band is worked in: a round, or a row."""
    return "round" if band.rows is None else "row"


def repeat_of(band: Work) -> RepeatOf | None:
    """Return the repeat that a band's first rounds must find; None where shaping of its own brings the band to it."""
    shaped = band.change is not None or mended_by(band) != sum(one.change for one in band.shaping)
    return None if shaped else band.repeat


def _band(state: State, place: str) -> Work | None:
    found = first_rounds_on(state, place, (state.current or 0) + 1)
    return found[1] if found else None
