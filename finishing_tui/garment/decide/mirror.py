"""Deciding how the second of two sides goes: as the first was really worked, not as it was planned.

Where the presses explain the first side, its real spots are mirrored. Between counts that they do not explain, the
count is kept and spread evenly in that stretch. With other spots than the first side it gets the same count, evenly.
It is resolved when the first side is done, and fixed in the event.
"""

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.rhythm import Rhythm
from finishing_tui.craft.spacing import say, space
from finishing_tui.craft.walked import rhythm_of
from finishing_tui.garment.commands import ChooseMirror, Refusal
from finishing_tui.garment.decide.first_round import mended_first_round
from finishing_tui.garment.decide.stages import begun, going_on, under_way, with_stage
from finishing_tui.garment.edge_length import half_of
from finishing_tui.garment.events import Act, AnyAct, Event, Marked, Mirrored, Stood
from finishing_tui.garment.evolve import applied
from finishing_tui.garment.labels import Deed, Label
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import really_done, to_come
from finishing_tui.garment.ways import counted_stage
from finishing_tui.garment.work import Progress, Reached, Standing, StepWork, fresh
from finishing_tui.recipe.stage import Stage, loops_onto


def with_mirrors(state: State, events: tuple[Event, ...]) -> tuple[Event, ...]:
    """Return ``events`` with the second side resolved, where they end the first side or change how it ended."""
    acts = [event for event in events if isinstance(event, Act)]
    if len(acts) != len(events) or not begun(state):
        return events
    step, before = under_way(state)
    if not [stage for stage in before.stages if stage.mirrors] or _only_goes_on(before, acts):
        return events
    then = applied(state, acts)
    after = then.steps[then.plan.index_of(state.plan.ids[step])]
    if after.work is None or after.status != "under-way":
        return events
    work = after.work
    for index, first in _pairs(work):
        if work.progress[first] != before.progress[first] and _complete(work, first):
            with suppress(FinishingError):  # what can no longer be planned stays as it is
                work = _with(work, index, resolved(state, work, index, first))
    if work == after.work:
        return events
    change = Stood(state.plan.ids[step], after, Standing(after.status, work))
    last = acts[-1]
    return (*acts[:-1], replace(last, changes=(*last.changes, change)))


def _only_goes_on(work: StepWork, acts: Sequence[Act]) -> bool:
    """Return whether ``acts`` change nothing but how far sections are that do not end with them."""
    for act in acts:
        for change in act.changes:
            if not isinstance(change, Marked) or change.after.units >= work.stages[change.stage].units:
                return False
    return True


def choose_mirror(state: State, command: ChooseMirror) -> tuple[AnyAct, ...] | Refusal:
    """Let the section about to be begun follow the first side as worked, or as planned."""
    found = choice(state)
    if found is None:
        return Refusal("you are not about to start a section that mirrors one worked off plan")
    step, work = under_way(state)
    index, stage = found
    if stage.as_worked == command.as_worked:
        return ()
    changed = resolved(state, work, index, _first(work, stage)) if command.as_worked else planned(state, index)
    after = _with(work, index, changed)
    what: Deed = "mirrored-as-worked" if command.as_worked else "mirrored-as-planned"
    told = Mirrored(
        step=state.plan.ids[step],
        as_worked=command.as_worked,
        changes=going_on(state, after),
        label=Label(what, names=(stage.title,)),
    )
    first = _first(work, stage)
    left = left_by(after, first) - left_by(work, first)
    mended = mended_first_round(state, step, stage.place, left, only_mended=True) if left else None
    return (told,) if mended is None else (told, mended)


def sides_to_come(work: StepWork, index: int) -> int:
    """Return for how many sides a difference that a count leaves in the section at ``index`` counts.

    It is two where a section that is not begun mirrors it: that one follows it as it is worked.
    """
    title = work.stages[index].title
    return 2 if any(work.stages[later].mirrors == title for later, _ in _pairs(work)) else 1


def left_by(work: StepWork, index: int) -> int:
    """Return how many stitches the section at ``index`` leaves to the first round to add (negative: to take away).

    They count twice where its mirror follows it, or is going to.
    """
    stage = work.stages[index]
    if stage.pinned:
        return (stage.as_planned.target if stage.as_planned else stage.target) - stage.target
    if stage.rhythm is None:
        return 0
    return (stage.rhythm.stitches - stage.target) * _sides(work, stage, done=_complete(work, index))


def short_by(work: StepWork) -> int:
    """Return how many stitches fewer than planned the section to be counted comes to, with what follows it."""
    index = counted_stage(work)
    if index is None:
        return 0
    stage, progress = work.stages[index], work.progress[index]
    mark, done = progress.mark, _complete(work, index)
    if stage.pinned and not done:
        return 0  # what a part is short of goes into the next one
    comes = mark.loops if done else mark.loops - mark.within + to_come(stage, progress, mark.units)
    return (stage.target - comes) * _sides(work, stage, done=done)


def _sides(work: StepWork, stage: Stage, *, done: bool) -> int:
    """Return for how many sections what a section comes to counts: two where its mirror follows it."""
    return 2 if any(one.mirrors == stage.title and (one.as_worked or not done) for one in work.stages) else 1


def foreseen(state: State, work: StepWork) -> StepWork:
    """Return the work of the step under way with every second side as it will be, if the first goes on by its plan."""
    for index, first in _pairs(work):
        stage, progress = work.stages[first], work.progress[first]
        if stage.unit != "spot" or _complete(work, first):
            continue  # what is done was followed already
        mark = progress.mark
        ended = Reached(stage.units, 0, mark.loops - mark.within + to_come(stage, progress, mark.units))
        with suppress(FinishingError):
            at_its_end = work.with_progress(first, replace(progress, mark=ended))
            work = _with(work, index, resolved(state, at_its_end, index, first))
    return work


