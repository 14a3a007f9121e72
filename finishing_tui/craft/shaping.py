"""Increase or decrease evenly along a row or a round.

Where the shapings go is decided in *plain* stitches, the ones worked as they are: in the round the gaps between
shapings differ by at most one stitch; flat, the two margins together make one more such gap, cut in half, so that the
row is balanced and the edge stitches are never shaped. Positions are those of an even line (Bresenham 1965), which no
arrangement can better. Nothing is ever shaped that does not add up: a row that cannot hold it is refused.
"""

import math
from dataclasses import dataclass
from functools import lru_cache

from finishing_tui.craft.counts import counted
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.even_parts import across, around, spread
from finishing_tui.craft.methods import METHODS, Method, for_left_hand
from finishing_tui.craft.methods import method as named
from finishing_tui.craft.rows import plain as plainly
from finishing_tui.craft.rows import told
from finishing_tui.craft.words import plural


@dataclass(frozen=True, slots=True)
class Evenly:
    """A row or round that takes ``before`` stitches to ``after``."""

    before: int
    after: int
    flat: bool
    """Whether it is a flat row; otherwise a round."""
    method: Method
    """The way of shaping asked for."""
    shapings: tuple[Method, ...]
    """The shapings in the order worked; some are the doubled method where one a stitch is not enough."""
    plain: tuple[int, ...]
    """Plain stitches before, between and after the shapings, in old stitches. In the round one for each shaping,
    in the order worked: the round begins with a gap (the one after the shaping that closed the last) and ends with a
    shaping."""
    text: str
    """The row as written: ``k3, k2tog, (k6, k2tog) 9 times, k3``."""

    @property
    def sentence(self) -> str:
        """The whole answer in words: what changes, the row, and the count to find afterwards."""
        where = "row" if self.flat else "round"
        if not self.shapings:
            return f"Nothing to shape: work all {plural(self.before, 'stitch')} of the {where} as they are."
        change = abs(self.after - self.before)
        verb, result = ("Increase", "on the needle") if self.after > self.before else ("Decrease", "left")
        doubles = sum(1 for way in self.shapings if way != self.method)
        ways = list(dict.fromkeys(self.shapings))
        standing = f"{plural(self.after, 'stitch')} {'is' if self.after == 1 else 'are'} {result}"
        return (
            f"{verb} {plural(change, 'stitch')} evenly over {self.before}, "
            f"{'worked flat' if self.flat else 'in the round'}: {self.text}. "
            f"{standing} after this {where}. "
            + "; ".join(f"{way.name}: {way.words}" for way in ways)
            + "."
            + (f" One at a time does not fit, so {plural(doubles, 'place')} do double." if doubles else "")
        )


