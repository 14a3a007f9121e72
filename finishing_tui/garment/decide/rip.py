"""Deciding about ripping back: taking work out is an act of its own, with reverse postings, and stays recorded."""

from bisect import bisect_left
from collections.abc import Iterable, Iterator
from contextlib import suppress
from dataclasses import replace

from finishing_tui.craft.counts import span
from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.going_on import go_on
from finishing_tui.craft.spacing import Ends
from finishing_tui.craft.words import listing, plural
from finishing_tui.garment.commands import Refusal, TakeOut
from finishing_tui.garment.decide.difference import difference
from finishing_tui.garment.decide.first_round import mended_first_round
from finishing_tui.garment.decide.mirror import left_by
from finishing_tui.garment.decide.stages import turned, with_stage
from finishing_tui.garment.decide.taken_out import taken_out
from finishing_tui.garment.events import AnyAct, Replanned, RippedBack, Stood
from finishing_tui.garment.labels import Label
from finishing_tui.garment.pinned import taken_back
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import cut_at, explained_from, loops_up_to, picks_behind, skips_first
from finishing_tui.garment.work import Progress, Reached, Standing, StepWork, Stretch, fresh
from finishing_tui.recipe.kinds.seam import unsewn
from finishing_tui.recipe.stage import Stage


def rip_back(state: State, command: TakeOut) -> tuple[AnyAct, ...] | Refusal:
    """Take work out to a unit of a stage of a step, naming what falls with it when that is more than this step."""
    step = command.step
    if not 0 <= step < len(state.steps) or (work := state.steps[step].work) is None:
        return Refusal(f"step {step + 1} is not started; there is nothing to rip back")
    if not 0 <= command.stage < len(work.stages):
        return Refusal(f"step {step + 1} has no part {command.stage + 1}")
    stage, mark = work.stages[command.stage], work.progress[command.stage].mark
    if command.stage > work.at or not 0 <= command.units <= mark.units:
        return Refusal(f"{stage.title} is at {mark.units}; rip back to 0 to {mark.units}")
    fell = state.order[state.order.index(step) + 1 :]
    after = _to(work, command.stage, command.units)
    if stage.bars and command.units < mark.units:
        after = _seam_back(state, step, after, command.stage)
    entries = difference(state.ledger, taken_out(state, step, after, fell))
    standing = Standing("under-way", after)
    if standing == state.steps[step] and step == state.current and not fell:
        return Refusal("you are already there")
    if fell and not command.sure:
        numbers = listing([str(one + 1) for one in fell])
        steps = f"step{'s' if fell[1:] else ''} {numbers}"
        return Refusal(f"this undoes {steps} too", replace(command, sure=True), "rips back")
    ids = state.plan.ids
    changes = [Stood(ids[one], state.steps[one], Standing()) for one in reversed(fell)]
    changes.append(Stood(ids[step], state.steps[step], standing))
    to, label = _where(stage, after.progress[command.stage].mark)
    return (
        RippedBack(
            step=ids[step],
            to=to,
            fell=tuple(ids[one] for one in fell),
            entries=entries,
            changes=tuple(changes),
            turned=turned(state, step) if state.current != step else None,
            label=label,
        ),
        *_mending_back(state, changes),
    )


def _mending_back(state: State, changes: Iterable[Stood]) -> Iterator[Replanned]:
    """Yield the changes of plan that take back what fallen recounts had left to the first round of a band."""
    fallen = list(state.steps)
    owed: dict[str, int] = {}
    indexes = [state.plan.index_of(change.step) for change in changes]
    first = min(indexes)
    for index, change in zip(indexes, changes, strict=True):
        fallen[index] = change.after
        for place, short in (*_short(change.after, 1), *_short(change.before, -1)):
            owed[place] = owed.get(place, 0) + short
    for place, short in owed.items():
        seen = replace(state, steps=tuple(fallen))
        mended = mended_first_round(seen, first, place, short, only_mended=True) if short else None
        if mended is not None:
            state = replace(state, plan=mended.change(state.plan))
            yield mended


def _short(standing: Standing, sign: int) -> Iterator[tuple[str, int]]:
    """Yield (place, stitches) that recounts of a step have left to the band, times ``sign``."""
    if standing.work is not None:
        for index, stage in enumerate(standing.work.stages):
            yield stage.place, sign * left_by(standing.work, index)


def _where(stage: Stage, mark: Reached) -> tuple[Label, Label]:
    """Return the point that a stage was taken out to, and what taking it out to there was."""
    name, numbers = (stage.title,), (mark.units,)
    if not mark.units:
        return Label("start", names=name), Label("ripped-to-start", names=name)
    if stage.unit == "spot":
        name = (stage.spot,)
        return Label("spot", names=name, numbers=numbers), Label("ripped-to-spot", names=name, numbers=numbers)
    return Label("unit", names=name, numbers=numbers), Label("ripped-to-unit", names=name, numbers=numbers)


