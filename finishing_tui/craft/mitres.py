"""Corners of a band: mitres and the point of a V, round by round, with the count after each.

A double decrease takes one stitch from each side of a held center stitch, so both sides lose alike: they must have
the same parity to begin with, or the rib meets the center differently on the two sides (webknits 2008).
"""

from dataclasses import dataclass

from finishing_tui.craft.counts import MOST, counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.words import ordinal, plural

_ROUNDS = 1_000
"""More rounds than any band has."""


@dataclass(frozen=True, slots=True)
class Round:
    """One round of a mitred band: its ``number`` from 1, whether it is ``shaped``, the ``count`` after it."""

    number: int
    shaped: bool
    count: int


@dataclass(frozen=True, slots=True)
class Vee:
    """The rounds of a V with one center stitch, and how a decrease round is worked."""

    rounds: tuple[Round, ...]
    sides: tuple[tuple[int, int], ...]
    """Stitches left and right of the center stitch after each round."""
    text: str


def inside(start: int, rounds: int, *, corners: int = 1, every: int = 1, first: int = 1) -> tuple[Round, ...]:
    """Return the rounds of a band whose corners draw in: two stitches fewer a corner in every ``every``-th round.

    ``start`` stitches before round 1, the first decrease in round ``first``. From 31: 29, 27, 25 ... Raises Impossible
    when the stitches run out.
    """
    counted("the stitches", start)
    counted("the corners", corners, 1, 100)
    done = _shaped_rounds(rounds, every, first)
    most = (start - corners) // (2 * corners)
    if len(done) > most:
        raise Impossible(
            f"{plural(start, 'stitch')} with {plural(corners, 'corner')} can be mitered up to {plural(most, 'time')}, "
            f"not {len(done)}: work fewer rounds, or decrease less often"
        )
    return _counted_rounds(start, rounds, done, -2 * corners)


def outside(start: int, rounds: int, *, corners: int = 1, every: int = 2, first: int = 1) -> tuple[Round, ...]:
    """Return the rounds of a band whose corners spread: two stitches more a corner in every ``every``-th round.

    Every second round suits a garter border (Stitch Therapy 2013). Raises Impossible out of range.
    """
    counted("the stitches", start)
    counted("the corners", corners, 1, 100)
    return _counted_rounds(start, rounds, _shaped_rounds(rounds, every, first), 2 * corners)


def vee(left: int, right: int, rounds: int, *, every: int = 1, first: int = 1) -> Vee:
    """Return the rounds of a V band with ``left`` and ``right`` stitches beside one center stitch.

    In the round ``left`` + ``right`` + 1 is the whole band. ``every`` 1 makes a narrow V, 2 a wide one. Raises
    Impossible when the sides differ in parity, or when the decreases run out of stitches.
    """
    counted("the stitches left of the center stitch", left)
    counted("the stitches right of the center stitch", right)
    if (left - right) % 2:
        raise Impossible(
            f"both sides of the center stitch must be odd or both even ({left}, {right}): pick up one more or one "
            "fewer on one side"
        )
    done = _shaped_rounds(rounds, every, first)
    if len(done) > min(left, right):
        raise Impossible(
            f"the shorter side has {plural(min(left, right), 'stitch')}, too few for {len(done)} decrease rounds: "
            f"work fewer rounds, or decrease less often"
        )
    worked = _counted_rounds(left + right + 1, rounds, done, -2)
    sides = []
    for each in worked:
        gone = (left + right + 1 - each.count) // 2
        sides.append((left - gone, right - gone))
    often = {1: "in every round", 2: "in every other round"}.get(every, f"in every {ordinal(every)} round")
    text = (
        f"Work to 1 stitch before the center stitch, centered double decrease (slip two together knitwise, knit one, "
        f"pass the two over it), work to the end: 2 stitches fewer, {often} from round {first} on, "
        f"{plural(len(done), 'time')}; {left + right + 1} stitches become {worked[-1].count}."
    )
    return Vee(worked, tuple(sides), text)


def _shaped_rounds(rounds: int, every: int, first: int) -> range:
    counted("the rounds", rounds, 1, _ROUNDS)
    counted("the rounds from one shaping to the next", every, 1, _ROUNDS)
    counted("the first shaped round", first, 1, rounds)
    return range(first, rounds + 1, every)


def _counted_rounds(start: int, rounds: int, shaped: range, change: int) -> tuple[Round, ...]:
    counted("the stitches after the last round", start + change * len(shaped), 1, 10 * MOST)
    found, count = [], start
    for number in range(1, rounds + 1):
        count += change if number in shaped else 0
        found.append(Round(number, number in shaped, count))
    return tuple(found)
