"""The smallest repairs of a difference, in order of sense: each a command, carried out only when it is chosen."""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.judging import FLAT, SHOWS, Verdict
from finishing_tui.craft.recount_words import VERDICTS
from finishing_tui.craft.words import percent, plural, times
from finishing_tui.garment.commands import PutRight
from finishing_tui.garment.decide.first_round import first_rounds_on
from finishing_tui.garment.decide.respacing import respaced, sections_words
from finishing_tui.garment.state import State
from finishing_tui.recipe.audit import LaterChange
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit


@dataclass(frozen=True, slots=True)
class Mend:
    """One repair: in a few words, what it does to the look, and how to ask for it."""

    text: str
    look: str
    command: PutRight


def mends(state: State, differ: tuple[LaterChange, ...]) -> tuple[Mend, ...]:
    """Return the smallest repairs of the first number that differs, and last to carry on as it is."""
    found: list[Mend] = []
    for change in differ[:1]:
        found += _here(state, change.place, change.planned - change.real)
    for change in differ:
        step = state.plan.step(change.step)
        to_come = state.steps[change.step].status == "to-come"
        if isinstance(step, PickUpAndKnit) and change.place == step.onto and to_come:
            found += _respaced(state, step, change)
            break
    for change in differ:
        if (first := _first_round(state, change)) is not None:
            found += first
            break
    command = PutRight("as-it-is", differ[0].place if differ else "", 0)
    return (*found, Mend("carry on as it is", "every number above stays as it now is", command))


def _here(state: State, place: str, lacks: int) -> list[Mend]:
    held = state.ledger.on(place)
    if not held or not lacks or held + lacks < 1 or -lacks > held // 2:
        return []
    name = state.plan.recipe.place[place].text if place in state.plan.recipe.place else place
    did = f"make {lacks}" if lacks > 0 else f"work two together {times(-lacks, figures=True)}"
    return [Mend(f"{did} on the {name}, here and now", _look(lacks, held), PutRight("here", place, lacks))]


def _respaced(state: State, step: PickUpAndKnit, change: LaterChange) -> list[Mend]:
    lacks = change.planned - change.real
    found = respaced(step, lacks, state.plan.here(state.ledger))
    if found is None:
        return []
    _, sections = found
    text, was = f"re-space step {change.step + 1}: {sections_words(sections)}", sum(one.was for one in sections)
    return [Mend(text, _look(lacks, was), PutRight("re-space", change.place, lacks, change.step))]


def _first_round(state: State, change: LaterChange) -> list[Mend] | None:
    """Return putting a band right in its first round: to the number planned, and to the nearest whole repeat."""
    found = first_rounds_on(state, change.place, change.step)
    if found is None or not change.real:
        return None
    index, band = found
    lacks = change.planned - change.real
    text = f"put {lacks:+d} right evenly in the first round of step {index + 1}: {change.planned}"
    mends = [Mend(text, _look(lacks, change.real), PutRight("first-round", change.place, lacks, index))]
    repeat = band.repeat
    if repeat is not None:
        below = change.real - (change.real - repeat.plus) % repeat.of
        nearest = min((below, below + repeat.of), key=lambda total: (abs(total - change.real), total))
        if nearest not in {change.planned, change.real} and nearest > 0:
            to = nearest - change.real
            text = f"take the nearest repeat in the first round of step {index + 1}: {to:+d}, {nearest}"
            mends.append(Mend(text, _look(to, change.real), PutRight("first-round", change.place, to, index)))
    return mends


def _look(change: int, of: int) -> str:
    """Say what changing ``change`` of ``of`` stitches does to the look, by the limits of a recount."""
    if abs(change) <= 1:
        return f"{plural(abs(change), 'stitch')} of {of}: does not show"
    share = Fraction(abs(change), max(of, 1))
    known = Verdict.LIES_FLAT if share <= FLAT else Verdict.JUST_SHOWS if share <= SHOWS else None
    verdict = "will show" if known is None else VERDICTS[known]
    return f"{abs(change)} of {of} ({percent(share)}): {verdict}"
