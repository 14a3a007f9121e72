"""A section of an edge that is to go another way from where the hands are: its rhythm and its progress.

What was picked so far stands; only what is left is spread anew. The stage is put together so that everything else
that reads one (a recount, ripping back, the second side) finds what it would find had the recipe said so.
"""

from dataclasses import replace
from fractions import Fraction

from finishing_tui.craft.counts import span
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.going_on import go_on, go_on_at
from finishing_tui.craft.open_edges import rate_words, read_rate
from finishing_tui.craft.spacing import Rhythm, Run, Runs, say, space
from finishing_tui.craft.walked import rhythm_of
from finishing_tui.craft.words import plural
from finishing_tui.garment.alteration import Alteration, CannotAsk
from finishing_tui.garment.commands import WhatIf
from finishing_tui.garment.decide.mirror import like_first
from finishing_tui.garment.decide.pair_altered import pair_altered, step_altered
from finishing_tui.garment.decide.stages import with_stage
from finishing_tui.garment.labels import Label
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import cut_at, picks_behind, really_done, skips_first, stretch_at
from finishing_tui.garment.ways import recounted
from finishing_tui.garment.work import Progress, Reached, StepWork, Stretch
from finishing_tui.recipe.kinds.sections import LONG
from finishing_tui.recipe.stage import Stage, loops_onto
from finishing_tui.recipe.sums import MOST


def section_altered(state: State, step: int, work: StepWork, command: WhatIf) -> Alteration:
    """Return the section under way as ``command`` would have it. Raises ``FinishingError`` for what cannot be."""
    index = work.at
    stage, before = work.stages[index], work.progress[index]
    at = _passed(before)
    asked, rest = _asked_for(stage, before, command)
    if not at and command.rhythm is None and command.style is None:
        rest = like_first(work, index, asked.units, asked.target) or rest
    natural = str(stage.rate)
    told = recounted(replace(asked, natural=natural), before, before.mark.loops, at)
    words = rate_words(asked.rate, asked.spot) if asked.uncounted else say(rest, unit=stage.spot)
    new = replace(asked, rhythm=_from_the_start(stage, asked, before, rest), words=words)
    after = with_stage(work, index, new).with_progress(index, _going_on(before, at, rest))
    edit = step_altered(state, step, asked, command)
    return Alteration(
        index=index,
        stage=stage,
        work=after if edit is None else pair_altered(after, index),
        edit=edit,
        why=Label(
            "section-altered",
            (state.plan.ids[step],),
            (stage.title, stage.spot),
            (new.target, new.units, stage.target, stage.units),
            (rest, stretch_at(before, min(at + 1, stage.units)).rhythm),
        ),
        drift=(_drift(before, at, stage.units), rest.drift),
        verdict=told.verdict,
    )


def _passed(before: Progress) -> int:
    """Return how many spots stand as they are: those passed, and one that takes two and has one already."""
    return before.mark.units + bool(before.mark.within)


def _asked_for(stage: Stage, before: Progress, command: WhatIf) -> tuple[Stage, Rhythm]:
    """Return the section with the spots, the target and the style asked for, and how what is left of it is picked."""
    at, loops = _passed(before), before.mark.loops
    if stage.uncounted and command.spots is None:
        return _at_another_rate(stage, before, command)
    spots = stage.units if command.spots is None else command.spots
    if not at < spots <= MOST:
        raise CannotAsk(f"you are past {stage.spot} {at}: use {span(at + 1, MOST, spots)}")
    halts = (spots // 2,) if stage.halts and spots >= LONG else ()
    flows = loops_onto(stage.place, 2 * spots)
    asked = replace(stage, units=spots, style=command.style or stage.style, halts=halts, flows=flows, uncounted="")
    if stage.uncounted == "all" and command.target is None:
        asked = replace(asked, target=loops + max(1, rounded((spots - at) * stage.rate)))
    if command.rhythm is not None:
        rest = _typed(*command.rhythm, spots - at)
        if not loops + rest.stitches:
            raise CannotAsk(f"that picks nothing from the {plural(spots - at, stage.spot)} left")
        return replace(asked, target=loops + rest.stitches), rest
    target = asked.target if command.target is None else command.target
    if not loops <= target <= MOST or not target:
        raise CannotAsk(f"you have {plural(loops, 'stitch')}: use {span(max(loops, 1), MOST, target)}")
    return replace(asked, target=target), _rest(target - loops, spots - at, asked, before)


def _at_another_rate(stage: Stage, before: Progress, command: WhatIf) -> tuple[Stage, Rhythm]:
    """Return a section nobody counted with another target or rate, and what it takes from here."""
    rate, at, loops = stage.rate, _passed(before), before.mark.loops
    if command.rhythm is not None:
        pick, of = command.rhythm
        rate = read_rate(f"{pick}/{of}")
    target = stage.target if command.target is None else command.target
    if not loops < target <= MOST:
        raise CannotAsk(f"you have {plural(loops, 'stitch')}: use {span(loops + 1, MOST, target)}")
    rest = go_on_at(rate, target - loops, picks_behind(before, at) if at == before.mark.units else 0)
    spots = at + rest.spots
    flows = loops_onto(stage.place, 2 * max(spots, target))
    halts = tuple(halt for halt in stage.halts if halt <= spots)
    uncounted = "spots" if command.target is not None else stage.uncounted
    asked = replace(stage, units=spots, target=target, natural=str(rate), flows=flows, halts=halts, uncounted=uncounted)
    return asked, rest


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


def _rest(stitches: int, spots: int, asked: Stage, before: Progress) -> Rhythm:
    at = _passed(before)
    return go_on(
        stitches,
        spots,
        style=asked.style,
        ends="last" if asked.ends == "closed" and at else asked.ends,
        behind=picks_behind(before, before.mark.units) if at == before.mark.units else 0,
        skips_first=skips_first(asked, before, at),
    )


def _from_the_start(stage: Stage, asked: Stage, before: Progress, rest: Rhythm) -> Rhythm:
    """Return the rhythm the section would be begun with once more: what was picked so far, and then the rest."""
    owed = stage.rhythm.stitches - stage.target if stage.rhythm is not None else 0
    if owed and 0 < asked.target + owed <= 2 * asked.units:
        # What a recount left to the first round stays left to it.
        return space(asked.target + owed, asked.units, style="even")
    mark = before.mark
    if not _passed(before):
        return rest
    so_far = really_done(before, 0, mark.units, mark.loops - mark.within) + [mark.within] * bool(mark.within)
    return rhythm_of([*so_far, *(rest.at(spot) for spot in range(1, rest.spots + 1))])


def _going_on(before: Progress, at: int, rest: Rhythm) -> Progress:
    """Return the progress with ``rest`` as a stretch of its own from spot ``at`` on, where the hands are."""
    if not at:
        return Progress(stretches=(Stretch(0, rest),))
    kept = tuple(cut_at(one, at) for one in before.stretches if one.start < at)
    confirmed = before.confirmed if before.confirmed[1] <= at else (0, 0)
    loops = before.mark.loops
    stretches = (*kept, Stretch(at, rest, loops=loops))
    return replace(before, mark=Reached(at, 0, loops), stretches=stretches, confirmed=confirmed)


def _drift(before: Progress, at: int, units: int) -> Fraction:
    """Return how far what is left strays as it is planned."""
    stretch = stretch_at(before, min(at + 1, units))
    passed = at - stretch.start
    return stretch.rhythm.rest(passed).drift if 0 <= passed < stretch.rhythm.spots else Fraction(0)
