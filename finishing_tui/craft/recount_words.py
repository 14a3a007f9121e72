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
        Verdict.JUST_SHOWS: "just shows",
        Verdict.WILL_PUCKER: "will pucker",
        Verdict.WILL_FLARE: "will flare",
        Verdict.CANNOT_BE: "cannot be",
    }
)
"""How the rest lies, in words."""


def where_it_stands(target: int, spots: int, at: int, counted: int, unit: str) -> str:
    """Say what is there, and what is still to come."""
    left, spots_left = target - counted, spots - at
    to_come = f"{left} to pick" if left >= 0 else f"{-left} too many"
    return f"Counted {counted} of {target} at {unit} {at} of {spots}: {to_come}, {plural(spots_left, unit)} left."


def about_the_rest(verdict: Verdict, here: Judgement, left: int, spots_left: int, unit: str) -> str:
    """Say how the rest lies when it is spaced anew, with the reason."""
    if verdict is Verdict.CANNOT_BE:
        return f"That cannot be: {_why_not(left, spots_left, unit)}."
    if left == spots_left == 0:
        return f"The section is at its end, and it {VERDICTS[verdict]}."
    if not here.off:
        return f"Spaced anew, the rest {VERDICTS[verdict]}: it is exactly what its {many(unit)} take."
    more = "more" if here.off > 0 else "fewer"
    stitches = "stitch" if abs(here.off) == 1 else "stitches"
    return (
        f"Spaced anew, the rest {VERDICTS[verdict]}: {decimal(abs(here.off))} {stitches} {more} than its "
        f"{many(unit)} take ({percent(abs(here.change))})."
    )


def _why_not(left: int, spots_left: int, unit: str) -> str:
    if left < 0:
        return f"there are {plural(-left, 'loop')} more than wanted already"
    if spots_left == 0:
        return f"the edge is at its end and {plural(left, 'stitch')} {'is' if left == 1 else 'are'} still wanted"
    return f"{plural(left, 'stitch')} cannot come out of {plural(spots_left, unit)}, not even with two in every one"


def spaced_anew(left: int, rhythm: Rhythm, ends: Ends, unit: str) -> str:
    """Say how the rest goes, spaced anew."""
    if left == 0:
        if ends != "open" and rhythm.spots:
            return (
                f"All are there already: take out the last loop and pick it in the last {unit}, "
                "so that no hole is left at the end."
            )
        return "All are there: " + (f"{say(rhythm, unit)} that is left." if rhythm.spots else "the section is done.")
    return f"Pick {plural(left, 'stitch')} from the {plural(rhythm.spots, unit)} left: {say(rhythm, unit)}."


def first_round(counted: int, rhythm: Rhythm, difference: int, unit: str) -> str:
    """Say how the rest goes at the natural ratio, and what the first round then has to put right."""
    how = f"Go on at the natural ratio ({say(rhythm, unit)})" if rhythm.spots else "Leave it as it is"
    total = counted + rhythm.stitches
    if difference == 0:
        return f"{how}: that makes {total}, just what is wanted."
    work = "increase" if difference > 0 else "decrease"
    return f"{how}: that makes {total}; {work} {abs(difference)} evenly in the first round."


def ripped(spot: int, loops: int, rhythm: Rhythm, unit: str) -> str:
    """Say how far to rip back, and how to go on from there."""
    if not loops:
        where = f" after {unit} {spot}" if spot else ""
        return f"Take it all out and begin this section anew{where}; then it lies flat: {say(rhythm, unit)}."
    until = f"until {plural(loops, 'loop')} are left" if loops != 1 else "until 1 loop is left"
    return f"Rip back {until}, at {unit} {spot}; from there the rest lies flat: {say(rhythm, unit)}."


def no_rip_back(since_spot: int, unit: str) -> str:
    """Say that ripping back mends nothing, and why."""
    if since_spot:
        return f"Ripping back to the last count, at {unit} {since_spot}, mends nothing: the rest never lies flat."
    return "Ripping back mends nothing: the target itself does not suit this edge."
