"""What going on within a step enters in the ledger, when stages end and the next ones open."""

from collections.abc import Sequence
from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import OFF, Entry, Posting
from finishing_tui.garment.commands import Refusal
from finishing_tui.garment.events import Marked, Stood, Turned, Worked
from finishing_tui.garment.labels import Label
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import to_come
from finishing_tui.garment.work import Reached, Standing, StepWork
from finishing_tui.recipe.kinds.base import FAR
from finishing_tui.recipe.stage import Stage, entries_between, whole


def openings(stages: Sequence[Stage], first: int) -> tuple[Entry, ...]:
    """Return what opening the stage at ``first`` enters, and every one after it up to the first that holds a unit."""
    entries: list[Entry] = []
    for stage in stages[first:]:
        entries.extend(stage.opening)
        if stage.units:
            break
        entries.extend(stage.closing)
    return tuple(entries)


def made(stage: Stage, mark: Reached) -> int:
    """Return what a stage is counted by: the loops made along an edge, the units done of anything else."""
    return mark.loops if stage.unit == "spot" else mark.units


def passed(work: StepWork, index: int, after: Reached) -> tuple[Entry, ...]:
    """Return what stage ``index`` enters as it goes on from its mark to ``after``.

    When that completes it, its closing and the opening of what follows come with it.
    """
    stage, before = work.stages[index], work.progress[index].mark
    entries = entries_between(stage, made(stage, before), made(stage, after))
    if before.units < stage.units <= after.units:
        entries += (*stage.closing, *openings(work.stages, index + 1))
    return entries


def entered(work: StepWork) -> tuple[Entry, ...]:
    """Return everything a step has entered as its progress stands, as if it had been worked without a count."""
    entries = list(openings(work.stages, 0))
    for index, (stage, progress) in enumerate(zip(work.stages, work.progress, strict=True)):
        mark = progress.mark
        entries += entries_between(stage, 0, made(stage, mark))
        entries += [Posting(needle, OFF, 1) for _, needle in progress.doubled]
        if stage.units and mark.units >= stage.units:
            entries += (*stage.closing, *openings(work.stages, index + 1))
    return tuple(entries)


def rest_of(work: StepWork, guess: int = FAR) -> tuple[Entry, ...]:
    """Return what a step under way still enters as its plan stands: along an edge, the loops its rhythm has to come.

    An edge of which nothing is known is taken to have ``guess`` spots more.
    """
    if work.complete:
        return ()
    stage, progress = work.stages[work.at], work.progress[work.at]
    now = made(stage, progress.mark)
    end = stage.units
    if stage.unit == "spot":
        end = now + to_come(stage, progress, progress.mark.units) - progress.mark.within
    if stage.uncounted == "all":
        end = min(end, now + int(guess * stage.rate))
    entries = (*entries_between(stage, now, end), *stage.closing)
    return (*entries, *(entry for later in work.stages[work.at + 1 :] for entry in whole(_guessed(later, guess))))


def _guessed(stage: Stage, guess: int) -> Stage:
    return replace(stage, target=min(stage.target, int(guess * stage.rate))) if stage.uncounted == "all" else stage


def work_on(state: State, after: Reached, *, label: Label | None = None) -> tuple[Worked]:
    """Return the event in which the stage under way goes on to the mark ``after``."""
    step, work = under_way(state)
    index = work.at
    entries = passed(work, index, after)
    state.ledger.enter(*entries)  # refused here, and not when it is entered
    named = state.plan.ids[step]
    change = Marked(named, index, work.progress[index].mark, after)
    return (Worked(step=named, entries=entries, changes=(change,), label=label),)


def uncounted(state: State, stage: Stage, after: Reached) -> Refusal | None:
    """Refuse to count a place through when the ledger knows of another number there than should be: type it."""
    held = state.ledger.on(stage.place)
    if not stage.counts or after.units < stage.units or held == stage.units:
        return None
    name = state.plan.here(state.ledger).name(stage.place)
    return Refusal(f"{stage.units} should be on the {name}, and by the ledger there are {held}: type what you count")


def under_way(state: State) -> tuple[int, StepWork]:
    """Return the step under the needles and its work; only for a state in which there is one, and it was begun."""
    if state.current is None or (work := state.steps[state.current].work) is None:
        raise ValueError("no step is under way")
    return state.current, work


def turned(state: State, step: int | None) -> Turned:
    """Return the turn from the step under the needles to another one."""
    ids = state.plan.ids
    return Turned(None if state.current is None else ids[state.current], None if step is None else ids[step])


def begun(state: State) -> bool:
    """Return whether a step is under the needles that was begun."""
    return state.current is not None and state.steps[state.current].work is not None


def going_on(state: State, work: StepWork) -> tuple[Stood, ...]:
    """Return the change by which the step under the needles goes on with ``work``; none where it has that already."""
    step, before = under_way(state)
    standing = state.steps[step]
    return () if work == before else (Stood(state.plan.ids[step], standing, Standing(standing.status, work)),)


def with_stage(work: StepWork, index: int, stage: Stage) -> StepWork:
    """Return ``work`` with the stage at ``index`` replaced."""
    return replace(work, stages=(*work.stages[:index], stage, *work.stages[index + 1 :]))


def sentence(error: FinishingError) -> str:
    """Return an error's sentence without its closing full stop, so that another may follow."""
    return str(error).removesuffix(".")
