"""What a count in a stage of spots leads to, worked out before anything is decided.

The screen lays the ways side by side and ``decide`` carries one of them out; both read the same ``Outlook``, so what
was shown is what happens. Nothing changes silently.
"""

from dataclasses import dataclass, replace
from fractions import Fraction

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.ledger import EDGE, Entry, brought
from finishing_tui.craft.recount import Recount, RecountMend, recount
from finishing_tui.craft.recount import Repair as Mending
from finishing_tui.craft.words import plural
from finishing_tui.garment.events import Put, RepairChoice, WhyOff
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import cut_at, explained_from, spot_with, strays, stretch_at, to_come
from finishing_tui.garment.work import Progress, Reached, StepWork, Stretch
from finishing_tui.recipe.stage import Stage


class CannotCount(FinishingError):
    """There is nothing to count here, or the count cannot be."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way to go on after a count: how the stage then stands, and what is entered.

    ``difference``: stitches the first round of the band must add (or, negative, take away).
    """

    repair: RepairChoice
    text: str
    stage: Stage
    progress: Progress
    entries: tuple[Entry, ...]
    difference: int = 0


@dataclass(frozen=True, slots=True)
class Outlook:
    """What a count leads to. ``index``: the stage that was counted; ``ways``: in order of sense, never empty."""

    index: int
    stage: Stage
    before: Progress
    counted: int
    expected: int
    put: Put
    spot: int
    verdict: Verdict
    text: str
    ways: tuple[Way, ...]


def counted_stage(work: StepWork) -> int | None:
    """Return the index of the stage of spots a count is about: the one under way, or the one that was just walked.

    A section is no longer counted by itself once anything after it was begun, for it could not be opened again.
    """
    here = work.at
    spots = here < len(work.stages) and work.stages[here].unit == "spot"
    if here < len(work.stages) and work.progress[here].mark != Reached():
        return here if spots else None
    walked = next((index for index in range(here - 1, -1, -1) if work.stages[index].units), None)
    if walked is not None and work.stages[walked].unit == "spot":
        return walked
    return here if spots else None


def outlook(state: State, counted: int, answer: WhyOff | None = None, left: int | None = None) -> Outlook:
    """Return what counting ``counted`` loops in the section leads to.

    ``answer``: what a difference from the presses is put down to; without one, a count that differs is looked at as
    if the loops differed. ``left``: the rows left, for the answer that names them.

    Raises ``CannotCount`` when no section can be counted, or the numbers cannot be.
    """
    standing = state.standing
    work = standing.work if standing else None
    index = counted_stage(work) if work else None
    if work is None or index is None:
        raise CannotCount("you are not picking up along an edge, so there is no section to count")
    stage, before = work.stages[index], work.progress[index]
    if not 0 <= counted <= 2 * stage.units:
        raise CannotCount(f"{counted} is too many for {stage.title}: it holds up to {2 * stage.units}")
    expected = before.mark.loops
    if counted == expected and answer is None:
        return _as_planned(index, stage, before)
    put = answer or "loops"
    if put == "presses":
        return _presses(index, stage, before, counted)
    spot = _spot(stage, before, put, left)
    return _looked_at(index, stage, before, counted, put, spot)


def _spot(stage: Stage, before: Progress, put: Put, left: int | None) -> int:
    if put == "rows-left":
        if left is None or not 0 <= left <= stage.units:
            raise CannotCount(f"type how many {stage.spot}s are left, 0 to {stage.units}")
        return stage.units - left
    if put == "half-way":
        return stage.units // 2
    return before.mark.units + (1 if before.mark.within else 0)


def _as_planned(index: int, stage: Stage, before: Progress) -> Outlook:
    mark = before.mark
    whole = mark.loops - mark.within  # a spot that takes two and has one is counted when it is done
    confirmed = replace(before, confirmed=(whole, mark.units))
    text = f"{plural(mark.loops, 'stitch')} counted, as planned."
    way = Way("as-it-is", text, stage, confirmed, ())
    verdict = recounted(stage, before, whole, mark.units).verdict if mark.units else Verdict.LIES_FLAT
    return Outlook(index, stage, before, mark.loops, mark.loops, "as-planned", mark.units, verdict, text, (way,))


