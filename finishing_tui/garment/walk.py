"""Reading an edge as it is walked: what is planned and what was done at a spot, and which spot is next.

All of it reads a ``Progress`` whose stretches cover the section. Spots are counted from 1 along the whole section.
"""

from bisect import bisect_left
from dataclasses import replace
from operator import attrgetter

from finishing_tui.craft.spacing import space
from finishing_tui.garment.events import Pace
from finishing_tui.garment.labels import AgainstPlan
from finishing_tui.garment.work import Progress, Reached, Stretch
from finishing_tui.recipe.stage import Stage

_START = attrgetter("start")

_LOOKED_BACK = 12
"""So many spots behind are looked at for picks in a row; no rhythm that skips has more than a hand can see."""


def stretch_at(progress: Progress, spot: int) -> Stretch:
    """Return the stretch that ``spot`` lies in."""
    index = bisect_left(progress.stretches, spot, key=_START)
    return progress.stretches[max(index - 1, 0)]


def cut_at(stretch: Stretch, spot: int) -> Stretch:
    """Return the stretch with everything moved or strayed beyond ``spot`` forgotten."""
    moved = tuple(pair for pair in stretch.moved if pair[0] <= spot)
    return replace(stretch, moved=moved, strayed=tuple(pair for pair in stretch.strayed if pair[0] <= spot))


def planned(progress: Progress, spot: int) -> int:
    """Return how many loops the plan has at ``spot``: 0, 1 or 2."""
    stretch = stretch_at(progress, spot)
    for moved, loops in stretch.moved:
        if moved == spot:
            return loops
    return stretch.rhythm.at(spot - stretch.start) if spot - stretch.start <= stretch.rhythm.spots else 0


def planned_on(progress: Progress, after: int, last: int) -> list[int]:
    """Return how many loops the plan has at each spot after ``after`` up to ``last``."""
    found: list[int] = []
    stretches = progress.stretches
    for stretch, end in zip(stretches, [*map(_START, stretches[1:]), last], strict=True):
        begun, until = after + len(found), min(end, last)
        if until <= begun:
            continue
        rhythm = stretch.rhythm
        walked = min(until - stretch.start, rhythm.spots)
        if walked > begun - stretch.start:
            found += rhythm.between(begun - stretch.start, walked)
        found += [0] * (until - after - len(found))  # behind the end of the rhythm nothing is planned
        for spot, loops in reversed(stretch.moved):
            if begun < spot <= until:
                found[spot - after - 1] = loops
    return found


def done_on(progress: Progress, after: int, last: int) -> list[int]:
    """Return how many loops were made at each spot after ``after`` up to ``last``; all must have been passed."""
    found = planned_on(progress, after, last)
    for stretch in progress.stretches:
        for spot, loops in reversed(stretch.strayed):
            if after < spot <= last and stretch_at(progress, spot) is stretch:
                found[spot - after - 1] = loops
    return found


def done(progress: Progress, spot: int) -> int:
    """Return how many loops were made at ``spot``, which must have been passed: as planned, or as it strayed."""
    for strayed, loops in stretch_at(progress, spot).strayed:
        if strayed == spot:
            return loops
    return planned(progress, spot)


def really_done(progress: Progress, start: int, end: int, loops: int) -> list[int]:
    """Return the loops on the spots after ``start`` up to ``end``, which were passed and hold ``loops`` in all.

    By presses where they explain that; else evenly, for then nobody knows where they are.
    """
    pressed = done_on(progress, start, end)
    spots = end - start
    if sum(pressed) == loops or not 0 <= loops <= 2 * spots:
        return pressed
    spread = space(loops, spots, style="even") if loops else None
    return [spread.at(spot) if spread else 0 for spot in range(1, spots + 1)]


def strays(progress: Progress) -> tuple[tuple[int, int], ...]:
    """Return every (spot, loops) at which something else was done than planned."""
    return tuple(stray for stretch in progress.stretches for stray in stretch.strayed)


def run_end(progress: Progress, spot: int) -> int:
    """Return the spot at which the run that contains ``spot`` ends."""
    stretch = stretch_at(progress, spot)
    return stretch.start + stretch.rhythm.run_end(spot - stretch.start - 1)


def strayed_in_run(progress: Progress) -> bool:
    """Return whether the run under way holds a stray: the rest of it is then walked spot by spot."""
    stretch = stretch_at(progress, progress.mark.units + 1)
    end = run_end(progress, progress.mark.units + 1)
    return any(run_end(progress, spot) == end for spot, _ in stretch.strayed)


def next_pick(stage: Stage, progress: Progress) -> int | None:
    """Return the next spot that takes a loop; None when only skips are left."""
    spot = progress.mark.units
    while spot < stage.units:  # a few spots at a time: the next pick is near, and an edge may be long
        last = min(spot + 8, stage.units)
        for at, loops in enumerate(planned_on(progress, spot, last), spot + 1):
            if loops:
                return at
        spot = last
    return None


def owed_skips(stage: Stage, progress: Progress) -> int:
    """Return how many spots before the next pick are to be skipped: they may lie there where the edge ends."""
    pick = next_pick(stage, progress)
    return max((pick - 1 if pick else stage.units) - progress.mark.units, 0)


def skips_first(stage: Stage, progress: Progress, spot: int) -> bool:
    """Return whether runs begin with their skips at ``spot``, as they do along a mirrored side."""
    return stretch_at(progress, min(spot + 1, stage.units)).rhythm.skips_first


