"""An edge whose spots nobody counted: worked at a rate, and learned from what the hands find out on the way.

A pattern prints a count and at most a rate ("24 stitches, about 2 for every 3 rows"). What is worked is the rate's own
repeat, over and over, until the count is there; where the edge ends only the knitter can say. Everything here is exact
for what she says, and says nothing about what she does not.
"""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.judging import Verdict, judge
from finishing_tui.craft.runs import Run, Runs
from finishing_tui.craft.spacing import space

FOLD_OFF = 3
"""How far a half that was found by folding may be off, in spots (common practice, no source)."""

MOST_OF_A_RATE = 100
"""The largest number in a rate that hands can keep."""


def read_rate(text: str) -> Fraction:
    """Return the rate ``text`` says: stitches, a slash and spots ("2/3"), or a whole number of stitches a spot.

    Raises:
        Impossible: it is not such a rate, picks nothing, or more than two a spot.

    """
    stitches, slash, spots = text.partition("/")
    numbers = [part.strip() for part in (stitches, spots if slash else "1")]
    if not all(part.isascii() and part.isdigit() and len(part) <= len(str(MOST_OF_A_RATE)) for part in numbers):
        raise Impossible(f'a rate is stitches, a slash and spots, such as "2/3", not {text[:40]!r}')
    picked, of = map(int, numbers)
    if not (1 <= picked <= MOST_OF_A_RATE and 1 <= of <= MOST_OF_A_RATE and picked <= 2 * of):
        raise Impossible(
            f'the rate "{text[:40]}" cannot be kept: 1 to {MOST_OF_A_RATE} stitches for 1 to {MOST_OF_A_RATE} spots, '
            "at most two in each"
        )
    return Fraction(picked, of)


def rate_words(rate: Fraction, unit: str) -> str:
    """Say a rate as hands keep it: "2 of every 3 rows", "1 in every ridge", "3 in every 2 chains"."""
    if rate.denominator == 1:
        return f"{rate.numerator} in every {unit}"
    joint = "of" if rate < 1 else "in"
    return f"{rate.numerator} {joint} every {rate.denominator} {unit}s"


def by_rate(stitches: int, rate: Fraction) -> Runs:
    """Return the rhythm that makes ``stitches`` at ``rate``, and ends with the last of them.

    It is the rate's own repeat over and over, so that after any ``s`` spots the picks are within one of ``s`` times the
    rate.

    Raises:
        Impossible: no stitches, or a rate that picks nothing or more than two a spot.

    """
    if stitches < 1 or not 0 < rate <= 2:
        raise Impossible(f"{stitches} stitches cannot be picked at {rate} a spot: at least one, and two a spot at most")
    repeats = -(-stitches // rate.numerator)
    repeat = space(rate.numerator, rate.denominator).as_runs()
    one = replace(repeat[0], times=repeat[0].times * repeats)
    whole = Runs((one,) if len(repeat) == 1 else repeat * repeats)
    return first_of(whole, whole.spot_of(stitches), stitches)


def first_of(rhythm: Runs, spots: int, stitches: int) -> Runs:
    """Return the first ``spots`` spots of a rhythm, the last of which is left at as many as make ``stitches``."""
    kept = rhythm.mirrored().rest(rhythm.spots - spots).mirrored()
    if kept.stitches == stitches:
        return kept
    before = rhythm.mirrored().rest(rhythm.spots - spots + 1).mirrored()
    return Runs((*before.runs, Run(stitches - before.stitches, 1, 1)))


def spots_for(loops: int, ahead: Iterator[int]) -> int:
    """Return how many spots it takes to make ``loops`` when the next spots have as many loops as ``ahead`` says."""
    made = spots = 0
    while made < loops:
        made += next(ahead)
        spots += 1
    return spots


def at_the_fold(
    to_pick: int, walked: int, rate: Fraction, *, target: int, per_10cm: int | None = None
) -> Verdict | None:
    """Return how the second half lies, where the fold is at spot ``walked``: as many again, give or take three.

    None where the verdict is not the same over that whole range.
    """
    lengths = range(max(walked - FOLD_OFF, 0), walked + FOLD_OFF + 1)
    found = {judge(to_pick, left, rate, target=target, per_10cm=per_10cm).verdict for left in lengths}
    return found.pop() if len(found) == 1 else None
