"""What a count along a pinned edge leads to: one over or under goes into the next part, and at the end it is put right.

Nobody knows the rows of such an edge, so no way names one, and how the rest lies is not told.
"""

from dataclasses import replace

from finishing_tui.craft.ledger import EDGE, brought
from finishing_tui.craft.words import plural
from finishing_tui.garment.edge_end import MOST_AT_THE_END, MOST_STRANDS, carried_on, goes_to_the_next
from finishing_tui.garment.events import Put, WhyOff
from finishing_tui.garment.pinned import pin_before, taken_back
from finishing_tui.garment.walk import next_pin
from finishing_tui.garment.ways import CannotCount, Outlook, Way
from finishing_tui.garment.work import Progress, Reached, StepWork
from finishing_tui.recipe.stage import Stage


def at_the_pins(work: StepWork, index: int, counted: int, answer: WhyOff | None) -> Outlook:
    """Return what counting ``counted`` stitches of a pinned edge leads to, on its way or at its end.

    Raises ``CannotCount`` for an answer that needs rows, and for a number that cannot be.
    """
    stage, before = work.stages[index], work.progress[index]
    if answer not in {None, "presses", "loops", "edge-ends"}:
        raise CannotCount(f"nobody counted the {_row(stage)}s of {stage.title}: count its stitches")
    ends = answer == "edge-ends"
    if ends and not (counted and before.mark.units):
        raise CannotCount(f"nothing of {stage.title} is picked up yet, so it cannot end here")
    ways: tuple[Way, ...]
    put: Put = answer or "counted"
    if counted == before.mark.units and not ends:
        put, ways = "as-planned", (_goes_on(stage, before, counted, moves=False),)
    elif index == work.at and not ends:
        if counted > stage.units:
            raise CannotCount(f"{counted:,} is too many: {stage.title} takes {stage.units} in all")
        ways = (_goes_on(stage, before, counted, moves=answer != "presses"),)
        if abs(counted - before.mark.units) > 1 and answer != "presses":
            ways = (*ways, _ripped(stage, before, counted))
    elif answer == "presses" and counted < stage.target:
        ways = (_goes_on(stage, before, counted, moves=False),)
    else:
        put = answer or "loops"
        ways = _at_its_end(work, index, counted)
    return Outlook(index, stage, before, counted, before.mark.units, put, counted, None, ways)


def _row(stage: Stage) -> str:
    return stage.spot or "row"


def _goes_on(stage: Stage, before: Progress, counted: int, *, moves: bool) -> Way:
    """Return the way that goes on from ``counted``.

    ``moves``: that was counted at the pin. It stays where it is on the edge, so what it was to have is what was
    counted there.
    """
    halts = tuple(counted if moves and pin == before.mark.units else pin for pin in stage.halts)
    there = stage
    if halts != stage.halts and halts == tuple(sorted(set(halts))):
        there = replace(stage, halts=halts, as_planned=stage.as_planned or stage)
    left, pin = next_pin(there, counted) - counted, next_pin(there, counted)
    end = "the next pin" if pin < there.units else "the end"
    text = f"Pick up {left} to {end}" if left else f"Pick up no more: you have all {there.units}"
    entries = brought(stage.place, before.mark.units, counted, EDGE, EDGE)
    return Way("space-the-rest", text, there, _counted(before, counted), entries)


def _counted(before: Progress, loops: int) -> Progress:
    return replace(before, mark=Reached(loops, 0, loops), confirmed=(loops, loops))


def _ripped(stage: Stage, before: Progress, counted: int) -> Way:
    """Return the way back to the pin before, from which the rest is picked up once more."""
    pin = pin_before(stage, min(counted, before.mark.units))
    back, after = taken_back(stage, before, pin)
    entries = (
        *brought(stage.place, before.mark.units, counted, EDGE, EDGE),
        *brought(stage.place, counted, pin, EDGE, EDGE),
    )
    text = f"Rip back to the pin at {pin}" if pin else "Rip it all out; start again at the beginning"
    return Way("rip-back", text, back, replace(after, confirmed=(pin, pin)), entries)


def _at_its_end(work: StepWork, index: int, counted: int) -> tuple[Way, ...]:
    """Return the ways at the end of the edge, in the order of hands: what shows least first, on purpose last."""
    stage, before = work.stages[index], work.progress[index]
    missing = stage.target - counted
    differ = brought(stage.place, before.mark.units, counted, EDGE, EDGE)
    here = _counted(before, counted)
    if not missing:
        return (Way("as-it-is", "The edge ends here", stage, here, differ),)
    halts = tuple(pin for pin in stage.halts if pin < counted)
    fits = replace(stage, units=counted, target=counted, halts=halts, as_planned=None)
    rip = _ripped(stage, before, counted)
    if missing < 0:
        begun = replace(fits, as_planned=stage.as_planned or stage)
        mended = Way("first-round", "", begun, here, differ, missing)
        return mended, rip, Way("as-it-is", "Leave it with more stitches", fits, here, differ)
    full = _counted(before, stage.target)
    entries = (*differ, *brought(stage.place, counted, stage.target, EDGE, EDGE))
    ways: list[Way] = []
    if missing <= MOST_AT_THE_END:
        rows = f"{'one' if missing == 1 else missing} of the last {_row(stage)}s"
        ways.append(Way("double-last", f"Pick up a second stitch in {rows}", stage, full, entries))
    if missing <= MOST_STRANDS:
        text = f"Lift {plural(missing, 'strand')}, twisted, onto the needle here"
        ways.append(Way("strand", text, stage, full, entries))
    ways += [rip, Way("as-it-is", "Leave it with fewer stitches", fits, here, differ)]
    if carried_on(work, index, missing) is not None:
        text = goes_to_the_next(work, index, missing)
        ways.append(Way("next-section", text, fits, here, differ, carried=missing))
    return tuple(ways)
