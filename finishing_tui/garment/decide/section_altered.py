"""A section of an edge that is to go another way from where the hands are: its rhythm, its progress, and its step.

What was picked so far stands; only what is left is spread anew. The stage is put together so that everything else
that reads one (a recount, ripping back, the second side) finds what it would find had the recipe said so.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from finishing_tui.craft.recount import recount
from finishing_tui.craft.spacing import Ends, Rhythm, Run, Runs, Style, say, space
from finishing_tui.craft.walked import rhythm_of
from finishing_tui.craft.words import plural
from finishing_tui.garment.alteration import Alteration, CannotAsk
from finishing_tui.garment.commands import WhatIf
from finishing_tui.garment.decide.stages import with_stage
from finishing_tui.garment.events import Edited
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import done, stretch_at
from finishing_tui.garment.work import Mark, Progress, Stretch, Work, fresh
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import LONG, Along, Section
from finishing_tui.recipe.stage import Stage, loops_onto
from finishing_tui.recipe.sums import MOST


def section_altered(state: State, step: int, work: Work, command: WhatIf) -> Alteration:
    """Return the section under way as ``command`` would have it. Raises ``FinishingError`` for what cannot be."""
    index = work.at
    stage, before = work.stages[index], work.progress[index]
    at, loops = before.mark.units + bool(before.mark.within), before.mark.loops
    spots = stage.units if command.spots is None else command.spots
    if not at < spots <= MOST:
        raise CannotAsk(f"{stage.spot} {at} is passed, so there must be {at + 1} {stage.spot}s at least, to {MOST}")
    style = command.style or stage.style
    if command.rhythm is not None:
        rest: Rhythm = _typed(*command.rhythm, spots - at)
        target = loops + rest.stitches
        if not target:
            raise CannotAsk(f"that picks nothing from the {plural(spots - at, stage.spot)} left")
    else:
        target = stage.target if command.target is None else command.target
        if not loops <= target <= MOST or not target:
            raise CannotAsk(f"{plural(loops, 'loop')} are there, so the target is from {max(loops, 1)} to {MOST}")
        rest = _rest(target - loops, spots - at, stage, style, begun_with=bool(at))
    natural = Fraction(stage.natural) if stage.natural else Fraction(stage.target, stage.units)
    told = recount(
        target,
        spots,
        at=at,
        counted=loops,
        confirmed=before.confirmed,
        natural=natural,
        style=style,
        ends=stage.ends,
        per_10cm=stage.per_10cm,
        unit=stage.spot,
    )
    new, progress = _anew(stage, before, at, target, spots, rest)
    new = replace(new, style=style, words=say(rest, unit=stage.spot))
    after = with_stage(work, index, new).with_progress(index, progress)
    edit = _edited(state, step, stage, target, command)
    return Alteration(
        index=index,
        stage=stage,
        work=_mirrored(after, index, edit),
        edit=edit,
        was=_words(stage, stretch_at(before, min(at + 1, stage.units)).rhythm),
        now=_words(new, rest),
        drift=(_drift(before, at, stage.units), rest.drift),
        verdict=told.verdict.value,
    )


def _typed(pick: int, of: int, spots: int) -> Runs:
    """Return "``pick`` of every ``of``" over ``spots``; what is left at the end is picked as far as it goes."""
    if not 1 <= of <= MOST or not 1 <= pick <= 2 * of:
        raise CannotAsk(f"{pick} of every {of} cannot be picked: a spot takes two loops at most")
    times, left = divmod(spots, of)
    runs = [Run(pick, of, times)] if times else []
    if left:
        whole = Runs((Run(pick, of, 1),))
        runs.append(Run(whole.up_to(left), left, 1))
    return Runs(tuple(runs))


def _rest(stitches: int, spots: int, stage: Stage, style: Style, *, begun_with: bool) -> Rhythm:
    if not stitches:
        return Runs((Run(0, spots, 1),))
    ends: Ends = "last" if stage.ends == "closed" and begun_with else stage.ends
    return space(stitches, spots, style=style, ends=ends)


def _anew(stage: Stage, before: Progress, at: int, target: int, spots: int, rest: Rhythm) -> tuple[Stage, Progress]:
    """Return the stage and its progress with the rest from spot ``at`` on as ``rest``.

    The stage's own rhythm is what it would be begun with once more: what was picked so far, and then the rest.
    """
    loops = before.mark.loops
    if not at:
        rhythm: Rhythm = rest
        progress = Progress(stretches=(Stretch(0, rhythm),))
    else:
        pressed = [done(before, spot) for spot in range(1, before.mark.units + 1)]
        if before.mark.within:
            pressed.append(before.mark.within)
        if sum(pressed) != loops:
            spread = space(loops, at, style="even") if 0 < loops <= 2 * at else None
            pressed = [spread.at(spot) if spread else 0 for spot in range(1, at + 1)]
        rhythm = rhythm_of([*pressed, *(rest.at(spot) for spot in range(1, spots - at + 1))])
        kept = tuple(_up_to(one, at) for one in before.stretches if one.start < at)
        confirmed = before.confirmed if before.confirmed[1] <= at else (0, 0)
        progress = replace(
            before, mark=Mark(at, 0, loops), stretches=(*kept, Stretch(at, rest, loops=loops)), confirmed=confirmed
        )
    owed = stage.rhythm.stitches - stage.target if stage.rhythm is not None else 0
    if owed and 0 < target + owed <= 2 * spots:  # what a recount left to the first round stays left to it
        rhythm = space(target + owed, spots, style="even")
    halts = (spots // 2,) if stage.halts and spots >= LONG else ()
    flows = loops_onto(stage.place, 2 * spots)
    return replace(stage, units=spots, target=target, rhythm=rhythm, halts=halts, flows=flows), progress


def _up_to(stretch: Stretch, at: int) -> Stretch:
    return replace(
        stretch,
        moved=tuple(pair for pair in stretch.moved if pair[0] <= at),
        strayed=tuple(pair for pair in stretch.strayed if pair[0] <= at),
    )


def _drift(before: Progress, at: int, units: int) -> Fraction:
    """Return how far what is left strays as it is planned."""
    stretch = stretch_at(before, min(at + 1, units))
    passed = at - stretch.start
    return stretch.rhythm.rest(passed).drift if 0 <= passed < stretch.rhythm.spots else Fraction(0)


def _words(stage: Stage, rhythm: Rhythm) -> str:
    return f"{stage.target} from {plural(stage.units, stage.spot)}, {say(rhythm, unit=stage.spot)}"


def _edited(state: State, step: int, stage: Stage, target: int, command: WhatIf) -> Edited | None:
    """Return the step of the plan with the section as it is asked for, and as many stitches in the one it mirrors."""
    old = state.plan.step(step)
    if not isinstance(old, PickUpAndKnit):
        return None
    sections = list(old.section)
    at = next((at for at, one in enumerate(sections) if isinstance(one, Along) and one.along == stage.title), None)
    if at is None:
        return None
    section = sections[at]
    assert isinstance(section, Along)
    section = replace(section, stitches=target, style=command.style or section.style)
    sections[at] = section if command.spots is None else replace(section, spots=command.spots, slope="", length="")
    for one, partner in _partners(sections, at):
        if state.steps[step].work is not None and not _begun(state, step, partner.along):
            sections[one] = replace(partner, stitches=target)
    return Edited(step, old, replace(old, section=tuple(sections)))


def _partners(sections: Sequence[Section], at: int) -> Iterator[tuple[int, Along]]:
    """Yield the sections that are a pair with the one at ``at``."""
    here = sections[at]
    assert isinstance(here, Along)
    for index, one in enumerate(sections):
        if isinstance(one, Along) and index != at and (one.mirrors == here.along or here.mirrors == one.along):
            yield index, one


def _begun(state: State, step: int, title: str) -> bool:
    work = state.steps[step].work
    return work is not None and any(
        one.title == title and progress.mark != Mark() for one, progress in zip(work.stages, work.progress, strict=True)
    )


def _mirrored(work: Work, index: int, edit: Edited | None) -> Work:
    """Return the work with the section that mirrors this one, if it is still to come, planned the same way."""
    stage = work.stages[index]
    for at in range(index + 1, len(work.stages)):
        other = work.stages[at]
        if other.mirrors != stage.title or other.as_worked or edit is None:
            continue
        if stage.rhythm is not None and other.units == stage.units and stage.rhythm.stitches == stage.target:
            rhythm = stage.rhythm.mirrored()
        else:
            rhythm = space(max(1, min(stage.target, 2 * other.units)), other.units, style=stage.style)
        new = replace(other, rhythm=rhythm, target=rhythm.stitches, words=say(rhythm, unit=other.spot))
        work = with_stage(work, at, new).with_progress(at, fresh(new))
    return work
