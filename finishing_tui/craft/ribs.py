"""Ribs: how many stitches a kNpM rib needs, and where it stands on the band.

Whatever the rib, the counts follow from one picture: the rib runs on with its period, and an edge or a seam takes some
of it away. Nothing here decides how many stitches a band gets; it says which numbers come out.

A band may come as its parts: patterns print the total and most of the parts, and an error in either only shows when
they are added.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.counts import MOST, counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.rows import plain, told
from finishing_tui.craft.totals import EVERY, Reach, Repeat
from finishing_tui.craft.totals import nearest as nearest_total
from finishing_tui.craft.words import listing, plural

RibSeam = Literal["half stitch", "full stitch"]
"""What a mattress seam takes in from each of its two edges."""


@dataclass(frozen=True, slots=True)
class Rib:
    """A rib of ``knit`` knit and ``purl`` purl stitches."""

    knit: int
    purl: int

    def __post_init__(self) -> None:
        counted("the knit stitches of a rib", self.knit, 1, 100)
        counted("the purl stitches of a rib", self.purl, 1, 100)

    @property
    def period(self) -> int:
        """Stitches of one repeat."""
        return self.knit + self.purl

    def __str__(self) -> str:
        return f"k{self.knit}p{self.purl}"


@dataclass(frozen=True, slots=True)
class Seamed:
    """Numbers for the pieces of a seamed rib."""

    alike: Repeat
    """Every piece begins with the same stitch of the rib (or there is one piece, sewn to itself)."""
    turned: Repeat | None
    """Of two pieces one begins with the knit and the other with the purl stitches; only where both are as wide."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A rib placed so that one of its ribs stands in the middle."""

    middle: Literal["knit", "purl"]
    """Which kind of rib stands there."""
    skip: int
    """Stitches of the repeat, from its first knit stitch, that are left out at the start."""
    row: str
    """The row or round: ``k1, p2, (k2, p2) 14 times, k1``."""
    text: str


def read_rib(typed: str) -> Rib:
    """Return the rib written ``k2p2``, ``k2 p2`` or ``K1, P1``. Raises Impossible for anything else."""
    found = re.fullmatch(r"k([0-9]{1,3})[ ,]{0,3}p([0-9]{1,3})", typed.strip().lower())
    if found is None:
        raise Impossible(f"{typed[:20]!r} is not a rib that can be read here: write it as k2p2")
    return Rib(int(found[1]), int(found[2]))


def in_the_round(rib: Rib) -> Repeat:
    """Return the numbers for a rib worked in the round: whole repeats (k2p2: 4m)."""
    return Repeat(rib.period, 0)


def balanced(rib: Rib) -> Repeat:
    """Return the numbers for a flat rib that begins and ends with its knit stitches (k2p2: 4m + 2; k1p1: odd)."""
    return Repeat(rib.period, rib.knit)


def seamed(rib: Rib, seam: RibSeam) -> Seamed:
    """Return the numbers for pieces sewn into a tube through which the rib runs on unbroken.

    A half-stitch seam makes one stitch out of two edge stitches, so each piece gives up one stitch to it and needs one
    more than whole repeats; a full-stitch seam hides both edge stitches, two more (k2p2: 4m + 2). Where one of two
    pieces begins half a repeat later (k2 on the one, p2 on the other) each holds half a repeat more: with k2p2 and
    a half-stitch seam 4m + 3.
    """
    taken = 1 if seam == "half stitch" else 2
    half = rib.knit if rib.knit == rib.purl else None
    turned = None if half is None else Repeat(rib.period, (taken + half) % rib.period)
    return Seamed(Repeat(rib.period, taken % rib.period), turned)


def nearest(count: int, of: int, plus: int) -> tuple[int, ...]:
    """Return the numbers of the form ``of`` x m + ``plus`` nearest to ``count``: itself, or the one below and above.

    Only one where none of at least 1 lies below. 169 in 4m is 168 and 172. Raises Impossible out of range.
    """
    counted("the stitches", count)
    counted("the stitches of the repeat", of)
    counted("the stitches beside the repeat", plus, 0)
    return nearest_total(count, Reach(1, 2 * MOST + 1), Repeat(of, plus))


