"""How long an edge turns out to be: what is said with a count, put into the section and its progress.

An edge nobody counted gets its spots from the knitter: so many rows left, or that she counted ahead. One that was
counted may turn out otherwise. Nothing is spread anew here; ``recounting`` lays the ways side by side.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import chain, cycle

from finishing_tui.craft.going_on import go_on_at
from finishing_tui.craft.open_edges import spots_for
from finishing_tui.craft.rhythm import Rhythm
from finishing_tui.craft.runs import Run, Runs
from finishing_tui.craft.spacing import say, space
from finishing_tui.craft.walked import rhythm_of
from finishing_tui.garment.walk import cut_at, picks_behind, planned_on, really_done
from finishing_tui.garment.work import Progress, Stretch
from finishing_tui.recipe.kinds.sections import LONG
from finishing_tui.recipe.stage import Stage, loops_onto


def rows_needed(stage: Stage, progress: Progress, loops: int) -> int:
    """Return how many spots from here ``loops`` more take, at the rate that is worked."""
    mark = progress.mark
    return spots_for(loops + mark.within, _ahead(stage, progress, mark.units))


def _ahead(stage: Stage, progress: Progress, after: int) -> Iterator[int]:
    """Return the loops of the spots after ``after``: as planned, and beyond that at the rate, for ever."""
    repeat = space(stage.rate.numerator, stage.rate.denominator)
    return chain(planned_on(progress, after, stage.units), cycle(repeat.between(0, repeat.spots)))


def with_spots(stage: Stage, before: Progress, spots: int, *, sure: bool = True) -> tuple[Stage, Progress]:
    """Return a section that turns out to have ``spots``, with its plan cut there, or going on with nothing to pick.

    ``spots`` are no fewer than are passed; ``sure``: they were counted, and not only taken to be so many.
    """
    progress = replace(before, stretches=_fitted(before, spots))
    halts = tuple(halt for halt in stage.halts if halt < spots)
    if sure and halts and before.mark.units < halts[0]:
        halts = (spots // 2,)
    new = replace(
        stage,
        units=spots,
        rhythm=_from_the_start(stage, before, spots),
        halts=halts,
        natural=stage.natural or str(stage.rate),  # what was planned for the edge is still what suits a row of it
        flows=loops_onto(stage.place, 2 * max(spots, stage.target, before.mark.loops)),
        uncounted="" if sure else stage.uncounted,
    )
    return new, progress


def as_long(stage: Stage, spots: int) -> Stage:
    """Return a section that is not begun with ``spots``, and as many of its stitches as they can take, spread anew."""
    ends = stage.ends if stage.target > 1 else "open"
    rhythm = space(max(1, min(stage.target, 2 * spots)), spots, style=stage.style, ends=ends)
    return replace(
        stage,
        units=spots,
        rhythm=rhythm,
        target=rhythm.stitches,
        words=say(rhythm, unit=stage.spot),
        halts=half_of(spots, stage),
        natural=stage.natural or str(stage.rate),
        flows=loops_onto(stage.place, 2 * spots),
        uncounted="",
    )


def half_of(spots: int, stage: Stage) -> tuple[int, ...]:
    """Return where a section of ``spots`` is counted, where ``stage`` is counted on the way at all."""
    return (spots // 2,) if stage.halts and spots >= LONG else ()


def _fitted(before: Progress, spots: int) -> tuple[Stretch, ...]:
    kept = [cut_at(one, spots) for one in before.stretches if one.start < spots or not one.start]
    last = kept[-1]
    kept[-1] = replace(last, rhythm=_of_length(last.rhythm, spots - last.start))
    return tuple(kept)


def _of_length(rhythm: Rhythm, spots: int) -> Rhythm:
    """Return a rhythm cut to its first ``spots`` spots, or going on up to there with nothing picked."""
    if rhythm.spots > spots:
        return rhythm.mirrored().rest(rhythm.spots - spots).mirrored()
    if rhythm.spots == spots:
        return rhythm
    return Runs((*rhythm.as_runs(), Run(0, spots - rhythm.spots, 1)), rhythm.skips_first)


def _from_the_start(stage: Stage, before: Progress, spots: int) -> Rhythm:
    """Return the rhythm the section would be begun with now that it has ``spots``: what was picked, then the rest."""
    mark = before.mark
    so_far = really_done(before, 0, mark.units, mark.loops - mark.within)
    left, to_pick = spots - mark.units, stage.target - sum(so_far)
    if 0 < to_pick <= 2 * left:
        rest = space(to_pick, left, style=stage.style)
        return rhythm_of([*so_far, *rest.between(0, left)])
    if 0 < stage.target <= 2 * spots:
        return space(stage.target, spots, style="even")
    return rhythm_of([*so_far, *[0] * left])


def at_its_rate(stage: Stage, before: Progress, loops: int) -> tuple[Stage, Progress]:
    """Return a section nobody counted that has ``loops`` here and goes on at its rate until its target is there."""
    at, to_pick = before.mark.units, stage.target - loops
    rest = go_on_at(stage.rate, to_pick, picks_behind(before, at)) if to_pick > 0 else Runs(())
    spots = max(at + rest.spots, 1)
    return with_spots(stage, before, spots, sure=False)
