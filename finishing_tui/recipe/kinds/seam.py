"""``seam``: two edges sewn together with a tail, bar by bar from the right side (a mattress seam).

Edges of the same nature are sewn one to one, and the longer one is eased by taking two at once; where stitches meet
rows, the longer one is shared out over the shorter. No live stitch is touched.
"""

from dataclasses import dataclass, replace
from typing import Literal

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.ledger import TailEntry
from finishing_tui.craft.pairing import rows_to_rows
from finishing_tui.craft.seams import stitches_to_rows
from finishing_tui.craft.words import listing, number, plural
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, TailName, Written
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.stage import Stage, none_of

MOST_BARS = 2_000
"""No edge that is sewn has more bars than this."""

_LISTED = 12
"""Up to so many pairs are named in the words of the whole seam; each is said when it comes in any case."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Side(Written):
    """One edge of a seam."""

    spots: Count
    """How many rows, ridges, chains or stitches it has."""
    unit: Literal["row", "ridge", "chain", "stitch"] = "row"
    """What one spot is. A ridge (garter) and a chain (slipped edge) are two rows each."""
    along: str = ""
    """What it runs along: "left front edge"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seam(Step):
    """Sew two edges together with a tail."""

    do: Literal["seam"] = "seam"
    sides: tuple[Side, ...]
    """The two edges."""
    tail: TailName
    """The tail it is sewn with."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one stage of pairs of bars; pairs that take more than one bar of a side say so.

        Raises ``Impossible`` when one edge is too long to be eased to the other.
        """
        if len(self.sides) != 2:
            raise CannotBegin(f"the step {self.title!r} has {plural(len(self.sides), 'side')}; a seam has two")
        many = [count_of(side.spots, here.numbers, here.size) for side in self.sides]
        if not any(many):
            return (none_of("seam", "sew"),)
        here.tail(self.tail, "sew with")
        if max(many) > MOST_BARS:
            raise CannotBegin(f"edges of {many[0]} and {many[1]} cannot be sewn: {MOST_BARS} is the longest there is")
        units = [side.unit for side in self.sides]
        front, back = self._names()
        edges = (f"{plural(many[0], units[0])} of the {front}", f"{plural(many[1], units[1])} of the {back}")
        stage = Stage(
            "pair",
            0,
            f"{front} to {back}",
            "sew",
            f"With the tail {self.tail}, on the right side, sew {' to '.join(edges)}",
            closing=(TailEntry(self.tail, "shortened"),),
            front=front,
            back=back,
        )
        bars = _shared(many[0], many[1], to_rows=units[0] != units[1])
        stage = with_bars(stage, bars)
        if set(units) == {"stitch", "row"}:
            stitches, rows = many if units[0] == "stitch" else reversed(many)
            return (replace(stage, words=f"{stage.words}. {stitches_to_rows(stitches, rows).text}"),)
        return (replace(stage, words=f"{stage.words}{_where(stage)}."),)

    def _names(self) -> tuple[str, str]:
        """Return what the two sides are called, told apart."""
        first, second = (side.along for side in self.sides)
        if first == second:
            return (f"first {first or 'side'}", f"second {second or 'side'}")
        return (first or "first side", second or "second side")


def two_at_once(stage: Stage, pair: int, side: str) -> Stage:
    """Return the stage of a seam once ``pair`` has taken two bars of ``side``, with the rest shared out anew.

    Raises ``Impossible`` when the side has no two bars left, or what is left of one side cannot be eased to the rest.
    """
    doubled = 0 if side == stage.front else 1
    done = tuple(taken[: pair - 1] for taken in stage.bars)
    here = (2, 1) if doubled == 0 else (1, 2)
    left = [sum(taken[pair - 1 :]) - now for taken, now in zip(stage.bars, here, strict=True)]
    if left[doubled] < 0:
        raise Impossible(f"the {side} has only 1 bar left, and two were to be taken")
    if min(left) == 0 < max(left):
        longer = stage.front if left[0] else stage.back
        raise Impossible(f"two at once there would use one side up and leave {max(left)} of the {longer}")
    return _going_on(stage, tuple((*before, now) for before, now in zip(done, here, strict=True)))


def unsewn(stage: Stage, pairs: int, planned: Stage | None) -> Stage:
    """Return the stage of a seam taken out to its first ``pairs``: what was taken at once beyond them is not any more.

    ``planned``: the seam of the same two sides as it was planned, if that is known, which goes on where it was sewn as
    planned so far. What is left after pairs sewn otherwise is shared out anew. Raises ``Impossible`` when what is left
    cannot be eased.
    """
    done = tuple(taken[:pairs] for taken in stage.bars)
    if planned and done == tuple(taken[:pairs] for taken in planned.bars):
        return with_bars(replace(stage, as_planned=None), (planned.bars[0], planned.bars[1]))
    return _going_on(stage, done)


def _going_on(stage: Stage, done: tuple[tuple[int, ...], ...]) -> Stage:
    """Return the stage with the bars that are not ``done`` shared out anew; raises ``Impossible`` if they cannot be."""
    left = [sum(taken) - sum(used) for taken, used in zip(stage.bars, done, strict=True)]
    rest = _shared(left[0], left[1], to_rows=max(left) > 2 * min(left)) if any(left) else ((), ())
    return with_bars(stage, ((*done[0], *rest[0]), (*done[1], *rest[1])))


def with_bars(stage: Stage, bars: tuple[tuple[int, ...], tuple[int, ...]]) -> Stage:
    """Return the stage with ``bars`` to take from its front and its back side in each pair, and the words for them."""
    said = tuple(
        (pair, f"{number(max(one, other))} at once from the {stage.front if one > other else stage.back}")
        for pair, (one, other) in enumerate(zip(*bars, strict=True), 1)
        if one != other
    )
    return replace(stage, units=len(bars[0]), target=len(bars[0]), bars=bars, said=said)


def _shared(one: int, other: int, *, to_rows: bool) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """Return the bars that each pair takes from both sides; ``to_rows``: they are of different nature."""
    if to_rows:
        taken = stitches_to_rows(one, other).taken
    else:
        plan = rows_to_rows(one, other)
        doubles = set(plan.double_at)
        taken = tuple(1 + (pair in doubles) for pair in range(1, plan.short + 1))
    single = (1,) * len(taken)
    return (taken, single) if one > other else (single, taken)


def _where(stage: Stage) -> str:
    """Say where more than one bar is taken at once, as the end of a sentence."""
    if not stage.said:
        return ", one to one"
    places = [str(pair) for pair, _ in stage.said]
    if len(places) == stage.units > 1:
        return ": more than one at once in every pair"
    if len(places) > _LISTED:
        return f": more than one at once in {len(places)} of the {plural(stage.units, 'pair')}"
    return f": two at once in {'pair' if len(places) == 1 else 'pairs'} {listing(places)} of {stage.units}"
