"""A recount when the rows are not known: half way by the fold mark, or so many rows from the end.

What the knitter does know is how many loops she has and which rhythm she kept; that rhythm says how many rows the
loops stand for, give or take one. Where not even the rhythm is known, the first half itself is the measure for the
second. This module only finds the numbers; the recount itself is ``craft.recount``.
"""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.judging import Judgement, Verdict, judge
from finishing_tui.craft.recount_words import VERDICTS
from finishing_tui.craft.words import decimal, many, percent, plural, times


@dataclass(frozen=True, slots=True)
class CountedAt:
    """Where a count was taken: at spot ``at`` of ``spots``; ``sure`` is False where a number was worked out."""

    at: int
    spots: int
    sure: bool


def place(
    target: int,
    spots: int | None,
    *,
    counted: int,
    at: int | None = None,
    left: int | None = None,
    half: bool = False,
    rhythm: Fraction | None = None,
) -> CountedAt | None:
    """Find the spot and the spots from what is known; None at the half with neither spots nor a rhythm known.

    Known are ``spots`` or not, and the spot ``at``, or the spots ``left``, or that it is ``half`` way, or one of the
    first two with the third: an unknown number of spots is then twice that, give or take one. ``rhythm`` is the ratio
    that was kept, in loops a spot. An odd number of spots has its half mark before the middle one.

    Raises:
        Impossible: too little is known, or the numbers contradict each other.

    """
    if rhythm is not None and not 0 < rhythm <= 2:
        raise Impossible(f"a rhythm picks more than 0 and at most 2 loops a spot, not {rhythm}")
    given = [mark for mark in (at, left) if mark is not None]
    if len(given) > 1 or not (given or half):
        raise Impossible("say where you are in one way: the spot, the spots left, or that it is halfway")
    if spots is not None:
        return _known(spots, at, left, half=half)
    if given and half:
        return CountedAt(given[0], 2 * given[0], sure=False)
    if rhythm is None:
        if half:
            return None
        raise Impossible("without the number of spots, the rhythm you kept is needed too, such as 2/3")
    if at is not None:
        return CountedAt(at, max(rounded(target / rhythm), at), sure=False)
    walked = rounded(counted / rhythm)
    return CountedAt(walked, walked + (walked if left is None else left), sure=False)


def _known(spots: int, at: int | None, left: int | None, *, half: bool) -> CountedAt:
    """Find the spot where the number of spots is known."""
    if left is not None:
        at = spots - left
    if at is None:
        at = spots // 2
    elif half and abs(spots - 2 * at) > 1:
        raise Impossible(f"spot {at} is not halfway along {spots}: leave out one of the two")
    if not 0 <= at <= spots:
        raise Impossible(f"the spot must be from 0 to {spots}, not {at}")
    return CountedAt(at, spots, sure=True)


@dataclass(frozen=True, slots=True)
class SecondHalf:
    """The second half by the measure of the first: ``stitches`` to pick, judged, and said in sentences."""

    stitches: int
    judgement: Judgement
    text: str


def second_half(target: int, *, counted: int, per_10cm: int | None = None, unit: str = "spot") -> SecondHalf:
    """Judge the second half of an edge by the first, where neither the spots nor the rhythm are known.

    The first half took ``counted`` loops, so that is what the second takes by nature: *off* is the target less twice
    the count.

    Raises:
        Impossible: nothing is counted yet.

    """
    if counted < 1:
        raise Impossible("nothing is counted in the first half, so nothing says how the second should go")
    stitches = target - counted
    # Every loop of the first half stands for one place like it in the second.
    judgement = judge(stitches, counted, Fraction(1), target=target, per_10cm=per_10cm)
    return SecondHalf(stitches, judgement, _told(target, counted, judgement, unit))


def _told(target: int, counted: int, judgement: Judgement, unit: str) -> str:
    """Say what to do in the second half, to hands that know only their own rhythm."""
    off, stitches = target - 2 * counted, target - counted
    lines = [f"Counted {counted} of {target} at halfway: {stitches} to pick in the second half."]
    if stitches < 0:
        lines = [f"Counted {counted} of {target} at halfway: {-stitches} too many."]
    if off == 0:
        return f"{lines[0]}\nThe rest {VERDICTS[judgement.verdict]}: go on as you began."
    more, work = ("more", "increase") if off > 0 else ("fewer", "decrease")
    lines.append(
        f"The rest {VERDICTS[judgement.verdict]}: {plural(abs(off), 'stitch')} {more} than the first half took "
        f"({percent(abs(judgement.change))})."
    )
    if judgement.verdict in {Verdict.LIES_FLAT, Verdict.JUST_SHOWS}:
        how = "pick one that you would skip" if off > 0 else "skip one that you would pick"
        every = decimal(Fraction(counted, abs(off)), 0)
        where = "once, about the middle," if abs(off) == 1 else f"{times(abs(off))}, after about every {every} loops,"
        lines.append(f"Keep your rhythm, but {where} {how}.")
    else:
        lines.append("Rip back to where the count was still right.")
    lines += [
        f"Or: go on as you began; that makes {2 * counted}; {work} {abs(off)} evenly in the first round.",
        f"With the number of {many(unit)}, or the rhythm you kept, the rest can be given {unit} by {unit}.",
    ]
    return "\n".join(lines)
