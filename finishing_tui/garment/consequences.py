"""What a difference changes further on.

The rest of the plan is run twice with the audit's own engine: from the garment as it was, and as it now is. Every later
number that differs is named. Nothing here changes anything.
"""

from dataclasses import dataclass, replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import OFF, Entry, Posting
from finishing_tui.garment.decide.mirror import foreseen
from finishing_tui.garment.decide.stages import entered, rest_of
from finishing_tui.garment.repairs import Mend, Miscount, Told, mends, told_by
from finishing_tui.garment.state import State
from finishing_tui.garment.work import StepWork
from finishing_tui.recipe.audit import Finding, Inputs, LaterChange, Stop
from finishing_tui.recipe.audit.consequences import changes, first_stop, new_findings, onward, own_findings
from finishing_tui.recipe.audit.running import AuditRun


@dataclass(frozen=True, slots=True)
class Consequences:
    """What a difference changes: later numbers, what is newly found to be wrong, and the repairs in order of sense.

    ``told``: the number that the repairs are told by, where a later one differs. ``stop``: the first step that cannot
    be done as planned. ``own``: what the plan has wrong by itself, and would have with every number that is as planned.
    """

    changes: tuple[LaterChange, ...]
    findings: tuple[Finding, ...]
    mends: tuple[Mend, ...]
    told: Told | None = None
    stop: Stop | None = None
    own: tuple[Finding, ...] = ()


def consequences(before: State, after: State, *, counted: bool = False) -> Consequences:
    """Return what going from ``before`` to ``after`` changes in what is to come; empty when it changes nothing.

    A step that was finished or left out in between would have been worked to its end by the plan. ``counted``: what
    differs was counted or left undone, and is no other plan.
    """
    try:
        real = _onward(after, after)
        planned, real = _beside(_onward(before, before if given_up(before, after) else after), real)
    except FinishingError:  # a plan whose numbers cannot be worked out is told of when its step is begun
        return Consequences((), (), ())
    differ, found = _as_written(after, changes(planned, real)), new_findings(planned, real)
    if not differ and not found:
        return Consequences((), (), ())
    stop = first_stop(after.plan.recipe, planned, real, _begun(after), counted=counted)
    if stop is not None and counted:
        differ = _up_to(stop, differ, real)
    off = miscount(before, after) if counted else None
    ways, told = mends(after, differ, off), told_by(after, differ, off)
    return Consequences(differ, found, ways, told, stop, own_findings(planned, real))


def miscount(before: State, after: State) -> Miscount | None:
    """Return the needle or holder of which a count went another way; None where it was no such count.

    The needle that an edge is being picked up onto is none: what is judged there is the section.
    """
    if given_up(before, after):
        return None
    was, now, work = before.ledger, after.ledger, after.standing.work if after.standing else None
    edges = [one for one in work.stages if one.unit == "spot" or one.pinned] if work and not work.complete else []
    walked = {one.place for one in edges}
    found = [place for place in after.plan.recipe.place if was.on(place) != now.on(place) and place not in walked]
    return Miscount(found[0], was.on(found[0]), now.on(found[0])) if len(found) == 1 else None


def _as_written(state: State, differ: tuple[LaterChange, ...]) -> tuple[LaterChange, ...]:
    """Return what differs at one step in the order of the recipe's places, whatever order a ledger has them in."""
    steps = {step: at for at, step in enumerate(dict.fromkeys(one.step for one in differ))}
    places = {place: at for at, place in enumerate(state.plan.recipe.place)}
    return tuple(sorted(differ, key=lambda one: (steps[one.step], places.get(one.place, len(places)))))


def _up_to(stop: Stop, differ: tuple[LaterChange, ...], real: AuditRun) -> tuple[LaterChange, ...]:
    """Return the numbers that differ before a step that cannot be done, else its own: none after it is real."""
    steps = [row.step for row in real.rows]
    before = steps[: steps.index(stop.step)]
    known = tuple(one for one in differ if one.step in before)
    if known or not stop.place:
        return known or differ
    return (LaterChange(stop.step, stop.title, stop.place, stop.needs, stop.there),)


def _begun(state: State) -> tuple[int, ...]:
    return tuple(index for index, one in enumerate(state.steps) if one.work is not None)


def given_up(before: State, after: State) -> tuple[int, ...]:
    """Return the steps that were still to be worked ``before``, and ``after`` are done or left out."""
    still = {"to-come", "under-way"}
    return tuple(
        index
        for index, (was, now) in enumerate(zip(before.steps, after.steps, strict=True))
        if was.status in still and now.status not in still
    )


def _beside(planned: AuditRun, real: AuditRun) -> tuple[AuditRun, AuditRun]:
    """Return both runs with the rows of those steps only that both have, in the order of the real one."""
    rows = {row.step: row for row in planned.rows}
    both = tuple(row for row in real.rows if row.step in rows)
    return replace(planned, rows=tuple(rows[row.step] for row in both)), replace(real, rows=both)


def _onward(state: State, steps_of: State) -> AuditRun:
    """Run what is to come in ``steps_of`` from the ledger of ``state``, and of every step begun there only the rest."""
    steps = [index for index in steps_of.unfinished if index != steps_of.current]
    if steps_of.current is not None:
        steps.insert(0, steps_of.current)
    begun = {
        index: foreseen(state, work) if index == state.current else work
        for index in steps
        if (work := state.steps[index].work) is not None
    }
    lost = {index: places for index, work in begun.items() if (places := _lost(work))}
    off = {index: _worked_off(work) for index, work in begun.items()}
    plan = state.plan
    inputs = Inputs(
        recipe=plan.recipe,
        size=plan.size_index,
        own=plan.own,
        gauge=plan.gauge,
        hand=plan.hand,
        wearer=plan.wearer,
    )

    def rest(guess: int) -> dict[int, tuple[Entry, ...]]:
        return {index: rest_of(work, guess) for index, work in begun.items()}

    return onward(inputs, state.ledger, steps, rest, off, lost)


def _lost(work: StepWork) -> frozenset[str]:
    """Return the places whose count nobody knows once this step is done: an edge of which nothing is known comes."""
    return frozenset(stage.place for stage in work.stages[work.at :] if stage.uncounted == "all")


def _worked_off(work: StepWork) -> int:
    """Return how many stitches a step under way has worked off by its progress."""
    return sum(one.stitches for one in entered(work) if isinstance(one, Posting) and one.to == OFF)
