"""Which face a stage has, and what it says. One function a unit; a test walks every kind to see that each has one."""

from dataclasses import replace

from finishing_tui.craft.spacing import say, space
from finishing_tui.craft.words import plural
from finishing_tui.garment.decide.press import next_mark
from finishing_tui.garment.edge_length import rows_needed
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import counted_at_end, not_counted
from finishing_tui.garment.walk import (
    at_pin,
    next_pick,
    next_pin,
    pins_behind,
    planned,
    run_end,
    strayed_in_run,
    stretch_at,
    waits_for_count,
)
from finishing_tui.garment.work import Progress, StepWork, Stretch
from finishing_tui.glance.stored_words import ACTS
from finishing_tui.glance.values import (
    Edge,
    Face,
    ItemFace,
    MessageFace,
    PairFace,
    RoundFace,
    SpotFace,
    StitchFace,
    ValueFace,
)
from finishing_tui.glance.wishes import NONE, Wishes
from finishing_tui.glance.yarn import tail_at_hole, yarn_to_go
from finishing_tui.recipe.stage import Stage

NEAR_THE_END = 9
"""So many spots before its end an edge that nobody counted is short enough to count what is left."""


def face_of(state: State, work: StepWork, wishes: Wishes = NONE) -> Face:
    """Return the face of the stage under way of a step that was begun, told as ``wishes`` say.

    A section that just ended and waits for its count keeps its face until that is taken or passed.
    """
    ended = counted_at_end(work)
    if ended is not None:
        return (_pinned if work.stages[ended].pinned else _ended)(state, work, ended)
    if work.complete:
        finish = wishes.finish
        return MessageFace("CHECK", f"Check it, then press {finish}.", mood="to do")
    index = work.at
    stage, progress = work.stages[index], work.progress[index]
    match stage.unit:
        case "spot":
            return _spots(state, work, index)
        case "stitch" if stage.pinned:
            return _pinned(state, work, index, wishes)
        case "stitch":
            return _stitches(state, stage, progress, wishes)
        case "pair":
            return _pairs(state, stage, progress, wishes)
        case "round":
            return _rounds(state, stage, progress)
        case "item":
            short = tail_at_hole(state, wishes.units) if stage.act == "close" else ""
            texts = tuple(item.text + short for item in stage.items)
            return ItemFace(ACTS[stage.act], stage.words + short, texts, progress.mark.units)
        case "value":
            return ValueFace(ACTS[stage.act], stage.words, stage.of, progress.value)


def edge_of(state: State, work: StepWork, index: int, progress: Progress | None = None) -> Edge:
    """Return the edge of a stage, as it stands or, of a stage of spots, with another progress for looking ahead."""
    stage = work.stages[index]
    first, last = index - 1, index + 1
    while first >= 0 and work.stages[first].unit == "item":  # a marker that is put in is no part of the edge
        first -= 1
    while last < len(work.stages) and work.stages[last].unit == "item":
        last += 1
    before = work.stages[first].title if first >= 0 else ""
    after = work.stages[last].title if last < len(work.stages) else ""
    progress = progress or work.progress[index]
    if stage.pinned:
        each = replace(progress, stretches=(Stretch(0, space(stage.units, stage.units)),))
        return Edge(stage.units, progress.mark.units, None, before, after, state.plan.hand, each, pins=stage.halts)
    open_end = bool(stage.uncounted)
    half = None if not stage.halts else stage.halts[0] if open_end else stage.units // 2
    return Edge(stage.units, progress.mark.units, half, before, after, state.plan.hand, progress, open_end)


def rhythm_words(stage: Stage, progress: Progress) -> str:
    """Return the rhythm of the stretch under way in words; after a recount it begins "from row 16:"."""
    stretch = stretch_at(progress, min(progress.mark.units + 1, stage.units))
    if (stage.as_worked or stage.uncounted) and not stretch.start:
        return stage.words
    words = say(stretch.rhythm, unit=stage.spot)
    return f"from {stage.spot} {stretch.start + 1}: {words}" if stretch.start else words


