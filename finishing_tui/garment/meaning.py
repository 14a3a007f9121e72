"""Whether what a journal says makes sense together: looked at once, when a garment is opened or told of.

The chain proves that nothing was changed since it was written, and ``codec`` that everything is of its type. Neither
says that this program wrote it. What is looked at here is what everything else takes for granted of a state: marks
within their stages, stretches that cover an edge, names that name something, times that are times. It is a matter of
counting and comparing; nothing is planned or worked out anew, but for the numbers of the plan.
"""

from fractions import Fraction
from itertools import pairwise

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.evolve import DoesNotFit
from finishing_tui.garment.journal import is_moment
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Progress, Standing, StepWork, Stretch
from finishing_tui.recipe.stage import Flow, Stage

MOST = 1_000_000
"""The largest number of units, stitches or spots there is in one place: ten times the largest count of a recipe."""

LONGEST_ID = 20
"""The longest id of a step, in characters: longer than those of a million steps."""

MOST_STEPS = 1_000
"""The most steps of a plan: twice what a recipe may have, for steps can be put in."""

SIDES = frozenset({"", "right", "wrong"})
"""What a side of the work may be called."""


class NoSense(ValueError):
    """Something does not make sense; the message is for programmers."""


def understood(state: State) -> State:
    """Return ``state`` if it makes sense. Raises ``DoesNotFit`` with where it does not."""
    where = "the plan"
    try:
        _plan(state.plan)
        for number, standing in enumerate(state.steps, 1):
            where = f"step {number}"
            _standing(standing)
        where = "the sittings, notes or order of steps"
        _times(state)
    except (NoSense, FinishingError, ArithmeticError) as error:
        raise DoesNotFit(
            f"what this garment's journal says of {where} does not make sense; open it with the version of finishing "
            "that wrote it"
        ) from error
    return state


def _need(holds: bool, what: str) -> None:  # noqa: FBT001  (reads as a sentence where it is called)
    if not holds:
        raise NoSense(what)


def _plan(plan: Plan) -> None:
    _need(plan.size in plan.recipe.sizes, "size")
    _need(len(plan.recipe.step) <= MOST_STEPS, "steps")
    plan.here(plan.opening())  # numbers, live stitches and gauges can be worked out
    _need(len(set(plan.ids)) == len(plan.ids), "ids")
    _need(all(0 < len(one) <= LONGEST_ID for one in plan.ids), "ids")
    _need(all(step.repeat is None or step.repeat.of >= 1 for step in plan.recipe.step), "repeat")


def _times(state: State) -> None:
    steps = range(len(state.steps))
    for sitting in state.sittings:
        _need(is_moment(sitting.began) and _moment_or_none(sitting.ended), "sitting")
    for note in state.notes:
        _need(is_moment(note.at) and len(note.step or "") <= LONGEST_ID, "note")
    _need(_moment_or_none(state.last_act), "last act")
    _need(all(index in steps and state.steps[index].work is not None for index in state.order), "order")
    _need(len(set(state.order)) == len(state.order), "order")
    _need(set(state.by_turns) <= set(state.order), "turns")
    _need(state.top >= 0 and all(group > 0 for group in state.undone), "groups")
    _need({state.ledger.posture.facing, state.ledger.posture.together} <= SIDES, "posture")
    _need(all(0 < count <= MOST for count in state.ledger.live.values()), "live stitches")


def _moment_or_none(text: str) -> bool:
    return not text or is_moment(text)


def _standing(standing: Standing) -> None:
    if standing.work is not None:
        _work(standing.work)
    else:
        _need(standing.status in {"to-come", "done", "left-out"}, "status")


def _work(work: StepWork) -> None:
    _need(len(work.stages) == len(work.progress), "stages")
    _need({work.before.posture.facing, work.before.posture.together} <= SIDES, "posture")
    titles = {stage.title for stage in work.stages}
    for stage, progress in zip(work.stages, work.progress, strict=True):
        _stage(stage, titles)
        _progress(stage, progress)


def _stage(stage: Stage, titles: set[str]) -> None:
    if stage.as_planned is not None:
        _need(stage.as_planned.unit == stage.unit and stage.as_planned.as_planned is None, "as planned")
        _stage(stage.as_planned, titles)
    _within(0, MOST, stage.units, stage.target, *(flow.stitches for flow in stage.flows))
    _need(all(_flows(flow) for flow in stage.flows), "flow")
    _within(0, stage.units, *stage.halts, *(unit for unit, _ in stage.said))
    _within(1, MOST, *(moves.first for moves in stage.moves))
    _need(not stage.mirrors or stage.mirrors in titles - {stage.title}, "mirror")
    _need(stage.unit != "item" or len(stage.items) == stage.units, "items")
    _need(stage.unit != "value" or stage.units <= 1, "value")
    _need((stage.unit == "spot") == (stage.rhythm is not None), "rhythm")
    _need(stage.rhythm is None or stage.rhythm.spots == stage.units, "spots")
    _need(not stage.bars or (len(stage.bars) == 2 and all(len(side) == stage.units for side in stage.bars)), "bars")
    _within(0, MOST, *(many for side in stage.bars for many in side))
    if stage.natural:
        _need(_ratio(stage.natural), "natural ratio")
    _need(stage.per_10cm is None or 0 < stage.per_10cm <= MOST, "gauge")


def _flows(flow: Flow) -> bool:
    return 1 <= flow.first <= flow.last <= MOST


def _ratio(text: str) -> bool:
    try:
        return 0 < Fraction(text) < 100
    except (ValueError, ZeroDivisionError):
        return False


def _progress(stage: Stage, progress: Progress) -> None:
    mark = progress.mark
    _within(0, stage.units, mark.units, progress.confirmed[1])
    _within(0, MOST, mark.loops, progress.confirmed[0])
    _within(0, 1, mark.within)
    _need(not mark.within or (stage.unit == "spot" and mark.units < stage.units), "within")
    _within(1, stage.units, *(pair for pair, _ in progress.doubled))
    _need(bool(progress.stretches) == (stage.unit == "spot"), "stretches")
    if progress.stretches:
        _stretches(stage.units, progress.stretches)


def _stretches(spots: int, stretches: tuple[Stretch, ...]) -> None:
    _need(stretches[0].start == 0, "first stretch")
    _need(all(one.start < other.start for one, other in pairwise(stretches)), "order of stretches")
    ends = [*(stretch.start for stretch in stretches[1:]), spots]
    for stretch, end in zip(stretches, ends, strict=True):
        _need(stretch.start <= end <= stretch.start + stretch.rhythm.spots <= MOST, "a stretch that covers its spots")
        _within(0, MOST, stretch.loops)
        for spot, loops in (*stretch.moved, *stretch.strayed):
            _need(stretch.start < spot <= end and 0 <= loops <= 2, "stray")


def _within(least: int, most: int, *numbers: int) -> None:
    _need(all(least <= number <= most for number in numbers), f"from {least} to {most}: {numbers[:20]}")