def fitting(count: int, repeat: Repeat) -> str:
    """Say whether ``count`` stitches come out in the repeat, and how many to add or take off where they do not."""
    near = nearest(count, repeat.of, repeat.plus)
    what = plural(count, "stitch")
    if near == (count,):
        return f"{what} {'fits' if count == 1 else 'fit'} the repeat ({repeat})."
    moves = [f"{abs(n - count)} {'fewer' if n < count else 'more'} ({n})" for n in near]
    verb = "does" if count == 1 else "do"
    return f"{what} {verb} not fit the repeat ({repeat}): work {listing(moves, 'or')} in the set-up round."


def edges_mirror(count: int, rib: Rib) -> bool:
    """Return whether a flat rib of ``count`` stitches, begun with a whole rib, ends with the same one.

    Then both edges look alike (60 in k2p2 do not, 62 do). Raises Impossible out of range.
    """
    counted("the stitches", count)
    return count % rib.period in {rib.knit % rib.period, rib.purl % rib.period}


def centred(count: int, rib: Rib) -> Placed:
    """Return a flat rib of ``count`` stitches with one of its ribs in the very middle: a knit one wherever it can be.

    Both edges then mirror each other. Raises Impossible when neither kind has the middle the count has.
    """
    counted("the stitches", count)
    return _placed(count, count, rib, "row")


def start_of_round(count: int, rib: Rib, before: int, *, on_stitch: bool = False) -> Placed:
    """Return where in its repeat a round of ``count`` must begin for a rib to be centred at a given point.

    The point lies after the ``before``-th stitch of the round, or with ``on_stitch`` on the stitch after it. Raises
    Impossible when the round does not hold whole repeats, or no rib can be centred there.
    """
    counted("the stitches", count)
    counted("the stitches before the middle", before, 0, count - on_stitch)
    if count % rib.period:
        raise Impossible(fitting(count, in_the_round(rib)).rstrip("."))
    return _placed(count, 2 * before + on_stitch, rib, "round")


def _placed(count: int, twice_middle: int, rib: Rib, what: str) -> Placed:
    """Place the rib; ``twice_middle`` is the middle in half stitches from the start."""
    kinds: tuple[tuple[Literal["knit", "purl"], int, int], ...] = (
        ("knit", rib.knit, 0),
        ("purl", rib.purl, rib.knit),
    )
    for kind, wide, begins in kinds:
        if (twice_middle - wide) % 2 == 0:
            skip = (begins - (twice_middle - wide) // 2) % rib.period
            row = rib_row(count, rib, skip)
            return Placed(kind, skip, row, f"For a {kind} rib in the middle work the {what} so: {row}.")
    lies = "on a stitch" if twice_middle % 2 else "between two stitches"
    raise Impossible(
        f"no rib of {rib} can be centered there: the middle lies {lies}. Use one stitch more or fewer, or another rib"
    )


def rib_row(count: int, rib: Rib, skip: int = 0) -> str:
    """Return ``count`` stitches of the rib in words, its first ``skip`` stitches left out."""
    head = min(rib.period - skip, count) if skip else 0
    whole, tail = divmod(count - head, rib.period)
    return told(_part(rib, skip, head) + [f"k{rib.knit}, p{rib.purl}"] * whole + _part(rib, 0, tail))


def _part(rib: Rib, start: int, count: int) -> list[str]:
    """Return ``count`` stitches of one repeat from stitch ``start`` on, as words."""
    knit = max(min(rib.knit, start + count) - start, 0)
    return plain(knit) + plain(count - knit, "p")


@dataclass(frozen=True, slots=True)
class Band:
    """The parts of a band added up."""

    total: int
    fits: bool
    """Whether the total is of the repeat asked for."""
    text: str


def added(parts: Sequence[int], repeat: Repeat = EVERY, printed: int | None = None) -> Band:
    """Return the total of ``parts`` (stitches), checked against the repeat and the ``printed`` total if there is one.

    Raises Impossible for counts out of range.
    """
    if not parts:
        raise Impossible("a band without parts cannot be added up: give the stitches of each part")
    for part in parts:
        counted("the stitches of a part", part, 0)
    total = counted("the stitches of the band", sum(parts))
    text = f"{' + '.join(str(part) for part in parts)} = {total}. " if len(parts) <= 24 else f"{total} in all. "
    if printed is not None and printed != total:
        text += f"The pattern prints {printed}, which is {abs(printed - total)} {_beside(printed, total)}. "
    return Band(total, repeat.holds(total), text + fitting(total, repeat) if repeat != EVERY else text.strip())


def _beside(printed: int, total: int) -> str:
    return "too many" if printed > total else "too few"
