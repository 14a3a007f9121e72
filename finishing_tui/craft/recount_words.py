"""The sentences of a recount: where it stands, how the rest would lie, and each way to go on.

Sentences only: nothing is computed here but the figures' own wording.
"""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.craft.judging import Judgement, Verdict
from finishing_tui.craft.saying import say
from finishing_tui.craft.spacing import Ends, Rhythm
from finishing_tui.craft.words import decimal, many, percent, plural

VERDICTS: Mapping[Verdict, str] = MappingProxyType(
    {
        Verdict.LIES_FLAT: "lies flat",
        Verdict.JUST_SHOWS: "shows a little",
        Verdict.WILL_PUCKER: "will pucker",
        Verdict.WILL_FLARE: "will flare",
        Verdict.CANNOT_BE: "won't fit",
    }
)
"""How the rest lies, in words."""


def where_it_stands(target: int, spots: int, at: int, counted: int, unit: str) -> str:
    """Say what is there, and what is still to come."""
    left, spots_left = target - counted, spots - at
    here = f"{counted} of {target} at {unit} {at} of {spots}"
    if left <= 0:
        return f"{here}: {f'{-left} too many' if left else 'all there'}, {plural(spots_left, unit)} left."
    return f"{here}. Pick up {left} over the last {plural(spots_left, unit)}."


def about_the_rest(verdict: Verdict, here: Judgement, left: int, spots_left: int, unit: str) -> str:
    """Say how the rest lies when it is spaced anew, with the reason."""
    if verdict is Verdict.CANNOT_BE:
        return f"{_why_not(left, spots_left, unit)}."
    if left == spots_left == 0:
        return f"The section is at its end, and it {VERDICTS[verdict]}."
    if not here.off:
        return f"Re-spaced, the rest {VERDICTS[verdict]}: exactly right for its {many(unit)}."
    off = "too many" if here.off > 0 else "too few"
    stitches = "stitch" if abs(here.off) == 1 else "stitches"
    return (
        f"Re-spaced, the rest {VERDICTS[verdict]}: {decimal(abs(here.off))} {stitches} {off} for its "
        f"{many(unit)} ({percent(abs(here.change))})."
    )


def _why_not(left: int, spots_left: int, unit: str) -> str:
    if left < 0:
        return f"You already have {-left} more than the section needs"
    if spots_left == 0:
        return f"This is the end of the edge, and you still need {plural(left, 'stitch')}"
    return f"{plural(left, 'stitch')} is too many for {plural(spots_left, unit)}, even at two in each"


def spaced_anew(left: int, rhythm: Rhythm, ends: Ends, unit: str) -> str:
    """Say how the rest goes, spaced anew."""
    if left == 0:
        if ends != "open" and rhythm.spots:
            return (
                f"You have them all: take out the last stitch and pick it up in the last {unit}, "
                "so that no hole is left at the end."
            )
        rest = f"{say(rhythm, unit)} that is left" if rhythm.spots else "the section is done"
        return f"You have them all: {rest}."
    return f"Pick up {plural(left, 'stitch')} over the last {plural(rhythm.spots, unit)}: {say(rhythm, unit)}."


def first_round(counted: int, rhythm: Rhythm, difference: int, unit: str) -> str:
    """Say how the rest goes at the natural ratio, and what the first round then has to put right."""
    how = f"Go on at the rate your gauge gives ({say(rhythm, unit)})" if rhythm.spots else "Leave it"
    total = counted + rhythm.stitches
    if difference == 0:
        return f"{how}: that gives {total}, exactly right."
    work = "increase" if difference > 0 else "decrease"
    return f"{how}: that gives {total}; {work} {abs(difference)} evenly in the first row or round."


def ripped(spot: int, loops: int, rhythm: Rhythm, unit: str) -> str:
    """Say how far to rip back, and how to go on from there."""
    if not loops:
        where = f" after {unit} {spot}" if spot else ""
        return f"Rip it all out and start this section again{where}. Then it lies flat: {say(rhythm, unit)}."
    return f"Rip back to {unit} {spot} ({plural(loops, 'stitch')}). From there it lies flat: {say(rhythm, unit)}."


def no_rip_back(since_spot: int, unit: str) -> str:
    """Say that ripping back mends nothing, and why."""
    if since_spot:
        return f"Ripping back to the last count, at {unit} {since_spot}, won't help: the rest never lies flat."
    return "Ripping back won't help: the total is wrong for this edge."
