"""A recount: what is really on the needle, how the rest lies if it is spaced anew, and what else can be done.

The answers stand side by side and in order of sense; nothing here chooses for the knitter. What a count means when
the row is not known is worked out in ``craft.unknown_row``.
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from functools import partial

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.going_on import Behind, go_on, nothing_behind
from finishing_tui.craft.judging import Judgement, Verdict, judge
from finishing_tui.craft.recount_words import (
    about_the_rest,
    first_round,
    no_rip_back,
    ripped,
    spaced_anew,
    where_it_stands,
)
from finishing_tui.craft.ripping import RipBack, WorkedStretch, rip_back
from finishing_tui.craft.spacing import Ends, Rhythm, Style

__all__ = ["Judgement", "Recount", "RecountMend", "Repair", "RipBack", "Verdict", "judge", "recount"]


class RecountMend(StrEnum):
    """A way to go on after a recount; the value is its name."""

    SPACE_THE_REST = "space the rest"
    FIRST_ROUND = "first round"
    """Pick the rest at the natural ratio and put the difference right evenly in the first round."""
    RIP_BACK = "rip back"


@dataclass(frozen=True, slots=True)
class Repair:
    """One way to go on: how the rest is picked, and what is then on the needle.

    ``rhythm`` goes on from here, or for ``RIP_BACK`` from ``to``. ``total`` is what the section then has, and
    ``difference`` what the first round must add (below 0: take away) to reach the target. ``text`` is a sentence.
    """

    mend: RecountMend
    rhythm: Rhythm
    total: int
    difference: int
    text: str
    to: RipBack | None = None


@dataclass(frozen=True, slots=True)
class Recount:
    """The answer to a recount.

    ``rhythm`` is the rest spaced anew, or None when that cannot be; ``off``, ``change`` and ``verdict`` are how it
    would lie (see ``Judgement``), ``natural`` the ratio it was judged by. ``rip_back`` is where to rip back to: None
    when the rest lies flat, and when ripping back mends nothing. ``repairs`` stand in order of sense, and ``text``
    says it all in sentences.
    """

    stitches_left: int
    spots_left: int
    natural: Fraction
    rhythm: Rhythm | None
    off: Fraction
    change: Fraction
    verdict: Verdict
    rip_back: RipBack | None
    repairs: tuple[Repair, ...]
    text: str


def recount(
    target: int,
    spots: int,
    *,
    at: int,
    counted: int,
    behind: Behind = nothing_behind,
    skips_first: bool = False,
    confirmed: tuple[int, int] = (0, 0),
    natural: Fraction | None = None,
    style: Style = "easy",
    ends: Ends = "open",
    per_10cm: int | None = None,
    unit: str = "spot",
) -> Recount:
    """Take stock at spot ``at`` of ``spots``, where ``counted`` loops are there of ``target``.

    ``confirmed`` is the last count that was confirmed, as (loops, spot); one that lies not before this spot, or had
    more loops than there are now, no longer stands. ``natural`` is the natural ratio of the edge in stitches a spot
    (None: the plan's own). With ``ends`` closed the last spot is picked; the first one was, if any was walked.
    ``behind``: how many spots in a row were picked up to a spot, and ``skips_first``: the runs so far begin with their
    skips (see ``go_on``).

    Whoever follows the plan is told that it lies flat: where the rest lay flat at the start, or at the last count,
    and what is here is within one stitch of the straight line from there to the target, it still does.

    Raises:
        Impossible: a number out of range.

    """
    _refuse(target, spots, at, counted)
    ratio = Fraction(target, spots) if natural is None else natural
    stands = 0 <= confirmed[1] < at and 0 <= confirmed[0] <= counted
    since_loops, since_spot = confirmed if stands else (0, 0)
    stretch = WorkedStretch(target, spots, at, counted, since_loops, since_spot, ratio, per_10cm)
    here = judge(target - counted, spots - at, ratio, target=target, per_10cm=per_10cm)
    verdict = Verdict.LIES_FLAT if _follows(stretch, here) else here.verdict
    back = rip_back(stretch) if at > 0 and verdict is not Verdict.LIES_FLAT else None
    ways = _ways(stretch, verdict, back, ends, unit, partial(_on, style=style, behind=behind, skips_first=skips_first))
    anew = next((way.rhythm for way in ways if way.mend is RecountMend.SPACE_THE_REST), None)
    text = [
        where_it_stands(target, spots, at, counted, unit),
        about_the_rest(verdict, here, target - counted, spots - at, unit),
    ]
    if verdict is not Verdict.LIES_FLAT and back is None:
        text.append(no_rip_back(since_spot, unit))
    text += [f"{number}. {way.text}" for number, way in enumerate(ways, 1)]
    return Recount(
        stitches_left=target - counted,
        spots_left=spots - at,
        natural=ratio,
        rhythm=anew,
        off=here.off,
        change=here.change,
        verdict=verdict,
        rip_back=back,
        repairs=ways,
        text="\n".join(text),
    )


def _refuse(target: int, spots: int, at: int, counted: int) -> None:
    """Raise Impossible, in one sentence, for what cannot be a recount."""
    if target < 1 or spots < 1:
        raise Impossible(f"a recount needs a target and spots of at least 1, not {target} and {spots}")
    if not 0 <= at <= spots:
        raise Impossible(f"the spot must be from 0 to {spots}, not {at}")
    if counted < 0:
        raise Impossible(f"there cannot be {counted} loops: give the count, 0 or more")


def _follows(stretch: WorkedStretch, here: Judgement) -> bool:
    """Return whether this is within one stitch of a plan that lay flat when it began, so that it still does.

    The plan began at the first spot, or anew at the last count.
    """
    if here.verdict in {Verdict.LIES_FLAT, Verdict.CANNOT_BE}:
        return False
    for loops, spot in {(0, 0), (stretch.since_loops, stretch.since_spot)}:
        left, spots = stretch.target - loops, stretch.spots - spot
        begun = judge(left, spots, stretch.natural, target=stretch.target, per_10cm=stretch.per_10cm)
        planned = Fraction(left, spots) * (stretch.spots - stretch.at)
        if begun.verdict is Verdict.LIES_FLAT and abs(stretch.target - stretch.counted - planned) <= 1:
            return True
    return False


def _ways(
    stretch: WorkedStretch, verdict: Verdict, back: RipBack | None, ends: Ends, unit: str, on: Callable[..., Rhythm]
) -> tuple[Repair, ...]:
    """Return the ways to go on in order of sense: a gentle change first, else ripping back first."""
    left, spots_left = stretch.target - stretch.counted, stretch.spots - stretch.at
    rest_ends: Ends = "last" if ends == "closed" and stretch.at > 0 else ends
    anew, out = [], []
    if verdict is not Verdict.CANNOT_BE:
        rhythm = on(left, spots_left, rest_ends, stretch.at)
        text = spaced_anew(left, rhythm, rest_ends, unit)
        anew = [Repair(RecountMend.SPACE_THE_REST, rhythm, stretch.target, 0, text)]
    if back is not None:
        ends_there: Ends = rest_ends if back.spot else ends
        rhythm = on(stretch.target - back.loops, stretch.spots - back.spot, ends_there, back.spot)
        text = ripped(back.spot, back.loops, rhythm, unit)
        out = [Repair(RecountMend.RIP_BACK, rhythm, stretch.target, 0, text, back)]
    rhythm = on(_by_nature(stretch.natural, spots_left, rest_ends), spots_left, rest_ends, stretch.at)
    total = stretch.counted + rhythm.stitches
    text = first_round(stretch.counted, rhythm, stretch.target - total, unit)
    later = [Repair(RecountMend.FIRST_ROUND, rhythm, total, stretch.target - total, text)]
    gentle = verdict in {Verdict.LIES_FLAT, Verdict.JUST_SHOWS}
    return (*anew, *later, *out) if gentle else (*out, *later, *anew)


def _on(stitches: int, spots: int, ends: Ends, at: int, *, style: Style, behind: Behind, skips_first: bool) -> Rhythm:
    return go_on(stitches, spots, style=style, ends=ends, behind=behind(at), skips_first=skips_first)


def _by_nature(natural: Fraction, spots: int, ends: Ends) -> int:
    """Return the stitches that ``spots`` take by nature: the nearest whole number that these ends can have."""
    least = 0 if ends == "open" or not spots else 2 if ends == "closed" and spots > 1 else 1
    return min(max(rounded(natural * spots), least), 2 * spots)
