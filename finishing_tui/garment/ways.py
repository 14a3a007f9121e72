"""The ways to go on after a count in a section: what one is, and those that a recount of what is left gives."""

from dataclasses import dataclass, replace
from functools import partial

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.ledger import EDGE, Entry, brought
from finishing_tui.craft.recount import Recount, RecountMend, recount
from finishing_tui.craft.recount import Repair as Mending
from finishing_tui.craft.ripping import RipBack
from finishing_tui.craft.spacing import Rhythm
from finishing_tui.garment.events import Put, RepairChoice
from finishing_tui.garment.walk import (
    cut_at,
    explained_from,
    loops_up_to,
    picks_behind,
    skips_first,
    strays,
    stretch_at,
    to_come,
)
from finishing_tui.garment.work import Progress, Reached, StepWork, Stretch
from finishing_tui.recipe.stage import Stage


class CannotCount(FinishingError):
    """There is nothing to count here, or the count cannot be."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way to go on after a count: how the stage then stands, and what is entered.

    ``difference``: stitches the first round of the band must add (or, negative, take away); ``carried``: stitches that
    the next section takes more.
    """

    repair: RepairChoice
    text: str
    stage: Stage
    progress: Progress
    entries: tuple[Entry, ...]
    difference: int = 0
    carried: int = 0


@dataclass(frozen=True, slots=True)
class Outlook:
    """What a count leads to. ``index``: the stage that was counted; ``ways``: in order of sense, never empty.

    ``verdict``: how the rest lies, None where that cannot be told; ``to_go``: the spots it still takes at the rate of
    an edge that nobody counted.
    """

    index: int
    stage: Stage
    before: Progress
    counted: int
    expected: int
    put: Put
    spot: int
    verdict: Verdict | None
    ways: tuple[Way, ...]
    to_go: int | None = None

    @property
    def open_count(self) -> bool:
        """Whether nobody knew how many stitches it was to have, so that it cannot be short of any."""
        return self.stage.uncounted == "all"


def counted_stage(work: StepWork) -> int | None:
    """Return the index of the edge a count is about, by its spots or pinned: under way, or just walked to its end.

    A section is no longer counted by itself once anything after it was begun, for it could not be opened again.
    """
    here = work.at
    edge = here < len(work.stages) and _is_edge(work.stages[here])
    if here < len(work.stages) and work.progress[here].mark != Reached():
        return here if edge else None
    walked = next((index for index in range(here - 1, -1, -1) if work.stages[index].units), None)
    if walked is not None and _is_edge(work.stages[walked]):
        return walked
    return here if edge else None


def _is_edge(stage: Stage) -> bool:
    return stage.unit == "spot" or stage.pinned


def looked_at(index: int, stage: Stage, before: Progress, counted: int, put: Put, spot: int) -> Outlook:
    """Return what a count of ``counted`` at ``spot`` leads to, with the ways of a recount of what is left."""
    told = recounted(stage, before, counted, spot)
    differ = brought(stage.place, before.mark.loops, counted)
    here = Reached(spot, 0, counted)
    ways = [_way(stage, before, here, differ, mending) for mending in told.repairs]
    stays = replace(_going_on(stage, before, spot, counted), mark=here, confirmed=(counted, spot))
    gives = replace(stage, target=counted + to_come(stage, stays, spot) or stage.target)
    ways.append(Way("as-it-is", "Note the count and carry on as planned.", gives, stays, differ))
    return Outlook(index, stage, before, counted, before.mark.loops, put, spot, told.verdict, tuple(ways))


def _going_on(stage: Stage, before: Progress, spot: int, counted: int) -> Progress:
    """Return the progress with the plan there is from ``spot`` on as a stretch of its own, which begins with the count.

    What lay beyond the spot is forgotten with it: a stray and what was to make up for it, a later spacing.
    """
    kept = cut_back(before, spot)
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
    mark, rhythm, entries, repair = here, mending.rhythm, differ, _NAMES[mending.mend]
    if mending.to is not None:
        mark, rhythm = _taken_back(stage, before, here.loops, mending.to, rhythm)
        entries += brought(stage.place, here.loops, mark.loops, EDGE, EDGE)
    after = gone_on_from(before, mark, rhythm)
    changed = replace(stage, target=mending.total)
    return Way(repair, mending.text, changed, after, entries, mending.difference)


def _taken_back(stage: Stage, before: Progress, counted: int, to: RipBack, rhythm: Rhythm) -> tuple[Reached, Rhythm]:
    """Return where ripping back leads, and the rest from there: by presses, where they explain what was counted."""
    known, since = explained_from(before)
    if counted == before.mark.loops - before.mark.within and since <= to.spot:
        loops = known + loops_up_to(before, to.spot) - loops_up_to(before, since)
        rest = rhythm if loops == to.loops else recounted(stage, before, loops, to.spot).rhythm
        if rest is not None:
            return Reached(to.spot, 0, loops), rest
    return Reached(to.spot, 0, to.loops), rhythm


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
        behind=partial(picks_behind, before),
        skips_first=skips_first(stage, before, spot),
        confirmed=before.confirmed,
        natural=stage.rate if stage.natural else None,
        style=stage.style,
        ends=stage.ends,
        per_10cm=stage.per_10cm,
        unit=stage.spot,
    )


def gone_on_from(before: Progress, mark: Reached, rhythm: Rhythm) -> Progress:
    """Return the progress cut back to ``mark`` and counted there, with ``rhythm`` planned from there on."""
    kept = cut_back(before, mark.units).stretches if mark.units else ()
    stretches = (*kept, Stretch(mark.units, rhythm, loops=mark.loops))
    return replace(before, mark=mark, stretches=stretches, confirmed=(mark.loops, mark.units))


def cut_back(progress: Progress, spot: int) -> Progress:
    """Return the progress with everything planned or strayed beyond ``spot`` forgotten."""
    kept = (stretch for stretch in progress.stretches if stretch.start < spot or not stretch.start)
    return replace(progress, stretches=tuple(cut_at(stretch, spot) for stretch in kept))
