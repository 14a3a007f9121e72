"""What a count in a stage of spots leads to, worked out before anything is decided.

The screen lays the ways side by side and ``decide`` carries one of them out; both read the same ``Outlook``, so what
was shown is what happens. Nothing changes silently.
"""

from dataclasses import replace

from finishing_tui.craft.figures import rounded
from finishing_tui.craft.going_on import go_on_at
from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.ledger import EDGE, brought
from finishing_tui.craft.open_edges import FOLD_OFF, at_the_fold
from finishing_tui.craft.rhythm import Rhythm
from finishing_tui.craft.words import plural
from finishing_tui.garment.edge_end import ended
from finishing_tui.garment.edge_length import at_its_rate, rows_needed, with_spots
from finishing_tui.garment.events import Put, WhyOff
from finishing_tui.garment.pinned_count import at_the_pins
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import explained_from, picks_behind, spot_with, to_come
from finishing_tui.garment.ways import CannotCount, Outlook, Way, counted_stage, cut_back, looked_at, recounted
from finishing_tui.garment.work import Progress, Reached, Stretch
from finishing_tui.recipe.kinds.pick_up_and_knit import MOST_SPOTS
from finishing_tui.recipe.stage import Stage

AT_NO_NUMBER: frozenset[Put] = frozenset({"as-planned", "past-half", "before-half", "not-known"})
"""What gives no number of the edge, and tells ahead from behind at best."""


def outlook(state: State, counted: int, answer: WhyOff | None = None, left: int | None = None) -> Outlook:
    """Return what counting ``counted`` loops in the section leads to.

    ``answer``: what a difference from the presses is put down to, or where on the edge it was counted; without one, a
    count that differs is looked at as if the loops differed. ``left``: the number that an answer takes: rows left, rows
    to spare, the stitches at which the edge ends, rows left over behind the last of them.

    Raises ``CannotCount`` when no section can be counted, or the numbers cannot be.
    """
    work = state.work
    index = counted_stage(work) if work else None
    if work is None or index is None:
        raise CannotCount("you are not picking up along an edge, so there is no section to count")
    stage, before = work.stages[index], work.progress[index]
    if stage.pinned:
        return at_the_pins(work, index, counted, answer)
    most = 2 * max(stage.units, stage.target if stage.uncounted else 0)
    if not 0 <= counted <= most:
        raise CannotCount(f"{counted} is too many for {stage.title}: it holds up to {most}")
    if answer == "edge-ends":
        return ended(work, index, counted, left or 0)
    expected = before.mark.loops
    if counted == expected and (answer is None or answer in AT_NO_NUMBER):
        return replace(_as_planned(index, stage, before), put=answer or "as-planned")
    put = answer or "loops"
    if put == "presses":
        return _presses(index, stage, before, counted)
    told, progress, spot = _where(stage, before, counted, put, left)
    if put != "loops" and (counted, spot, told) == (expected, before.mark.units, stage) and not stage.uncounted:
        return replace(_as_planned(index, stage, before), put=put)
    seen = looked_at(index, told, progress, counted, put, spot)
    if told is not stage and put != "half-way" and _nearly(stage, before, counted, told.units - spot):
        seen = replace(seen, ways=tuple(way for way in seen.ways if way.repair != "rip-back"))
    if put == "half-way":
        rate = recounted(told, progress, counted, spot).natural
        lies = at_the_fold(told.target - counted, spot, rate, target=told.target, per_10cm=told.per_10cm)
        if lies in {None, Verdict.LIES_FLAT}:  # a fold is no reason to rip back: she may only be a little past half
            seen = replace(seen, ways=tuple(way for way in seen.ways if way.repair != "rip-back"))
        return replace(seen, verdict=lies) if told.uncounted else seen
    if told.uncounted and counted < told.target:  # its rate goes on until they are there, whatever lies behind
        on = go_on_at(told.rate, told.target - counted, picks_behind(before, spot))
        return replace(seen, ways=tuple(_with_rest(way, on) for way in seen.ways if way.repair == "space-the-rest"))
    return seen


