"""``shape``: one row or round in which stitches are increased or decreased evenly."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.ledger import EDGE, OFF, Posting
from finishing_tui.craft.methods import Method
from finishing_tui.craft.rows import plain
from finishing_tui.craft.shaping import Evenly, evenly
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, PlaceName
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.stage import Doing, Item, Stage, none_of

MOST_GROUPS = 2_000
"""No row that is worked group by group has more of them than this."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape(Step):
    """Increase or decrease evenly in one row or round."""

    main = "on"
    do: Literal["shape"] = "shape"
    on: PlaceName
    """The needle."""
    to: Count
    """The stitches there are to be after it."""
    method: str = ""
    """The way of shaping, as it is written in a row: "k2tog", "ssk", "M1" ...; k2tog or M1 where it is left out."""
    flat: bool = False
    """Whether it is worked flat, as a row; otherwise it is a round."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one stage, an item a group: the plain stitches and the shaping that follows them.

        Raises ``Impossible`` when the row cannot hold the change, or the method goes the other way.
        """
        if here.absent(self.on):
            return (none_of(here.name(self.on), "shape"),)
        here.holding(self.on, 1, "shaped")
        before, after = here.ledger.on(self.on), count_of(self.to, here.numbers, here.size)
        if (change := abs(after - before)) > 2 * MOST_GROUPS:  # nothing changes more than two stitches at a place
            raise CannotBegin(
                f"{before} to {after} changes {change} stitches; {MOST_GROUPS} shapings are the most in a row"
            )
        row = evenly(before, after, flat=self.flat, method=self.method.strip() or None, left_handed=here.hand == "left")
        if len(row.shapings) > MOST_GROUPS:
            raise CannotBegin(
                f"{before} to {after} takes {len(row.shapings)} shapings; {MOST_GROUPS} is the most in a row"
            )
        act: Doing = "shape" if before == after else "decrease" if after < before else "increase"
        items = self._groups(row) or (Item(row.text),)
        return (Stage("item", len(items), here.name(self.on), act, row.sentence, after, self.on, items=items),)

    def _groups(self, row: Evenly) -> tuple[Item, ...]:
        """Return the groups in the order they are worked; the last one of a flat row runs to its end."""
        groups = []
        for place, (gap, way) in enumerate(zip(row.plain, row.shapings, strict=False), 1):
            words = [*plain(gap, way.ground), way.name]
            if place == len(row.shapings) < len(row.plain):
                words += plain(row.plain[-1], way.ground)
            groups.append(Item(", ".join(words), (self._posting(way),)))
        return tuple(groups)

    def _posting(self, way: Method) -> Posting:
        if way.change < 0:
            return Posting(self.on, OFF, -way.change)
        return Posting(EDGE, self.on, way.change)
