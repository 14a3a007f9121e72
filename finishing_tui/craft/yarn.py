"""Yarn: how much an edge takes, and whether what is left will do.

Lengths are multiples of the width of the edge, as published, with the usual one as the answer and the range always
said. The bind-off is a cost of its own: it takes more than a round, and it is the one that is run out of.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import Literal

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.lengths import LONGEST, Length, length, say_length
from finishing_tui.craft.words import capital, decimal, listing, plural

OPERATIONS: dict[str, tuple[int, int, int]] = {
    "bind-off": (3, 4, 6),
    "three-needle bind-off": (3, 4, 5),
    "sewn bind-off": (3, 4, 5),
    "tubular bind-off": (3, 3, 4),
    "graft": (2, 4, 5),
    "mattress seam": (2, 3, 3),
    "row": (3, 3, 3),
}
"""Times the width of the edge: lowest published, usual, highest published. A sewn bind-off goes by the
stretched width."""

_SHORT = {
    "bind off": "bind-off",
    "three-needle": "three-needle bind-off",
    "three needle": "three-needle bind-off",
    "sewn": "sewn bind-off",
    "tubular": "tubular bind-off",
    "mattress": "mattress seam",
    "seam": "mattress seam",
    "round": "row",
}
"""What else these are called."""

WEAVE_IN = length(15, "cm")
"""A tail long enough to weave in (about 6 in)."""
CLOSE_A_HOLE = (length(30, "cm"), length(45, "cm"))
"""A tail for an underarm or a corner that is to be drawn together, and then woven in: from, to."""
HOLE = length(10, "cm")
"""What of such a tail one hole takes: six to eight strands in a ring and a stitch back (common practice)."""

WillDo = Literal["enough", "tight", "too short"]
"""Whether a length of yarn will do."""


@dataclass(frozen=True, slots=True)
class Need:
    """The yarn that one operation takes along an edge, without its tail."""

    operation: str
    least: Length
    usual: Length
    most: Length
    text: str


@dataclass(frozen=True, slots=True)
class RoundsLeft:
    """How many rounds the yarn in hand still makes when the bind-off is kept back."""

    per_round: Fraction
    """Grams a round."""
    bind_off: Fraction
    """Grams for the usual bind-off."""
    bind_off_most: Fraction
    """Grams for a bind-off that takes the most there is published."""
    rounds: int
    """Whole rounds before the usual bind-off."""
    safe_rounds: int
    """Whole rounds that leave enough for the greediest bind-off."""
    can_bind_off: bool
    """Whether the usual bind-off can still be worked at once."""
    text: str


def needed(operation: str, width: Length) -> Need:
    """Return the yarn ``operation`` takes along an edge of ``width`` (sewn: stretched).

    Raises Impossible for an unknown operation or an edge too long to be one.
    """
    name = " ".join(operation.lower().replace("_", " ").split())
    name = _SHORT.get(name, name)
    if name not in OPERATIONS:
        raise Impossible(f"no yarn is known for {operation[:20]!r}: use {listing(list(OPERATIONS), 'or')}")
    if width.cm * 6 > LONGEST:
        raise Impossible(f"an edge of {say_length(width)} is too long: use up to {LONGEST // 6} cm")
    times = OPERATIONS[name]
    least, usual, most = (Length(width.cm * each, width.unit) for each in times)
    stretched = ", stretched" if name == "sewn bind-off" else ""
    spread = f"published: {times[0]} to {times[2]} times, {say_length(least)} to {say_length(most)}"
    if times[0] == times[2]:
        spread = "a round of the same width takes the same"
    text = (
        f"For the {name} of an edge of {say_length(width)}{stretched}: {say_length(usual)}, {times[1]} times its width "
        f"({spread}), and {say_length(WEAVE_IN)} (about 6 in) more for the tail."
    )
    return Need(name, least, usual, most, text)


def will_it_do(need: Need, have: Length) -> tuple[WillDo, str]:
    """Return whether ``have`` will do for ``need`` and a tail to weave in, and a sentence.

    Enough for the usual length is "enough"; less than the lowest published is "too short".
    """
    spare = have.cm - WEAVE_IN.cm
    what = f"the {need.operation} and its tail"
    if spare >= need.usual.cm:
        return "enough", f"{capital(say_length(have))} is enough for {what}."
    if spare >= need.least.cm:
        return "tight", f"{capital(say_length(have))} is tight for {what}: join new yarn first, or have it ready."
    return "too short", f"{capital(say_length(have))} is too short for {what}, even by the least: join new yarn first."


def will_it_close(have: Length) -> WillDo:
    """Return whether a tail of length ``have`` will close a hole and can still be woven in.

    What is published as left for it (30 to 45 cm) is "enough". No least is published; by common practice a tail only
    long enough to weave in (15 cm, or 6 in) is "too short", for none of it goes round the hole.
    """
    if have.cm >= CLOSE_A_HOLE[0].cm:
        return "enough"
    return "tight" if have.cm >= WEAVE_IN.cm + 1 else "too short"


def in_weight(grams: Fraction, ball_grams: Fraction, ball_metres: Fraction) -> Fraction:
    """Return the metres in ``grams`` of a yarn of which ``ball_grams`` are ``ball_metres``.

    80 g of a 113 g ball of 384 m hold 272 m (Cottage Chick Knits 2015). Raises Impossible out of range.
    """
    for what, amount in (("weight", grams), ("ball's weight", ball_grams), ("ball's length", ball_metres)):
        if not 0 < amount <= 10_000:
            raise Impossible(f"the {what} must be more than 0, up to 10000")
    return grams * ball_metres / ball_grams


def rounds_left(before: Fraction, after: Fraction, between: Fraction) -> RoundsLeft:
    """Return the rounds that ``after`` grams still make, from two weighings with ``between`` rounds worked in between.

    A bind-off takes 4 times the width where a round takes 3, so 4/3 of a round, and up to 6 times, two rounds.
    27 g, half a round, 24 g is 6 g a round (Turtlekeepers 2015). Raises Impossible when nothing was used.
    """
    for what, grams in (("first", before), ("second", after)):
        if not 0 < grams <= 10_000:
            raise Impossible(f"the {what} weight must be more than 0 g, up to 10000 g")
    if not 0 < between <= 1_000:
        raise Impossible("the rounds between the weighings must be more than 0, up to 1000")
    if after >= before:
        raise Impossible(
            f"the second weight ({_grams(after)}) must be less than the first ({_grams(before)}): weigh again, or work "
            f"more rounds between"
        )
    per_round = (before - after) / between
    _, usual, most = OPERATIONS["bind-off"]
    row = OPERATIONS["row"][1]
    cost, cost_most = per_round * usual / row, per_round * most / row
    rounds = max(floor((after - cost) / per_round), 0)
    safe = max(floor((after - cost_most) / per_round), 0)
    can = after >= cost
    if can:
        text = (
            f"{_grams(per_round)} a round, about {_grams(cost)} for the bind-off: with {_grams(after)} left work "
            f"{plural(rounds, 'round')} more and bind off; {plural(safe, 'round')} if the bind-off is a greedy one "
            f"({_grams(cost_most)})."
        )
    else:
        text = (
            f"{_grams(per_round)} a round, about {_grams(cost)} for the bind-off: {_grams(after)} will not bind off; "
            f"join new yarn, or take out a round."
        )
    return RoundsLeft(per_round, cost, cost_most, rounds, safe, can, text)


def _grams(weight: Fraction) -> str:
    return f"{decimal(weight)} g"