def _nearly(stage: Stage, before: Progress, counted: int, left: int) -> bool:
    """Return whether the rest, as it is picked, ends a few spots from the end of the edge: no reason to rip back.

    It is so few as a fold may be off, or a quarter of what is left where that is fewer; half must be behind.
    """
    to_pick = stage.target - counted
    if not 0 < to_pick <= counted:
        return False
    return abs(left - rows_needed(stage, before, to_pick)) <= min(FOLD_OFF, left // 4)


def _with_rest(way: Way, rest: Rhythm) -> Way:
    """Return the way with another rhythm from here on."""
    stretches = (*way.progress.stretches[:-1], replace(way.progress.stretches[-1], rhythm=rest))
    return replace(way, progress=replace(way.progress, stretches=stretches))


def _where(stage: Stage, before: Progress, counted: int, put: Put, left: int | None) -> tuple[Stage, Progress, int]:
    """Return the section as long as it is told to be, its plan on it, and the spot at which she is.

    Rows left, or what she found out by counting ahead from here, tell how long it is: what is walked and what is left,
    whatever was printed. Only where the count shows that presses do not tell the row, rows left tell that instead, on
    an edge that was counted.
    """
    here = before.mark.units + bool(before.mark.within)
    rest = _left(stage, before, counted, put, left)
    if stage.uncounted == "all" and rest is not None:
        stage = replace(stage, target=counted + rounded(rest * stage.rate))
    if stage.uncounted == "all" and put == "half-way":
        stage = replace(stage, target=2 * counted, uncounted="spots")
    if rest is not None and _lost(stage, before, counted, put):
        return stage, before, stage.units - rest
    if rest is not None and not stage.uncounted and here + rest == stage.units:
        return stage, before, here
    if rest is not None:
        return *with_spots(stage, before, max(here + rest, 1)), here
    if put == "half-way" and stage.uncounted:
        if not here:
            raise CannotCount(f"no {stage.spot} is walked yet, so this cannot be halfway")
        return *with_spots(stage, before, 2 * here, sure=False), here
    if put == "half-way":
        return stage, before, stage.units // 2
    if stage.uncounted:
        return *at_its_rate(stage, before, counted), here
    return stage, before, here


def _lost(stage: Stage, before: Progress, counted: int, put: Put) -> bool:
    """Return whether her row is what is not known, of an edge that was counted: her presses do not tell it."""
    return put == "rows-left" and counted != before.mark.loops and not (stage.uncounted or _like_the_first(stage))


def _like_the_first(stage: Stage) -> bool:
    """Return whether nobody counted the section: it is taken to be as long as its first side turned out to be."""
    return bool(stage.as_worked and stage.as_planned and stage.as_planned.uncounted)


def _left(stage: Stage, before: Progress, counted: int, put: Put, left: int | None) -> int | None:
    """Return how many spots are left, where that is told; raises ``CannotCount`` for a number that cannot be."""
    to_pick = stage.target - counted
    match put:
        case "rows-left":
            most = stage.units if _lost(stage, before, counted, put) else MOST_SPOTS
            if left is None or not 0 <= left <= most:
                raise CannotCount(f"type how many {stage.spot}s are left, 0 to {most:,}")
            return left
        case "rows-to-spare":
            if left is None or not 0 <= left <= MOST_SPOTS or to_pick < 0:
                raise CannotCount(f"type how many {stage.spot}s are to spare when you have {stage.target}: 0 or more")
            return rows_needed(stage, before, to_pick) + left
        case "ends-at":
            if left is None or not counted <= left <= max(stage.target, counted):
                raise CannotCount(
                    f"you have {plural(counted, 'stitch')}: the edge ends at {counted} to {stage.target} of them"
                )
            return rows_needed(stage, before, left - counted)
        case _:
            return None


def _as_planned(index: int, stage: Stage, before: Progress) -> Outlook:
    mark = before.mark
    whole = mark.loops - mark.within  # a spot that takes two and has one is counted when it is done
    confirmed = replace(before, confirmed=(whole, mark.units))
    text = f"{plural(mark.loops, 'stitch')} counted, as planned."
    way = Way("as-it-is", text, stage, confirmed, ())
    verdict = recounted(stage, before, whole, mark.units).verdict if mark.units else Verdict.LIES_FLAT
    to_go = rows_needed(stage, before, max(stage.target - mark.loops, 0)) if stage.uncounted == "spots" else None
    return Outlook(index, stage, before, mark.loops, mark.loops, "as-planned", mark.units, verdict, (way,), to_go)


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
    after = replace(cut_back(before, spot), mark=Reached(spot, 0, counted), confirmed=(counted, spot))
    if counted + to_come(stage, after, spot) != stage.target and spot < stage.units:
        # A stray beyond this spot is forgotten, and what was to make up for it with it: space the rest anew.
        rest = recounted(stage, before, counted, spot).rhythm
        if rest is not None:
            after = replace(after, stretches=(*after.stretches, Stretch(spot, rest, loops=counted)))
    text = f"Carry on: {plural(counted, 'stitch')} means {stage.spot} {spot}."
    way = Way("space-the-rest", text, stage, after, brought(stage.place, before.mark.loops, counted, EDGE, EDGE))
    return Outlook(index, stage, before, counted, before.mark.loops, "presses", spot, Verdict.LIES_FLAT, (way,))