def picks_behind(progress: Progress, spot: int) -> int:
    """Return how many spots in a row, up to ``spot`` or to where the hands are, were picked."""
    found, spot = 0, min(spot, progress.mark.units)
    for loops in reversed(done_on(progress, max(spot - _LOOKED_BACK, 0), spot)):
        if not loops:
            break
        found += 1
    return found


def waits_for_count(stage: Stage, progress: Progress, pace: Pace) -> bool:
    """Return whether halfway was just reached and not counted: a press more carries on, and waits for it no longer."""
    if not stage.halts or not stage.halts[0] <= progress.mark.units or progress.confirmed[1] >= stage.halts[0]:
        return False
    half = reached = stage.halts[0]
    if pace == "run":
        reached = run_end(progress, half)
    elif pace == "loop":  # a press skips up to the next pick
        reached = next((at for at in range(half, stage.units + 1) if planned(progress, at)), stage.units)
    return progress.mark.units <= reached


def to_come(stage: Stage, progress: Progress, after: int) -> int:
    """Return how many loops the plan has on the spots after ``after``."""
    return loops_up_to(progress, stage.units) - loops_up_to(progress, after) if after < stage.units else 0


def loops_up_to(progress: Progress, spot: int) -> int:
    """Return how many loops were made on the spots 1 to ``spot``, as far as presses tell."""
    total = 0
    for index, stretch in enumerate(progress.stretches):
        later = progress.stretches[index + 1 : index + 2]
        last = min(spot, later[0].start if later else stretch.start + stretch.rhythm.spots) - stretch.start
        if last <= 0:
            break
        total += stretch.rhythm.up_to(last)
        changed = dict(stretch.moved) | dict(stretch.strayed)
        for at, loops in changed.items():
            if stretch.start < at <= stretch.start + last:
                total += loops - stretch.rhythm.at(at - stretch.start)
    return total


def explained_from(progress: Progress) -> tuple[int, int]:
    """Return the (loops, spot) from which on presses explain the loops that are there.

    That is the beginning, or the last count where that one did not agree with the presses; here, where nothing does.
    """
    mark, through = progress.mark, loops_up_to(progress, progress.mark.units)
    here = (mark.loops - mark.within, mark.units)
    for loops, spot in ((0, 0), progress.confirmed):
        if spot <= mark.units and loops + through - loops_up_to(progress, spot) == here[0]:
            return loops, spot
    return here


def spot_with(stage: Stage, progress: Progress, loops: int) -> int | None:
    """Return the spot at which what was pressed, and then the plan, has ``loops`` loops; None when it never has."""
    total, start = explained_from(progress)
    if total == loops:
        return start
    for spot in range(start + 1, stage.units + 1):
        total += done(progress, spot) if spot <= progress.mark.units else planned(progress, spot)
        if total == loops:
            return spot
    return None


def choices(progress: Progress, spot: int) -> tuple[int, int]:
    """Return what the rhythm at ``spot`` chooses from: no loop or one, or with more stitches than spots one or two."""
    rhythm = stretch_at(progress, spot).rhythm
    return (1, 2) if rhythm.stitches > rhythm.spots else (0, 1)


def other_at(progress: Progress) -> int:
    """Return how many loops the next spot has when the other thing is done there than the plan says.

    A spot that takes two, and has one already, is simply left at that one.
    """
    spot = progress.mark.units + 1
    return progress.mark.within or sum(choices(progress, spot)) - planned(progress, spot)


def against_plan(loops: int, plan: int) -> AgainstPlan:
    """Return what making ``loops`` at a spot is where the plan has ``plan``."""
    if loops < plan == 2:
        return "picked-once"
    return "skipped" if not loops else "picked" if loops == 1 else "doubled"


def loop_at(stage: Stage, progress: Progress) -> Reached:
    """Return the mark after the next loop: the skips before it pass by themselves.

    After the last loop of the plan, the skips behind it pass as well. With no loop left, all that is left passes.
    """
    mark = progress.mark
    spot = mark.units + 1 if mark.within else next_pick(stage, progress)
    if spot is None:
        return Reached(stage.units, 0, mark.loops)
    within = (mark.within if spot == mark.units + 1 else 0) + 1
    if within < planned(progress, spot):
        return Reached(spot - 1, within, mark.loops + 1)
    last = to_come(stage, progress, spot) == 0
    return Reached(stage.units if last else spot, 0, mark.loops + 1)


def spot_at(progress: Progress) -> Reached:
    """Return the mark after the next spot, done as planned."""
    mark = progress.mark
    loops = planned(progress, mark.units + 1) - mark.within
    return Reached(mark.units + 1, 0, mark.loops + loops)


def run_at(stage: Stage, progress: Progress) -> Reached:
    """Return the mark after the rest of the run, done as planned."""
    mark = progress.mark
    end = min(run_end(progress, mark.units + 1), stage.units)
    loops = sum(planned_on(progress, mark.units, end)) - mark.within
    return Reached(end, 0, mark.loops + loops)


def next_pin(stage: Stage, done: int) -> int:
    """Return the stitches at the next pin, or at the end of the edge."""
    return next((pin for pin in stage.halts if pin > done), stage.units)


def at_pin(stage: Stage, progress: Progress) -> bool:
    """Return whether a count is due: the hands are at a pin, and it was not counted."""
    units = progress.mark.units
    return stage.unit == "stitch" and units in stage.halts and progress.confirmed[0] < units


def pins_behind(stage: Stage, progress: Progress) -> int:
    """Return how many pins are behind; one that waits for its count is not."""
    units = progress.mark.units
    return sum(pin <= units for pin in stage.halts) - at_pin(stage, progress)