def room(before: int, way: Method, *, flat: bool, margin: int = 1) -> int:
    """Return how many shapings by ``way`` a row (or round) of ``before`` stitches can hold.

    A method that eats nothing needs a stitch on both sides of it, since one bar cannot be lifted twice.
    """
    usable = before - 2 * margin if flat else before
    if way.eats:
        return max(usable // way.eats, 0)
    return max(usable + flat, 0)


def _chosen(before: int, change: int, way: Method, *, flat: bool, margin: int, double: bool) -> tuple[Method, ...]:
    """Return the shapings, in order, that change the row by ``change`` in all; () when the row cannot hold them."""
    per = abs(way.change)
    if change % per:
        return ()
    count = change // per
    if count <= room(before, way, flat=flat, margin=margin):
        return (way,) * count
    if not (double and way.doubled):
        return ()
    twice = METHODS[way.doubled]
    usable = before - 2 * margin if flat else before
    for pairs in range(1, count // 2 + 1):
        single = count - 2 * pairs
        if way.eats:
            fits = single * way.eats + pairs * twice.eats <= usable
        else:
            fits = single + pairs <= room(before, way, flat=flat, margin=margin)
        if fits:
            # 1 where the line of doubled places steps: they lie as evenly among the shapings as can be
            marks = spread(pairs, single + pairs)
            return tuple(twice if mark else way for mark in marks)
    return ()


@lru_cache(maxsize=512)  # a recipe is audited over and over with one number changed, and most rows stay the same
def evenly(
    before: int,
    after: int,
    *,
    flat: bool,
    method: Method | str | None = None,
    margin: int | None = None,
    double: bool | None = None,
    left_handed: bool = False,
) -> Evenly:
    """Return the row (``flat``) or round that takes ``before`` stitches to ``after``, spread as evenly as can be.

    ``method`` is k2tog or M1 when not said. ``margin`` is the least number of plain stitches at each edge of a flat
    row (1 when not said; a round has none). ``double``: whether places may do double where one shaping a stitch is
    not enough (k3tog among k2tog, M2 among M1); when not said, only if no method was asked for. With ``left_handed``
    methods that lean change places. All counts are in stitches.

    Raises Impossible when the counts are out of range, when the method goes the other way or by steps that miss
    ``after``, and when the row cannot hold it, saying what it could hold.
    """
    counted("the stitches before", before)
    counted("the stitches after", after)
    if margin is not None:
        if not flat:
            raise Impossible("a round has no margins: leave the margin out, or say that the row is worked flat")
        counted("the margin", margin)
    least = 1 if margin is None else margin
    down = after < before
    way = method if isinstance(method, Method) else named(method or ("k2tog" if down else "M1"))
    if left_handed:
        way = for_left_hand(way)
    if before == after:
        text = ", ".join(plainly(before, way.ground))
        return Evenly(before, after, flat, way, (), (before,), text)
    if (way.change < 0) != down:
        raise Impossible(
            f"{way.name} {'loses' if way.change < 0 else 'adds'} stitches, and {before} to {after} is "
            f"{'a decrease' if down else 'an increase'}: choose another method"
        )
    change = abs(after - before)
    may_double = method is None if double is None else double
    shapings = _chosen(before, change, way, flat=flat, margin=least, double=may_double)
    if not shapings:
        raise Impossible(_refusal(before, after, way, flat=flat, margin=least, double=may_double))
    left = before - sum(each.eats for each in shapings)
    if flat:
        gaps = across(left, len(shapings), least)
        return Evenly(before, after, flat, way, shapings, gaps, row_of(gaps, shapings))
    shapings, gaps = _easiest_start(around(left, len(shapings)), shapings)
    return Evenly(before, after, flat, way, shapings, gaps, row_of(gaps, shapings))


def row_of(plain: tuple[int, ...], shapings: tuple[Method, ...]) -> str:
    """Return the row in words: gaps and shapings by turns, and the last gap where there is one more."""
    ground = shapings[0].ground
    phrases: list[list[str]] = []
    for gap, way in zip(plain, shapings, strict=False):
        if gap or not phrases or phrases[-1][-1] != way.name:
            phrases.append([*plainly(gap, ground), way.name])
        else:
            phrases[-1].append(way.name)
    said = [told(phrase) for phrase in phrases]
    return told(said + (plainly(plain[-1], ground) if len(plain) > len(shapings) else []))


def _easiest_start(gaps: tuple[int, ...], shapings: tuple[Method, ...]) -> tuple[tuple[Method, ...], tuple[int, ...]]:
    """Turn a round to the start that is said in the fewest words; the larger gaps first where that is all the same.

    Turned round, an even round is as even as before. Only a round that repeats itself within 60 shapings is turned:
    beyond that no start is easy.
    """
    turns = range(len(gaps) // math.gcd(sum(gaps), len(gaps)))
    if len(set(shapings)) > 1 or len(turns) > 60:
        return shapings, gaps
    best = min(turns, key=lambda turn: (row_of(gaps[turn:] + gaps[:turn], shapings).count(","), turn))
    return shapings, gaps[best:] + gaps[:best]


def _refusal(before: int, after: int, way: Method, *, flat: bool, margin: int, double: bool) -> str:
    """Say why the row cannot hold the change, and what it could hold."""
    per, change = abs(way.change), abs(after - before)
    most = room(before, way, flat=flat, margin=margin)
    where = f"{before} stitches {'worked flat' if flat else 'in the round'}"
    if change % per and change // per <= most:
        down = change // per * per
        near = [before + (step if after > before else -step) for step in (down, down + per)]
        return f"{way.name} changes the count by {per} at a time: {near[0]} or {near[1]} can be reached, {after} cannot"
    only = f"{where} can take {way.name} {plural(most, 'time')} at most"
    edge = f", with {plural(margin, 'stitch')} left plain at each edge" if flat else ""
    if not most:
        return f"{only}{edge}: too few to shape"
    if way.doubled and not double:
        doubled = _chosen(before, change, way, flat=flat, margin=margin, double=True)
        if doubled:
            return (
                f"{only}{edge}, and {after} needs {change}: let some places do double ({way.doubled}), or use two rows"
            )
    reach = _reach(before, way, flat=flat, margin=margin, double=double)
    return (
        f"{where} cannot become {after} by {way.name} in one go{edge}: {reach} is as far as it goes, so use more rows"
    )


def _reach(before: int, way: Method, *, flat: bool, margin: int, double: bool) -> int:
    """Return the count furthest from ``before`` that one row of ``way`` can reach."""
    most = room(before, way, flat=flat, margin=margin)
    if not (double and way.doubled):
        return before + most * way.change
    twice = METHODS[way.doubled]
    doubles = room(before, twice, flat=flat, margin=margin)
    usable = before - 2 * margin if flat else before
    spare = (usable - doubles * twice.eats) // way.eats if way.eats and twice.eats != way.eats else 0
    return before + doubles * twice.change + spare * way.change
