"""The smallest repairs of a difference, in order of sense: each a command, carried out only when it is chosen."""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.judging import FLAT, SHOWS, Verdict, one_row_can
from finishing_tui.garment.commands import PutRight
from finishing_tui.garment.decide.first_round import first_rounds_on
from finishing_tui.garment.decide.respacing import respaced, sections_words
from finishing_tui.garment.outcome import repeat_of, worked_in
from finishing_tui.garment.state import State
from finishing_tui.garment.where_it_shows import in_a_round, shows_least
from finishing_tui.recipe.audit import LaterChange
from finishing_tui.recipe.kinds.base import RepeatOf
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit


@dataclass(frozen=True, slots=True)
class Mend:
    """One repair: what to do, and the same in one verb; how it lies then, if it lies any way, and how to ask for it.

    ``total``: what ``Told`` then comes to; ``made``: so many increases (below 0: decreases); ``where``: where it shows
    least.
    """

    text: str
    verb: str
    verdict: Verdict | None
    command: PutRight
    total: int
    made: int = 0
    where: str = ""


@dataclass(frozen=True, slots=True)
class Miscount:
    """The one needle or holder that was counted: it should have held ``was``, and holds ``now``."""

    place: str
    was: int
    now: int


@dataclass(frozen=True, slots=True)
class Told:
    """The number that all repairs are told by.

    It is the first that a band is worked on, else that of the needle which was counted, else the first that differs.

    ``places``: (name, planned, real) of it, and of those that differ beside it at the same step; ``planned`` and
    ``real`` are of the first, or of all of them where none was to hold anything. ``repeat``: what it must be of, where
    that is known.
    """

    planned: int
    real: int
    repeat: RepeatOf | None
    places: tuple[tuple[str, int, int], ...]


def told_by(state: State, differ: tuple[LaterChange, ...], off: Miscount | None = None) -> Told | None:
    """Return the number that the repairs of ``differ`` are told by; None where nothing differs."""
    name = state.plan.here(state.ledger).name
    for change in differ:
        if (found := first_rounds_on(state, change.place, change.step)) is not None:
            place = name(change.place), change.planned, change.real
            return Told(change.planned, change.real, repeat_of(found[1]), (place,))
    if not differ:
        return None
    if off is not None:
        return Told(off.was, off.now, None, ((name(off.place), off.was, off.now),))
    places = tuple((name(one.place), one.planned, one.real) for one in differ if one.step == differ[0].step)
    _, planned, real = max(places, key=lambda place: place[1] > 0)
    return Told(planned, real if planned else sum(each for _, _, each in places), None, places)


def mends(state: State, differ: tuple[LaterChange, ...], off: Miscount | None = None) -> tuple[Mend, ...]:
    """Return the smallest repairs, of what was counted or else of the first number that differs.

    The last is to carry on as it is. One stitch is put right in the next round before anything else, where one of that
    needle follows.
    """
    told = told_by(state, differ, off)
    if told is None:
        return (Mend("Carry on", "GO ON", None, PutRight("as-it-is", "", 0), 0),)
    here = Miscount(differ[0].place, differ[0].planned, differ[0].real) if off is None else off
    lacks = here.was - here.now
    found = _here(state, here.place, lacks, told.planned)
    if off is not None and (other := _beside(state, here.place)):
        found += _here(state, other, -lacks, told.real)
    for change in differ:
        step = state.plan.step(change.step)
        to_come = state.steps[change.step].status == "to-come"
        if isinstance(step, PickUpAndKnit) and change.place == step.onto and to_come:
            found += _respaced(state, step, change, told.planned)
            break
    rounds = (_first_round(state, change) for change in differ)
    first = next((first for first in rounds if first is not None), [])
    next_round = abs(lacks) == 1 and any(one.command.place == here.place for one in first)
    found = [*first, *found] if next_round else [*found, *first]
    command = PutRight("as-it-is", differ[0].place, 0)
    lies = _lies(told.real - told.planned, told.planned) if told.real and told.planned else None
    stays = Mend("Carry on", "GO ON", lies, command, told.real)
    return (*found, stays)


def _here(state: State, place: str, lacks: int, total: int) -> list[Mend]:
    held = state.ledger.on(place)
    if not lacks or not one_row_can(lacks, held):
        return []
    name = state.plan.recipe.place[place].text if place in state.plan.recipe.place else place
    verb = "MAKE" if lacks > 0 else "DECREASE"
    text, where = f"{verb.capitalize()} {abs(lacks)} on the {name} now", shows_least(state, place, lacks)
    return [Mend(text, verb, _lies(lacks, held), PutRight("here", place, lacks), total, lacks, where)]


def _beside(state: State, place: str) -> str:
    """Return the needle that ``place`` is being worked off together with; empty where there is none."""
    work = state.standing.work if state.standing else None
    stage = work.stages[work.at] if work is not None and not work.complete else None
    if stage is None or place not in {stage.front, stage.back}:
        return ""
    return stage.back if place == stage.front else stage.front


def _respaced(state: State, step: PickUpAndKnit, change: LaterChange, total: int) -> list[Mend]:
    lacks = change.planned - change.real
    found = respaced(step, lacks, state.plan.here(state.ledger))
    if found is None:
        return []
    _, sections = found
    text = f"Re-space step {change.step + 1}: {sections_words(sections)}"
    was = sum(one.was for one in sections)
    return [Mend(text, "PICK", _lies(lacks, was), PutRight("re-space", change.place, lacks, change.step), total)]


def _first_round(state: State, change: LaterChange) -> list[Mend] | None:
    """Return putting a band right in its first round: to the number planned, and to the nearest whole repeat."""
    found = first_rounds_on(state, change.place, change.step)
    if found is None or not change.real:
        return None
    index, band = found
    totals = [change.planned]
    repeat = band.repeat
    if repeat is not None:
        below = change.real - (change.real - repeat.plus) % repeat.of
        nearest = min((below, below + repeat.of), key=lambda total: (abs(total - change.real), total))
        if nearest not in {change.planned, change.real} and nearest > 0:
            totals.append(nearest)
    mends = []
    for total in totals:
        more = total - change.real
        if not one_row_can(more, change.real):
            continue
        verb = "INCREASE" if more > 0 else "DECREASE"
        where = f"{worked_in(band)} 1 of step {index + 1}"
        how = " evenly" if abs(more) > 1 else ""
        text = f"{verb.capitalize()} {abs(more)}{how} in {where}{', to the nearest repeat' * (total != totals[0])}"
        command = PutRight("first-round", change.place, more, index)
        mends.append(Mend(text, verb, _lies(more, change.real), command, total, more, in_a_round(band, more)))
    return mends


def _lies(change: int, of: int) -> Verdict:
    """Return how changing ``change`` of ``of`` stitches lies, by the limits of a recount."""
    share = Fraction(abs(change), max(of, 1))
    if abs(change) <= 1 or share <= FLAT:
        return Verdict.LIES_FLAT
    if share <= SHOWS:
        return Verdict.JUST_SHOWS
    return Verdict.WILL_FLARE if change > 0 else Verdict.WILL_PUCKER
