"""Deciding about ripping back: taking work out is an act of its own, with reverse postings, and stays recorded."""

from dataclasses import replace

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import Entry, Ledger
from finishing_tui.craft.spacing import Run, Runs, space
from finishing_tui.craft.words import listing
from finishing_tui.garment.commands import Refusal, RipBack
from finishing_tui.garment.decide.difference import difference
from finishing_tui.garment.decide.stages import openings, sentence
from finishing_tui.garment.events import AnyAct, RippedBack, Stood, Turned
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import loops_up_to
from finishing_tui.garment.work import Mark, Progress, Standing, Stretch, Work, fresh
from finishing_tui.recipe.stage import Stage, entries_between


def rip_back(state: State, command: RipBack) -> tuple[AnyAct, ...] | Refusal:
    """Take work out to a unit of a stage of a step, naming what falls with it when that is more than this step."""
    step = command.step
    if not 0 <= step < len(state.steps) or (work := state.steps[step].work) is None:
        return Refusal(f"step {step + 1} was not begun; there is nothing to take out")
    if not 0 <= command.stage < len(work.stages):
        return Refusal(f"step {step + 1} has no part {command.stage + 1}")
    stage, mark = work.stages[command.stage], work.progress[command.stage].mark
    if command.stage > work.at or not 0 <= command.units <= mark.units:
        return Refusal(f"{stage.title} is at {mark.units}; it can be taken out to 0 to {mark.units}")
    fell = state.order[state.order.index(step) + 1 :]
    if (command.stage, command.units) == (work.at, mark.units) and not fell:
        return Refusal("that is where the work is now; nothing is to be taken out")
    if fell and not command.sure:
        numbers = listing([str(one + 1) for one in fell])
        falls = f"step {numbers} falls" if len(fell) == 1 else f"steps {numbers} fall"
        return Refusal(f"{falls} with it, being worked later. Again to take all that out", replace(command, sure=True))
    try:
        after = _to(work, command.stage, command.units)
        then = _ledger_at(after, command.stage)
        entries = difference(state.ledger, then)
    except FinishingError as error:
        return Refusal(sentence(error))
    changes = [Stood(one, state.steps[one], Standing()) for one in reversed(fell)]
    changes.append(Stood(step, state.steps[step], Standing("under way", after)))
    return (
        RippedBack(
            step=step,
            fell=tuple(fell),
            entries=entries,
            changes=tuple(changes),
            turned=Turned(state.current, step) if state.current != step else None,
            label=f"ripping back to {_where(stage, after.progress[command.stage].mark)}",
            under=state.top,
        ),
    )


def _where(stage: Stage, mark: Mark) -> str:
    if not mark.units:
        return f"the start of {stage.title}"
    return f"{stage.spot} {mark.units}" if stage.unit == "spot" else f"{mark.units} of {stage.title}"


def _to(work: Work, index: int, units: int) -> Work:
    """Return the work as it stands after taking it out to ``units`` units of the stage at ``index``."""
    progress = [
        one
        if before < index
        else _back(work.stages[before], one, units)
        if before == index
        else fresh(work.stages[before])
        for before, one in enumerate(work.progress)
    ]
    return replace(work, progress=tuple(progress))


def _back(stage: Stage, progress: Progress, units: int) -> Progress:
    if stage.unit != "spot":
        return Progress(Mark(units, 0, units), progress.stretches)
    if not units:
        return fresh(stage)
    if units == progress.mark.units:
        return replace(progress, mark=Mark(units, 0, progress.mark.loops - progress.mark.within))
    loops = _loops_left(progress, units)
    kept = tuple(
        replace(
            one,
            moved=tuple(pair for pair in one.moved if pair[0] <= units),
            strayed=tuple(pair for pair in one.strayed if pair[0] <= units),
        )
        for one in progress.stretches
        if one.start < units
    )
    confirmed = progress.confirmed if progress.confirmed[1] <= units else (0, 0)
    after = Progress(Mark(units, 0, loops), kept, confirmed)
    left, spots = stage.target - loops, stage.units - units
    planned = loops_up_to(after, stage.units) - loops_up_to(after, units)
    if planned != left and 0 <= left <= 2 * spots:
        rest = (
            space(left, spots, style=stage.style, ends="last" if stage.ends == "closed" else "open") if left else None
        )
        after = replace(after, stretches=(*kept, Stretch(units, rest or Runs((Run(0, spots, 1),)))))
    return after


def _loops_left(progress: Progress, units: int) -> int:
    """Return the loops left at spot ``units``: by presses where they explain the count, else evenly since the last one.

    Between the last confirmed count and here the loops are taken as evenly spread (design.md, section 4.2).
    """
    mark = progress.mark
    if loops_up_to(progress, mark.units) == mark.loops - mark.within:
        return loops_up_to(progress, units)
    loops, spot = progress.confirmed if progress.confirmed[1] < mark.units else (0, 0)
    if units <= spot:
        return min(loops_up_to(progress, units), loops)
    return loops + (mark.loops - loops) * (units - spot) // (mark.units - spot)


def _ledger_at(work: Work, index: int) -> Ledger:
    """Return the ledger as it is when the step was worked from its beginning to where ``work`` now stands."""
    entries: list[Entry] = [*openings(work.stages, 0)]
    for here, (stage, progress) in enumerate(zip(work.stages, work.progress, strict=True)):
        if here > index:
            break
        done = progress.mark.loops if stage.unit == "spot" else progress.mark.units
        entries += entries_between(stage, 0, done)
        if stage.units and progress.mark.units >= stage.units:
            entries += [*stage.closing, *openings(work.stages, here + 1)]
    return work.before.enter(*entries)