def _presses(index: int, stage: Stage, before: Progress, counted: int) -> Outlook:
    spot = spot_with(stage, before, counted)
    if spot is None:
        known, at = explained_from(before)
        if counted < known:
            raise CannotCount(
                f"you counted {known} at {stage.spot} {at}, so missed presses can't make it {counted}; "
                "choose the second answer"
            )
        raise CannotCount(f"this section has only {stage.target}; did you count the whole needle?")
    if counted == stage.target:
        spot = stage.units
    after = replace(_cut(before, spot), mark=Reached(spot, 0, counted), confirmed=(counted, spot))
    if counted + to_come(stage, after, spot) != stage.target and spot < stage.units:
        # A stray beyond this spot is forgotten, and what was to make up for it with it: space the rest anew.
        rest = recounted(stage, before, counted, spot).rhythm
        if rest is not None:
            after = replace(after, stretches=(*after.stretches, Stretch(spot, rest, loops=counted)))
    text = f"Carry on: {plural(counted, 'stitch')} means {stage.spot} {spot}."
    way = Way("space-the-rest", text, stage, after, brought(stage.place, before.mark.loops, counted, EDGE, EDGE))
    return Outlook(index, stage, before, counted, before.mark.loops, "presses", spot, Verdict.LIES_FLAT, text, (way,))


def _looked_at(index: int, stage: Stage, before: Progress, counted: int, put: Put, spot: int) -> Outlook:
    told = recounted(stage, before, counted, spot)
    differ = brought(stage.place, before.mark.loops, counted)
    here = Reached(spot, 0, counted)
    ways = [_way(stage, before, here, differ, mending) for mending in told.repairs]
    stays = replace(_going_on(stage, before, spot, counted), mark=here, confirmed=(counted, spot))
    gives = replace(stage, target=counted + to_come(stage, stays, spot) or stage.target)
    ways.append(Way("as-it-is", "Note the count and carry on as planned.", gives, stays, differ))
    text = told.text.split("\n1. ")[0]
    verdict = told.verdict
    return Outlook(index, stage, before, counted, before.mark.loops, put, spot, verdict, text, tuple(ways))


def _going_on(stage: Stage, before: Progress, spot: int, counted: int) -> Progress:
    """Return the progress with the plan there is from ``spot`` on as a stretch of its own, which begins with the count.

    What lay beyond the spot is forgotten with it: a stray and what was to make up for it, a later spacing.
    """
    kept = _cut(before, spot)
    if not 0 < spot < stage.units:
        return kept
    last = stretch_at(kept, spot + 1)
    if spot - last.start >= last.rhythm.spots:
        return kept
    behind = any(stray > spot for stray, _ in strays(before)) or any(one.start >= spot for one in before.stretches[1:])
    moved = () if behind else tuple(pair for pair in stretch_at(before, spot + 1).moved if pair[0] > spot)
    going_on = Stretch(spot, last.rhythm.rest(spot - last.start), moved, loops=counted)
    return replace(kept, stretches=(*kept.stretches, going_on))


def _way(stage: Stage, before: Progress, here: Reached, differ: tuple[Entry, ...], mending: Mending) -> Way:
    mark, entries, repair = here, differ, _NAMES[mending.mend]
    if mending.to is not None:
        mark = Reached(mending.to.spot, 0, mending.to.loops)
        entries += brought(stage.place, here.loops, mending.to.loops, EDGE, EDGE)
    kept = _cut(before, mark.units).stretches if mark.units else ()
    stretches = (*kept, Stretch(mark.units, mending.rhythm, loops=mark.loops))
    after = replace(before, mark=mark, stretches=stretches, confirmed=(mark.loops, mark.units))
    changed = replace(stage, target=mending.total)
    return Way(repair, mending.text, changed, after, entries, mending.difference)


_NAMES: dict[RecountMend, RepairChoice] = {
    RecountMend.SPACE_THE_REST: "space-the-rest",
    RecountMend.FIRST_ROUND: "first-round",
    RecountMend.RIP_BACK: "rip-back",
}


def recounted(stage: Stage, before: Progress, counted: int, spot: int) -> Recount:
    """Return how what is left of a section would go with ``counted`` loops at ``spot``. Raises ``Impossible``."""
    return recount(
        stage.target,
        stage.units,
        at=spot,
        counted=counted,
        confirmed=before.confirmed,
        natural=Fraction(stage.natural) if stage.natural else None,
        style=stage.style,
        ends=stage.ends,
        per_10cm=stage.per_10cm,
        unit=stage.spot,
    )


def _cut(progress: Progress, spot: int) -> Progress:
    """Return the progress with everything planned or strayed beyond ``spot`` forgotten."""
    kept = (stretch for stretch in progress.stretches if stretch.start < spot or not stretch.start)
    return replace(progress, stretches=tuple(cut_at(stretch, spot) for stretch in kept))
