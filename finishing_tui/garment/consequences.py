"""What a difference changes further on, and the smallest repairs.

The rest of the plan is run twice with the audit's own engine: from the garment as it was, and as it now is. Every later
number that differs is named. Nothing here changes anything: a repair is a command, carried out only when it is chosen.
"""

from dataclasses import dataclass, replace
from fractions import Fraction

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.judging import FLAT, SHOWS
from finishing_tui.craft.words import percent, plural
from finishing_tui.garment.commands import PutRight
from finishing_tui.garment.decide.respacing import respaced
from finishing_tui.garment.decide.stages import rest_of
from finishing_tui.garment.state import State
from finishing_tui.recipe.audit import Change, Finding, Inputs, Run, changes, new_findings, onward
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.work import Work as WorkStep


@dataclass(frozen=True, slots=True)
class Mend:
    """One repair: in a few words, what it does to the look, and how to ask for it."""

    text: str
    look: str
    command: PutRight


@dataclass(frozen=True, slots=True)
class Consequences:
    """What a difference changes: later numbers, what is newly found to be wrong, and the repairs in order of sense."""

    changes: tuple[Change, ...]
    findings: tuple[Finding, ...]
    mends: tuple[Mend, ...]


def consequences(before: State, after: State) -> Consequences:
    """Return what going from ``before`` to ``after`` changes in what is to come; empty when it changes nothing.

    A step that was finished or left out in between would have been worked to its end by the plan.
    """
    try:
        real = _onward(after, after)
        planned, real = _beside(_onward(before, before if given_up(before, after) else after), real)
    except FinishingError:  # a plan whose numbers cannot be worked out is told of when its step is begun
        return Consequences((), (), ())
    differ, found = changes(planned, real), new_findings(planned, real)
    if not differ and not found:
        return Consequences((), (), ())
    return Consequences(differ, found, _mends(after, differ))


def given_up(before: State, after: State) -> tuple[int, ...]:
    """Return the steps that were still to be worked ``before``, and ``after`` are done or left out."""
    still = {"to come", "under way"}
    return tuple(
        index
        for index, (was, now) in enumerate(zip(before.steps, after.steps, strict=True))
        if was.status in still and now.status not in still
    )


def _beside(planned: Run, real: Run) -> tuple[Run, Run]:
    """Return both runs with the rows of those steps only that both have, in the order of the real one."""
    rows = {row.step: row for row in planned.rows}
    both = tuple(row for row in real.rows if row.step in rows)
    return replace(planned, rows=tuple(rows[row.step] for row in both)), replace(real, rows=both)


def _onward(state: State, steps_of: State) -> Run:
    """Run what is to come in ``steps_of`` from the ledger of ``state``, and of every step begun there only the rest."""
    steps = [
        index
        for index, standing in enumerate(steps_of.steps)
        if index != steps_of.current and standing.status in {"to come", "under way"} and steps_of.plan.is_for(index)
    ]
    if steps_of.current is not None:
        steps.insert(0, steps_of.current)
    rest = {index: rest_of(work) for index in steps if (work := state.steps[index].work) is not None}
    plan = state.plan
    inputs = Inputs(recipe=plan.recipe, size=plan.size_index, own=plan.own, gauge=plan.gauge, hand=plan.hand)
    return onward(inputs, state.ledger, steps, rest)


def _mends(state: State, differ: tuple[Change, ...]) -> tuple[Mend, ...]:
    """Return the smallest repairs of the first number that differs, and last to carry on as it is."""
    mends: list[Mend] = []
    for change in differ[:1]:
        lacks = change.planned - change.real
        mends += _here(state, change.place, lacks)
    for change in differ:
        step = state.plan.step(change.step)
        to_come = state.steps[change.step].status == "to come"
        if isinstance(step, PickUpAndKnit) and change.place == step.onto and to_come:
            mends += _respaced(state, change)
            break
    for change in differ:
        if (first := _first_round(state, change)) is not None:
            mends += first
            break
    command = PutRight("as it is", differ[0].place if differ else "", 0)
    return (*mends, Mend("carry on as it is", "every number above stays as it now is", command))


def _here(state: State, place: str, lacks: int) -> list[Mend]:
    held = state.ledger.on(place)
    if not held or not lacks or held + lacks < 1 or -lacks > held // 2:
        return []
    name = state.plan.recipe.place[place].text if place in state.plan.recipe.place else place
    did = f"make {lacks}" if lacks > 0 else f"work two together {_times(-lacks)}"
    return [Mend(f"{did} on the {name}, here and now", _look(lacks, held), PutRight("here", place, lacks))]


def _respaced(state: State, change: Change) -> list[Mend]:
    step, lacks = state.plan.step(change.step), change.planned - change.real
    if not isinstance(step, PickUpAndKnit):
        return []
    found = respaced(step, lacks, state.plan.here(state.ledger))
    if found is None:
        return []
    _, told, was = found
    text = f"re-space step {change.step + 1}: {told}"
    return [Mend(text, _look(lacks, was), PutRight("re-space", change.place, lacks, change.step))]


def _first_round(state: State, change: Change) -> list[Mend] | None:
    """Return putting a band right in its first round: to the number planned, and to the nearest whole repeat."""
    index = next(
        (
            at
            for at, standing in enumerate(state.steps)
            if standing.status == "to come"
            and isinstance(step := state.plan.step(at), WorkStep)
            and step.on == change.place
            and at >= change.step
        ),
        None,
    )
    if index is None or not change.real:
        return None
    lacks = change.planned - change.real
    text = f"put {lacks:+d} right evenly in the first round of step {index + 1}: {change.planned}"
    mends = [Mend(text, _look(lacks, change.real), PutRight("first round", change.place, lacks, index))]
    repeat = state.plan.step(index).repeat
    if repeat is not None:
        below = change.real - (change.real - repeat.plus) % repeat.of
        nearest = min((below, below + repeat.of), key=lambda total: (abs(total - change.real), total))
        if nearest not in {change.planned, change.real} and nearest > 0:
            to = nearest - change.real
            text = f"take the nearest repeat in the first round of step {index + 1}: {to:+d}, {nearest}"
            mends.append(Mend(text, _look(to, change.real), PutRight("first round", change.place, to, index)))
    return mends


def _look(change: int, of: int) -> str:
    """Say what changing ``change`` of ``of`` stitches does to the look, by the limits of a recount."""
    if abs(change) <= 1:
        return f"{plural(abs(change), 'stitch')} of {of}: does not show"
    share = Fraction(abs(change), max(of, 1))
    verdict = "lies flat" if share <= FLAT else "just shows" if share <= SHOWS else "will show"
    return f"{abs(change)} of {of} ({percent(share)}): {verdict}"


def _times(count: int) -> str:
    return "once" if count == 1 else f"{count} times"