def _spots(state: State, work: StepWork, index: int) -> SpotFace:
    stage, progress = work.stages[index], work.progress[index]
    mark = progress.mark
    waits = waits_for_count(stage, progress, state.pace)
    halfway, due = _halfway(stage, progress, waits=waits)
    if not due and mark.units and not progress.confirmed[1] and (passed := _passed_uncounted(work, index)) is not None:
        halfway = f"{work.stages[passed].title}, {work.progress[passed].mark.loops}: not counted"
        due = True
    first, act, after = _act(state, stage, progress)
    return SpotFace(
        count=mark.loops,
        target=stage.target,
        spot=mark.units,
        spots=stage.units,
        unit=stage.spot,
        act=act,
        first=first,
        after=after,
        then=_then(state, stage, progress),
        rhythm=rhythm_words(stage, progress),
        halfway=halfway,
        due=due,
        waits=waits,
        edge=edge_of(state, work, index),
        uncounted=stage.uncounted,
        to_go=_to_go(stage, progress),
    )


def _passed_uncounted(work: StepWork, index: int) -> int | None:
    """Return the section just before the one at ``index``, past a marker, where its count at the end was passed."""
    before = index - 1
    while before >= 0 and work.stages[before].unit == "item":
        before -= 1
    return before if before >= 0 and not_counted(work, before) else None


def _ended(state: State, work: StepWork, index: int) -> SpotFace:
    """Return the face of a section that is walked to its end, where its count is offered."""
    stage, progress = work.stages[index], work.progress[index]
    loops = progress.mark.loops
    return SpotFace(
        count=loops,
        target=stage.target,
        spot=progress.mark.units,
        spots=stage.units,
        unit=stage.spot,
        act="COUNT",
        first="",
        after="",
        then="the end of this step" if work.complete else f"then {work.stages[work.at].title}",
        rhythm=rhythm_words(stage, progress),
        halfway=f"the end: count, it should be {loops}",
        due=True,
        waits=True,
        edge=edge_of(state, work, index),
        uncounted=stage.uncounted,
    )


def _to_go(stage: Stage, progress: Progress) -> str:
    """Return how many more spots an edge that nobody counted takes at its rate."""
    left = stage.target - progress.mark.loops
    if stage.uncounted != "spots" or left <= 0:
        return ""
    rows = rows_needed(stage, progress, left)
    near = f"; count the {stage.spot}s that are left" if rows <= NEAR_THE_END and progress.mark.loops > left else ""
    return f"{left} to go: {plural(rows, f'more {stage.spot}')} at this rate{near}"


def _act(state: State, stage: Stage, progress: Progress) -> tuple[str, str, str]:
    """Return what to do next at the pace that was chosen, and what the same press does before and after it."""
    mark = progress.mark
    here = mark.units + 1
    if state.pace == "run" and not strayed_in_run(progress):
        loops = next_mark(state, stage, progress).loops - mark.loops
        skips = f"skip {many}" if (many := _skips(stage, progress)) else ""
        return ("", f"PICK {loops}" if loops > 1 else "PICK", skips) if loops else ("", skips.upper(), "")
    if state.pace != "loop":
        loops = planned(progress, here) - mark.within
        return "", "SKIP" if not loops else "PICK" if loops == 1 else f"PICK {loops}", ""
    pick = next_pick(stage, progress)
    if pick is None:
        return "", f"SKIP {stage.units - mark.units}", ""
    return f"skip {pick - here}" if pick > here else "", "PICK", ""


def _skips(stage: Stage, progress: Progress) -> int:
    """Return how many spots of the run under way are skipped."""
    here = progress.mark.units + 1
    end = min(run_end(progress, here), stage.units)
    return sum(1 for spot in range(here, end + 1) if not planned(progress, spot))


def _then(state: State, stage: Stage, progress: Progress) -> str:
    """Return what comes after the next thing."""
    after = next_mark(state, stage, progress)
    if after.units >= stage.units:
        return "last of this section"
    if after.within:
        return f"then again in the same {stage.spot}"
    return "then pick" if planned(progress, after.units + 1) else "then skip"


