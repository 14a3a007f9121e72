"""Deciding about the two keys of the work: the next thing was done, the other thing was done."""

from dataclasses import replace

from finishing_tui.craft.ledger import OFF, Entry, Posting, TailEntry
from finishing_tui.craft.words import listing
from finishing_tui.garment.commands import Other, Refusal
from finishing_tui.garment.decide.stages import (
    begun,
    going_on,
    passed,
    uncounted,
    under_way,
    with_stage,
    work_on,
)
from finishing_tui.garment.decide.steps import begun_as
from finishing_tui.garment.events import AnyAct, Change, Progressed, Strayed
from finishing_tui.garment.labels import Label
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import (
    against_plan,
    choices,
    loop_at,
    other_at,
    planned,
    run_at,
    run_end,
    spot_at,
    strayed_in_run,
    stretch_at,
)
from finishing_tui.garment.work import Progress, Reached, StepWork, Stretch
from finishing_tui.recipe.kinds.close_hole import closed_with
from finishing_tui.recipe.kinds.seam import two_at_once
from finishing_tui.recipe.stage import Stage


def press(state: State) -> tuple[AnyAct, ...] | Refusal:
    """Do the next unit of the stage under way; refused at the target, for it never rolls on into the next step."""
    if state.current is None:
        return Refusal("every step is done")
    if not begun(state):
        return begun_as(state, state.current, "step-begun")
    _, work = under_way(state)
    if work.complete:
        return Refusal("this step is complete: check it, then finish it")
    stage, progress = work.stages[work.at], work.progress[work.at]
    if stage.unit == "value":
        return Refusal(f"type what it measures, in {stage.of}")
    if stage.unit == "pair" and (refusal := _unmatched(state, stage, progress.mark)):
        return refusal
    after = next_mark(state, stage, progress)
    return uncounted(state, stage, after) or work_on(state, after)


def is_told_whole(stage: Stage) -> bool:
    """Return whether hands go through a stage without a tap for each: a join, a seam, a bind off."""
    return stage.unit == "pair" or (stage.unit == "stitch" and stage.act == "bind-off")


def finish_all(state: State) -> tuple[AnyAct, ...] | Refusal:
    """Do all that is left of a stage that may be told as a whole; the two needles of a join must match for it."""
    if not begun(state):
        return Refusal("nothing is under way yet")
    _, work = under_way(state)
    if work.complete:
        return Refusal("this step is complete: check it, then finish it")
    stage, mark = work.stages[work.at], work.progress[work.at].mark
    if not is_told_whole(stage):
        return Refusal("this is counted one by one")
    if stage.empties and state.ledger.on(stage.front) != state.ledger.on(stage.back):
        name = state.plan.here(state.ledger).name
        sides = (f"the {name(side)} has {state.ledger.on(side)} left" for side in (stage.front, stage.back))
        return Refusal(f"{' and '.join(sides)}: count both, or work two together first")
    done = Reached(stage.units, 0, stage.units)
    label = Label("whole-lot", names=(stage.title,), numbers=(stage.units - mark.units,))
    return work_on(state, done, label=label)


def next_mark(state: State, stage: Stage, progress: Progress) -> Reached:
    """Return the mark of ``stage`` after one press at the pace that was chosen."""
    if stage.unit != "spot":
        units = progress.mark.units + 1
        return Reached(units, 0, units)
    if state.pace == "spot" or (state.pace == "run" and strayed_in_run(progress)):
        return spot_at(progress)
    if state.pace == "run":
        return run_at(stage, progress)
    return loop_at(stage, progress)


def other(state: State, command: Other) -> tuple[AnyAct, ...] | Refusal:
    """Record that the other thing was done at the next unit: of spots, of pairs, or with another tail at a hole."""
    if not begun(state):
        return Refusal("nothing is started yet")
    _, work = under_way(state)
    if work.complete:
        return Refusal("this step is complete: check it, then finish it")
    stage = work.stages[work.at]
    if stage.unit == "spot":
        return _stray(state, work, stage)
    if stage.unit == "pair":
        return _double(state, work, stage, command.side)
    if stage.act == "close":
        return _another_tail(state, work, stage, command.side)
    return Refusal("there is no other choice here")


def _otherwise(
    state: State, at: int, loops: int, entries: tuple[Entry, ...], changes: tuple[Change, ...], label: Label
) -> tuple[Strayed]:
    """Return the act of a unit that was done in another way than planned."""
    step, _ = under_way(state)
    named = state.plan.ids[step]
    return (Strayed(step=named, at=at, loops=loops, entries=entries, changes=changes, label=label),)


def _another_tail(state: State, work: StepWork, stage: Stage, tail: str) -> tuple[AnyAct, ...] | Refusal:
    """Close a hole with another tail that hangs: that one gets shorter, and the planned one stays as long as it is."""
    if tail not in other_tails(state, stage):
        hang = listing(other_tails(state, stage)) or "none"
        return Refusal(f"no other tail named {tail!r} hangs there; there is: {hang}" if tail else "which tail?")
    index = work.at
    closed = replace(closed_with(stage.title, tail), opening=stage.opening, as_planned=stage.as_planned or stage)
    changed = with_stage(work, index, closed)
    mark = Reached(1, 0, 1)
    entries = passed(changed, index, mark)
    after = changed.with_progress(index, replace(work.progress[index], mark=mark))
    return _otherwise(state, 1, 1, entries, going_on(state, after), Label("other-tail", names=(stage.title, tail)))


