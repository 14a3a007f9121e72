"""``close hole``: draw a tail round a hole on the wrong side. The hole is gone; the tail is shorter, not ended."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.ledger import HoleEntry, TailEntry
from finishing_tui.recipe.keys import HoleName, TailName
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.stage import Stage, ticked


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
        return (closed_with(self.hole, self.tail),)


def closed_with(hole: str, tail: str) -> Stage:
    """Return the stage in which a hole is closed with a tail."""
    text = f"Draw the tail {tail} around the hole and pull it shut: {hole}."
    return ticked(hole, "close", text, HoleEntry(hole, "closed"), TailEntry(tail, "shortened"))