def _halfway(stage: Stage, progress: Progress, *, waits: bool) -> tuple[str, bool]:
    """Return what is said about the count at halfway, and whether it is due."""
    if not stage.halts:
        return "", False
    half = stage.halts[0]
    loops, spot = progress.confirmed
    if spot >= half:
        return f"counted {loops} at {stage.spot} {spot}", False
    if progress.mark.units < half:
        at = f"with {-(-stage.target // 2)} stitches" if stage.uncounted else f"{stage.spot} {half}"
        return f"count at halfway, {at}", False
    if waits:
        return f"halfway: count, it should be {progress.mark.loops}", True
    return f"count due: halfway was {stage.spot} {half}", True


def _said(stage: Stage, progress: Progress) -> str:
    return dict(stage.said).get(progress.mark.units + 1, "")


def _stitches(state: State, stage: Stage, progress: Progress, wishes: Wishes) -> StitchFace:
    done = progress.mark.units
    yarn = yarn_to_go(state, stage, done, wishes.units)
    return StitchFace(done, stage.units, ACTS[stage.act], stage.words, _said(stage, progress), yarn)


def _pinned(state: State, work: StepWork, index: int, wishes: Wishes = NONE) -> StitchFace:
    """Return the face of a pinned edge: under way, or walked to its end, where its count is offered as at any pin."""
    stage, progress = work.stages[index], work.progress[index]
    done, yarn = progress.mark.units, yarn_to_go(state, stage, progress.mark.units, wishes.units)
    waits = index < work.at or at_pin(stage, progress)
    act = "COUNT" if waits else ACTS[stage.act]
    said = _to_the_pin(stage, progress)
    if waits:
        said = f"the {'end' if done >= stage.units else 'pin'}: count, it should be {done}"
    return StitchFace(done, stage.units, act, stage.words, said, yarn, edge_of(state, work, index), waits)


def _to_the_pin(stage: Stage, progress: Progress) -> str:
    """Say how many are left to the next pin of an edge, and whether the one before was passed without a count."""
    done, behind = progress.mark.units, pins_behind(stage, progress)
    pin = next_pin(stage, done)
    passed = behind and progress.confirmed[0] < stage.halts[behind - 1]
    more = f"{pin - done} more to the {'next pin' if pin < stage.units else 'end'}"
    return f"{more}; not counted at the last pin" if passed else more


def part_of(stage: Stage, progress: Progress) -> str:
    """Return in which part of a pinned edge she is, in words."""
    return f"part {pins_behind(stage, progress) + 1} of {len(stage.halts) + 1}"


def _pairs(state: State, stage: Stage, progress: Progress, wishes: Wishes) -> PairFace:
    here, done = state.plan.here(state.ledger), progress.mark.units
    front, back = state.ledger.on(stage.front), state.ledger.on(stage.back)
    if stage.bars:
        front, back = (sum(taken[done:]) for taken in stage.bars)
    return PairFace(
        done,
        stage.units,
        ACTS[stage.act],
        here.name(stage.front),
        front,
        here.name(stage.back),
        back,
        stage.words,
        _said(stage, progress),
        stage.moves_of(done + 1),
        yarn_to_go(state, stage, done, wishes.units),
        sewn=bool(stage.bars),
    )


def _rounds(state: State, stage: Stage, progress: Progress) -> RoundFace:
    unit, done = stage.spot, progress.mark.units
    later = [(number, words) for number, words in stage.said if number > done + 1]
    coming = f"{unit} {later[0][0]}: {later[0][1]}" if later else ""
    stitches = state.ledger.on(stage.place)
    return RoundFace(done, stage.units, ACTS[stage.act], unit, stitches, stage.words, _said(stage, progress), coming)


def counted(face: Face) -> str:
    """Return a face's figure in a sentence: "14 of 24 stitches", for the list of garments and the line-by-line mode."""
    match face:
        case SpotFace():
            many = plural(face.target if face.wanted else face.count, "stitch")
            return f"{face.count} of {many}, {face.where}" if face.wanted else f"{many}, {face.where}"
        case StitchFace():
            return f"{face.count} of {plural(face.of, 'stitch')}"
        case PairFace():
            return f"{face.count} of {plural(face.of, 'pair')}"
        case RoundFace():
            return f"{face.unit} {face.count} of {face.of}"
        case ItemFace():
            return f"{face.done} of {len(face.items)}"
        case ValueFace():
            return face.value or "nothing typed yet"
        case MessageFace():
            return face.words