def other_tails(state: State, stage: Stage) -> tuple[str, ...]:
    """Return the tails that hang and could close a hole instead of the one that is to."""
    planned = {entry.tail for item in stage.items for entry in item.entries if isinstance(entry, TailEntry)}
    return tuple(tail for tail in state.ledger.tails if tail not in planned)


def _stray(state: State, work: StepWork, stage: Stage) -> tuple[AnyAct, ...]:
    step, index = state.current or 0, work.at
    progress = work.progress[index]
    mark, spot = progress.mark, progress.mark.units + 1
    plan, really = planned(progress, spot), other_at(progress)
    after = _made_up(stage, _strayed(progress, spot, really), spot, plan - really)
    after = replace(after, mark=Reached(spot, 0, mark.loops - mark.within + really))
    entries = passed(work, index, after.mark)
    change = Progressed(state.plan.ids[step], index, progress, after)
    label = Label(against_plan(really, plan), names=(stage.spot,), numbers=(spot,))
    return _otherwise(state, spot, really, entries, (change,), label)


def _strayed(progress: Progress, spot: int, loops: int) -> Progress:
    stretch = stretch_at(progress, spot)
    return _with_stretch(progress, stretch, replace(stretch, strayed=(*stretch.strayed, (spot, loops))))


def _made_up(stage: Stage, progress: Progress, spot: int, owed: int) -> Progress:
    """Return the progress with one spot's plan changed to make up for a stray at ``spot``, at the next end of a run.

    ``owed``: loops to make up for, 1 or -1. Where no later spot can take it, nothing changes: the count will tell.
    """
    start = spot + 1
    while start <= stage.units:
        end = min(run_end(progress, start), stage.units)
        for candidate in range(end, start - 1, -1):
            loops = planned(progress, candidate) + owed
            ends = stage.ends == "closed" and candidate == stage.units  # a closed end stays picked
            if loops in choices(progress, candidate) and not (ends and not loops):
                stretch = stretch_at(progress, candidate)
                kept = tuple(pair for pair in stretch.moved if pair[0] != candidate)
                return _with_stretch(progress, stretch, replace(stretch, moved=(*kept, (candidate, loops))))
        start = end + 1
    return progress


def _with_stretch(progress: Progress, old: Stretch, new: Stretch) -> Progress:
    return replace(progress, stretches=tuple(new if one is old else one for one in progress.stretches))


def _double(state: State, work: StepWork, stage: Stage, side: str) -> tuple[AnyAct, ...] | Refusal:
    step, index = state.current or 0, work.at
    if stage.empties and state.ledger.on(stage.front) == state.ledger.on(stage.back):
        return Refusal(f"both needles hold {state.ledger.on(stage.front)}: there's nothing to work together")
    if side not in {stage.front, stage.back}:
        names = f"the {stage.front} or the {stage.back}" if stage.bars else "the near one or the far one"
        return Refusal(f"two {'at once from' if stage.bars else 'together on'} which: {names}?")
    progress = work.progress[index]
    units = progress.mark.units + 1
    if stage.bars:
        return _two_bars(state, work, stage, side)
    other_side = stage.back if side == stage.front else stage.front
    if not stage.empties and state.ledger.on(side) <= stage.units - progress.mark.units:
        return Refusal("that needle has just enough for the pairs left; two together would leave one short")
    if stage.empties and state.ledger.on(side) - state.ledger.on(other_side) < 1:
        return Refusal("that needle is not the longer one")
    refusal = _unmatched(state, stage, progress.mark)
    if refusal and state.ledger.on(side) - state.ledger.on(other_side) > stage.units - progress.mark.units:
        return refusal
    after = replace(progress, mark=Reached(units, 0, units), doubled=(*progress.doubled, (units, side)))
    extra: Entry = Posting(side, OFF, 1)
    entries = (extra, *passed(work, index, after.mark))
    state.ledger.enter(*entries)  # refused here, and not when it is entered
    change = Progressed(state.plan.ids[step], index, progress, after)
    label = Label("two-together", numbers=(units,))
    return _otherwise(state, units, 2, entries, (change,), label)


def _two_bars(state: State, work: StepWork, stage: Stage, side: str) -> tuple[AnyAct, ...] | Refusal:
    """Take two bars of one side of a seam at once, and share out anew what is left of the two."""
    index = work.at
    units = work.progress[index].mark.units + 1
    taken = replace(two_at_once(stage, units, side), as_planned=stage.as_planned or stage)
    eased = with_stage(work, index, taken)
    mark = Reached(units, 0, units)
    entries = passed(eased, index, mark)
    after = eased.with_progress(index, replace(work.progress[index], mark=mark))
    label = Label("two-at-once", names=(side,), numbers=(units,))
    return _otherwise(state, units, 2, entries, going_on(state, after), label)


def _unmatched(state: State, stage: Stage, mark: Reached) -> Refusal | None:
    """Refuse a pair of a join after which stitches of one needle would be left without a partner."""
    front, back = state.ledger.on(stage.front), state.ledger.on(stage.back)
    pairs = min(front, back, stage.units - mark.units)
    if not stage.empties or abs(front - back) < pairs or front == back:
        return None
    name = state.plan.here(state.ledger).name
    long = name(stage.front if front > back else stage.back)
    left = f"the {name(stage.front)} has {front} left and the {name(stage.back)} {back}"
    if abs(front - back) > pairs:
        return Refusal(f"{left}, more than two together can take up: count both, or work some of the {long} off first")
    return Refusal(f"{left}: first work two together on the {long}")