def _to(work: StepWork, index: int, units: int) -> StepWork:
    """Return the work as it stands after taking it out to ``units`` units of the stage at ``index``."""
    stages, progress = list(work.stages), list(work.progress)
    stages[index], progress[index] = _back(stages[index], progress[index], units)
    for later in range(index + 1, len(stages)):
        stages[later] = _as_begun(stages[later])
        progress[later] = fresh(stages[later])
    return replace(work, stages=tuple(stages), progress=tuple(progress))


def _seam_back(state: State, step: int, work: StepWork, index: int) -> StepWork:
    """Return a seam that was taken out with what is left of its two sides as it goes on from there."""
    stage = work.stages[index]
    planned = (stage.as_planned,) if stage.as_planned else tuple[Stage, ...]()
    with suppress(FinishingError):  # a journal of before that was kept; the recipe may have been changed since
        planned = planned or state.plan.step(step).stages(state.plan.here(work.before))
    sides = [sum(taken) for taken in stage.bars]
    same = next((one for one in planned if [sum(taken) for taken in one.bars] == sides), None)
    return with_stage(work, index, unsewn(stage, work.progress[index].mark.units, same))


def _as_begun(stage: Stage) -> Stage:
    """Return the stage with the target it began with: what a recount left to the first round is picked after all."""
    if stage.pinned:
        return stage.as_planned or stage
    return stage if stage.rhythm is None else replace(stage, target=stage.rhythm.stitches)


def _back(stage: Stage, progress: Progress, units: int) -> tuple[Stage, Progress]:
    mark = progress.mark
    if stage.pinned:
        return taken_back(stage, progress, units)
    if stage.unit != "spot":
        doubled = tuple(pair for pair in progress.doubled if pair[0] <= units)
        value = progress.value if units else ""
        if stage.act == "close" and not units:
            stage = stage.as_planned or stage
        return stage, replace(progress, mark=Reached(units, 0, units), doubled=doubled, value=value)
    if not units:
        stage = _as_begun(stage)
        return stage, fresh(stage)
    if units == mark.units:
        return stage, replace(progress, mark=Reached(units, 0, mark.loops - mark.within))
    confirmed = progress.confirmed
    if units < confirmed[1]:  # the recount falls too
        stage, confirmed = _as_begun(stage), (0, 0)
    loops = _loops_left(progress, units)
    kept = tuple(cut_at(one, units) for one in progress.stretches if one.start < units)
    after = Progress(Reached(units, 0, loops), kept, confirmed)
    left, spots = stage.target - loops, stage.units - units
    planned = loops_up_to(after, stage.units) - loops_up_to(after, units)
    if planned != left and 0 <= left <= 2 * spots:
        ends: Ends = "last" if stage.ends == "closed" else "open"
        behind, mirrored = picks_behind(after, units), skips_first(stage, progress, units)
        rest = go_on(left, spots, style=stage.style, ends=ends, behind=behind, skips_first=mirrored)
        after = replace(after, stretches=(*kept, Stretch(units, rest, loops=loops)))
    return stage, after


def spot_with_left(stage: Stage, progress: Progress, loops: int) -> int:
    """Return the spot at which ``loops`` are left of a section: that of the last of them.

    Raises ``Impossible`` where that is within a spot, or nobody knows at which: it names the two nearest numbers.
    """
    mark = progress.mark
    most = mark.loops - mark.within
    if not 0 <= loops <= most:
        raise Impossible(f"{stage.title} has {plural(most, 'stitch')}: rip back to {span(0, most, loops)}")
    spot = bisect_left(range(mark.units), loops, key=lambda units: _loops_left(progress, units))
    found = most if spot == mark.units else _loops_left(progress, spot)
    if found == loops:
        return spot
    below = _loops_left(progress, spot - 1)
    raise Impossible(f"{stage.spot} {spot} took {found - below} at once: rip back to {below} or to {found}")


def _loops_left(progress: Progress, units: int) -> int:
    """Return the loops left at spot ``units``: by presses where they explain the count, else evenly since the last one.

    Between the last confirmed count and here the loops are taken as evenly spread (design.md, section 4.2).
    """
    mark = progress.mark
    loops, spot = explained_from(progress)
    if units >= spot:
        return loops + loops_up_to(progress, units) - loops_up_to(progress, spot)
    loops, spot = progress.confirmed if progress.confirmed[1] < mark.units else (0, 0)
    if units <= spot:
        return min(loops_up_to(progress, units), loops)
    return loops + (mark.loops - mark.within - loops) * (units - spot) // (mark.units - spot)
