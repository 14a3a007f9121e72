"""The edge ends here: with as many stitches as were wanted, with too few of them, or with rows left over."""

from dataclasses import replace
from itertools import takewhile

from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.ledger import EDGE, brought
from finishing_tui.craft.open_edges import by_rate
from finishing_tui.craft.spacing import Rhythm, say, space
from finishing_tui.craft.walked import rhythm_of
from finishing_tui.craft.words import listing, plural
from finishing_tui.garment.edge_length import with_spots
from finishing_tui.garment.pinned import pinned
from finishing_tui.garment.walk import done_on, loops_up_to, owed_skips, really_done
from finishing_tui.garment.ways import CannotCount, Outlook, Way, gone_on_from, looked_at, recounted
from finishing_tui.garment.work import Progress, Reached, StepWork, fresh
from finishing_tui.recipe.kinds.pick_up_and_knit import MOST_SPOTS
from finishing_tui.recipe.stage import Stage, loops_onto

LAST_ROWS = 8
"""The rows before the corner in which a second stitch is picked up where the edge ends short."""

MOST_AT_THE_END = 3
"""So many missing stitches can be had in the last rows; more are picked up closer, further back."""

MOST_STRANDS = 2
"""So many strands can be lifted at one spot."""


def ended(work: StepWork, index: int, counted: int, over: int) -> Outlook:
    """Return what the end of the edge leads to, with ``counted`` loops, and ``over`` rows left over behind the last.

    Where stitches are missing these are rows that the rhythm skips: they belong to the edge, and end it.

    Raises ``CannotCount`` where nothing is picked up yet, or more rows are left over though stitches are missing.
    """
    stage, before = work.stages[index], work.progress[index]
    at, missing = before.mark.units + bool(before.mark.within), stage.target - counted
    if not at or not counted:
        raise CannotCount(f"nothing of {stage.title} is picked up yet, so it cannot end here")
    owed = owed_skips(stage, before)
    skipped = over if over <= owed else 0
    if over > MOST_SPOTS or (over and missing > 0 and not skipped):
        raise CannotCount(
            f"{plural(over, stage.spot)} is more than the {owed} to skip here, and you are {missing} short: "
            f"keep picking up, or type up to {owed}"
        )
    known, progress = with_spots(stage, before, at + over)
    seen = looked_at(index, known, progress, counted, "edge-ends", at)
    if not missing and over:  # with all of them there is nothing to be re-spaced but what is ripped back
        return replace(seen, ways=tuple(way for way in seen.ways if way.repair in {"rip-back", "as-it-is"}))
    if missing < 0:
        return seen
    at += skipped
    seen = replace(seen, spot=at)
    here = replace(progress, mark=Reached(at, 0, counted), confirmed=(counted, at))
    differ = brought(stage.place, before.mark.loops, counted)
    uncounted = stage.uncounted == "all"
    if uncounted or not missing:
        text = f"The edge ends at {stage.spot} {at} with {plural(counted, 'stitch')}."
        way = Way("as-it-is", text, _with_rhythm(replace(known, target=counted), here), here, differ)
        return replace(seen, stage=stage if uncounted else known, verdict=Verdict.LIES_FLAT, ways=(way,))
    ways = [
        *[way for way in seen.ways if skipped and way.repair == "space-the-rest"],
        *_doubled(known, here, missing),
        *([way for way in seen.ways if way.repair == "rip-back"] or _closer(known, progress, counted)),
        Way("as-it-is", "Leave it with fewer stitches.", _with_rhythm(replace(known, target=counted), here), here, ()),
        *_carried(work, index, known, here, missing),
    ]
    entered = (
        way if way.repair in {"rip-back", "space-the-rest"} else replace(way, entries=(*differ, *way.entries))
        for way in ways
    )
    return replace(seen, ways=tuple(entered))


def _doubled(stage: Stage, here: Progress, missing: int) -> list[Way]:
    """Return the ways to have what is missing at the end: a second one in the last rows, or a strand lifted here."""
    at, loops = here.mark.units, here.mark.loops
    first = max(at - 1 - LAST_ROWS, 0)
    single = [spot for spot, made in enumerate(done_on(here, first, at - 1), first + 1) if made == 1]
    ways: list[Way] = []
    full = loops + missing
    entries = brought(stage.place, loops, full, EDGE, EDGE)
    if missing <= min(MOST_AT_THE_END, len(single)):
        rows = single[-missing:]
        text = f"Pick up a second stitch in {stage.spot}{'s' * (missing > 1)} {listing(list(map(str, rows)))}."
        ways.append(Way("double-last", text, stage, _strayed(here, dict.fromkeys(rows, 2), full), entries))
    if missing <= MOST_STRANDS:
        text = f"Lift and twist {plural(missing, 'strand')} onto the needle here."
        last = done_on(here, at - 1, at)[0]
        told = {at: last + missing} if last + missing <= 2 else {}
        ways.append(Way("strand", text, stage, _strayed(here, told, full), entries))
    return ways


