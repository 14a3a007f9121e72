"""Stitches sewn or grafted to rows: how many rows each stitch takes, so that both edges end together.

A knitted stitch is wider than a row is high, so there are usually more rows than stitches. This module only shares the
one over the other; which ratio suits the fabric is the gauge's business.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

from finishing_tui.craft.counts import counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.rows import told
from finishing_tui.craft.words import many, plural, times

_AT_ONCE = 3
"""The most rows one stitch can hold (or stitches one row) without a pucker."""


@dataclass(frozen=True, slots=True)
class StitchesToRows:
    """``stitches`` of one edge sewn to ``rows`` of another."""

    stitches: int
    rows: int
    taken: tuple[int, ...]
    """For each of the fewer, in the order sewn, how many of the others it takes."""
    text: str


def stitches_to_rows(stitches: int, rows: int) -> StitchesToRows:
    """Return how ``stitches`` meet ``rows``: 5 to 7 is rows taken 1, 2, 1, 1, 2 (Yeoh 2009; Knitting for Dummies).

    The rhythm is a turn of the even one: it never strays from the straight line by as much as one, at most 1/3 ahead
    and less than 2/3 behind. It begins with the smaller take and every repeat of it ends exactly. Raises Impossible
    when a count is out of range or one is more than three times the other.
    """
    counted("the stitches", stitches)
    counted("the rows", rows)
    few, more = sorted((stitches, rows))
    if more > _AT_ONCE * few:
        raise Impossible(
            f"{plural(stitches, 'stitch')} cannot be sewn to {plural(rows, 'row')}: {_AT_ONCE} to 1 is the most that "
            f"lies flat; measure both edges again"
        )
    common = math.gcd(few, more)
    over, under = more // common, few // common
    lead = under // 3
    marks = [(i * over + lead) // under for i in range(under)] + [over]
    block = tuple(right - left for left, right in pairwise(marks))
    each, what = ("stitch", "row") if stitches <= rows else ("row", "stitch")
    if len(set(block)) == 1:
        rhythm = f"take {plural(block[0], what)} with every {each}"
    else:
        rhythm = f"going from {each} to {each}, take {many(what)} in this order: {_said(block)}"
        if common > 1:
            rhythm += f"; this is {plural(under, each)} to {plural(over, what)}, worked {times(common)}"
    text = f"Sewing {plural(stitches, 'stitch')} to {plural(rows, 'row')}: {rhythm}."
    return StitchesToRows(stitches, rows, block * common, text)


def _said(block: tuple[int, ...]) -> str:
    """Say the takes of one repeat: a short one in full, a long one in groups that end on the rarer take."""
    shown = [str(take) for take in block]
    if len(block) <= 24:
        return ", ".join(shown)
    rare = min(set(block), key=block.count)
    groups, start = [], 0
    for at, take in enumerate(block, 1):
        if take == rare or at == len(block):
            groups.append(", ".join(shown[start:at]))
            start = at
    return told(groups)