def like_first(work: StepWork, index: int, spots: int, target: int) -> Rhythm | None:
    """Return the mirror of what was worked on the first side, where the one at ``index`` has as many of both."""
    title = work.stages[index].mirrors
    for first, stage in enumerate(work.stages[:index]):
        if title and stage.title == title and _complete(work, first):
            worked = as_worked(stage, work.progress[first]).mirrored()
            return worked if (worked.spots, worked.stitches) == (spots, target) else None
    return None


def followed(state: State, work: StepWork) -> StepWork:
    """Return the work with every second side that is not begun as the mirror of a first one that is done."""
    for index, first in _pairs(work):
        if _complete(work, first):
            with suppress(FinishingError):  # what can no longer be planned stays as it is
                work = _with(work, index, resolved(state, work, index, first))
    return work


def choice(state: State) -> tuple[int, Stage] | None:
    """Return the section about to be begun that can go two ways: (index, stage); None where there is no choice."""
    if not begun(state):
        return None
    _, work = under_way(state)
    if work.complete:
        return None
    index, stage = work.at, work.stages[work.at]
    if not stage.mirrors or work.progress[index].mark != Reached() or not _complete(work, _first(work, stage)):
        return None
    first = _first(work, stage)
    return (index, stage) if _otherwise(work.stages[first], work.progress[first]) else None


def planned(state: State, index: int) -> Stage:
    """Return a stage of the step under way as it was planned when that was begun, whatever its kind makes of it now.

    A journal of before that was kept does not hold it. It is then the mirror of the other side's plan or, where that
    has other spots, what the recipe plans from the ledger the step began with; raises ``FinishingError`` where it has
    been changed since, and plans no such stage any more.
    """
    step, work = under_way(state)
    stage, partner = work.stages[index], work.stages[_first(work, work.stages[index])]
    if stage.as_planned is not None:
        return stage.as_planned
    if partner.rhythm is not None and partner.units == stage.units:
        rhythm = partner.rhythm.mirrored()
        words = say(rhythm, unit=stage.spot)
        return replace(stage, rhythm=rhythm, target=rhythm.stitches, words=words, as_worked=False)
    stages = state.plan.step(step).stages(state.plan.here(work.before))
    if len(stages) != len(work.stages) or stages[index].title != work.stages[index].title:
        raise FinishingError(f"the recipe has changed since, and no longer has {work.stages[index].title} there")
    return stages[index]


def resolved(state: State, work: StepWork, index: int, first: int) -> Stage:
    """Return the stage at ``index`` as the mirror of the one at ``first``, now that that one is done."""
    stage, partner, progress = work.stages[index], work.stages[first], work.progress[first]
    begun = stage.as_planned if stage.as_worked and stage.as_planned else stage
    if not _otherwise(partner, progress) and not begun.uncounted:
        return planned(state, index) if stage.as_worked else stage
    loops = progress.mark.loops
    if begun.uncounted:  # it is as long as the first side turned out to be
        flows = loops_onto(stage.place, 2 * max(partner.units, loops))
        stage = replace(begun, units=partner.units, uncounted="", flows=flows, halts=half_of(partner.units, stage))
    if stage.units == partner.units:
        rhythm = as_worked(partner, progress).mirrored()
        words = f"as {partner.title} was worked: {say(rhythm, unit=stage.spot)}"
    else:
        rhythm = space(max(1, min(loops, 2 * stage.units)), stage.units, style="even")
        words = f"as many as {partner.title} got, evenly: {say(rhythm, unit=stage.spot)}"
    return replace(stage, rhythm=rhythm, target=rhythm.stitches, words=words, as_worked=True, as_planned=begun)


def as_worked(stage: Stage, progress: Progress) -> Rhythm:
    """Return the rhythm of a section as it was really worked, spot by spot where presses explain the count."""
    loops: list[int] = []
    ends = [*(stretch.start for stretch in progress.stretches[1:]), stage.units]
    counts = [*(stretch.loops for stretch in progress.stretches[1:]), progress.mark.loops]
    for stretch, end, count in zip(progress.stretches, ends, counts, strict=True):
        loops += really_done(progress, stretch.start, end, count - stretch.loops)
    return rhythm_of(loops)


def _pairs(work: StepWork) -> Iterator[tuple[int, int]]:
    """Yield (index, index of the section it mirrors) for every section that mirrors another and is not begun."""
    for index, stage in enumerate(work.stages):
        if stage.mirrors and work.progress[index].mark == Reached():
            yield index, _first(work, stage)


def _first(work: StepWork, stage: Stage) -> int:
    return [other.title for other in work.stages].index(stage.mirrors)


def _complete(work: StepWork, index: int) -> bool:
    return work.progress[index].mark.units >= work.stages[index].units


def _otherwise(stage: Stage, progress: Progress) -> bool:
    """Return whether a section was worked in any way otherwise than it was planned when it began."""
    only = progress.stretches[0] if len(progress.stretches) == 1 else None
    return (
        only is None
        or bool(only.moved or only.strayed)
        or only.rhythm != stage.rhythm
        or progress.mark.loops != only.rhythm.stitches
    )


def _with(work: StepWork, index: int, stage: Stage) -> StepWork:
    return with_stage(work, index, stage).with_progress(index, fresh(stage))