def _closer(stage: Stage, before: Progress, counted: int) -> list[Way]:
    """Return the way that takes the fewest out and picks up closer so that it shows a little, or else takes out all."""
    if counted != before.mark.loops:
        return []
    for spot in range(before.mark.units - 1, -1, -1):
        loops = loops_up_to(before, spot)
        rest = recounted(stage, before, loops, spot)
        gentle = rest.verdict in {Verdict.LIES_FLAT, Verdict.JUST_SHOWS}
        if (gentle or not spot) and rest.rhythm is not None:
            after = gone_on_from(before, Reached(spot, 0, loops), rest.rhythm)
            return [Way("rip-back", rest.text, stage, after, brought(stage.place, counted, loops, EDGE, EDGE))]
    return []


def _strayed(here: Progress, loops_at: dict[int, int], loops: int) -> Progress:
    """Return the progress with other loops at some spots than planned, and ``loops`` in all."""
    stretches = tuple(
        replace(
            one,
            strayed=(
                *(pair for pair in one.strayed if pair[0] not in loops_at),
                *((spot, made) for spot, made in loops_at.items() if one.start < spot <= end),
            ),
        )
        for one, end in zip(here.stretches, [*(one.start for one in here.stretches[1:]), here.mark.units], strict=True)
    )
    at = here.mark.units
    return replace(here, stretches=stretches, mark=Reached(at, 0, loops), confirmed=(loops, at))


def _with_rhythm(stage: Stage, here: Progress) -> Stage:
    """Return the section with what was really picked for its rhythm: nothing of it is left to be put right."""
    return replace(stage, rhythm=rhythm_of(really_done(here, 0, stage.units, here.mark.loops)))


def _carried(work: StepWork, index: int, stage: Stage, here: Progress, missing: int) -> list[Way]:
    """Return the way in which the next section takes what is missing, where there is one that can."""
    if carried_on(work, index, missing) is None:
        return []
    fewer = _with_rhythm(replace(stage, target=here.mark.loops), here)
    return [Way("next-section", goes_to_the_next(work, index, missing), fewer, here, (), carried=missing)]


def goes_to_the_next(work: StepWork, index: int, missing: int) -> str:
    """Say that the section after ``index`` takes what is missing."""
    along = work.stages[next_section(work, index)].title
    return f"Pick up {missing} more along the {along}; the sides won't match."


def next_section(work: StepWork, index: int) -> int:
    """Return the index of what is picked up next, past a marker that is put in."""
    return index + 1 + sum(1 for _ in takewhile(lambda stage: stage.unit == "item", work.stages[index + 1 :]))


def _on_its_own(stage: Stage, first: Stage) -> Stage:
    """Return a section that is to have another number than ``first``: as long as that one, and no longer its mirror."""
    if stage.mirrors != first.title:
        return stage
    stage = replace(stage, mirrors="")
    if not stage.uncounted or first.uncounted:
        return stage
    spots = first.units
    flows = loops_onto(stage.place, 2 * spots)
    return replace(stage, units=spots, uncounted="", flows=flows, halts=(spots // 2,) if stage.halts else ())


def carried_on(work: StepWork, index: int, carried: int) -> StepWork | None:
    """Return the work with ``carried`` stitches more in the section after ``index``; None where none can take them."""
    at = next_section(work, index)
    if at >= len(work.stages) or work.progress[at].mark != Reached():
        return None
    stage, target = work.stages[at], work.stages[at].target + carried
    if stage.pinned:
        new = pinned(stage, len(stage.halts) + 1, target)
        return replace(work, stages=(*work.stages[:at], new, *work.stages[at + 1 :])).with_progress(at, fresh(new))
    if stage.rhythm is None:
        return None
    stage = _on_its_own(stage, work.stages[index])
    rhythm: Rhythm
    if stage.uncounted:
        rhythm = by_rate(target, stage.rate)
    elif target <= 2 * stage.units:
        rhythm = space(target, stage.units, style=stage.style, ends=stage.ends)
    else:
        return None
    new = replace(stage, units=rhythm.spots, target=target, rhythm=rhythm, words=say(rhythm, unit=stage.spot))
    stages = (*work.stages[:at], new, *work.stages[at + 1 :])
    return replace(work, stages=stages).with_progress(at, fresh(new))
