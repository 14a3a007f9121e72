"""``close hole``: draw a tail round a hole on the wrong side. The hole is gone; the tail is shorter, not ended."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.ledger import HoleEntry, TailEntry
from finishing_tui.recipe.keys import HoleName, TailName
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.stage import Item, Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class CloseHole(Step):
    """Close a hole with a tail."""

    do: Literal["close hole"] = "close hole"
    hole: HoleName
    """The hole's name: the ``gap`` that made it."""
    tail: TailName
    """The tail it is closed with."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one item; refused when there is no such hole, or no such tail."""
        if self.hole not in here.ledger.holes:
            mend = (HoleEntry(self.hole, "made"),)
            raise CannotBegin(f"there is no open hole named {self.hole!r}", kind="hole", mend=mend)
        here.tail(self.tail, "close the hole with")
        text = f"Draw the tail {self.tail} round the hole and pull it shut: {self.hole}."
        item = Item(text, (HoleEntry(self.hole, "closed"), TailEntry(self.tail, "shortened")))
        return (Stage("item", 1, self.hole, "close", text, items=(item,)),)
