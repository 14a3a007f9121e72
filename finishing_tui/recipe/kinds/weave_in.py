"""``weave in``: the only thing that ends a tail."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.ledger import TailEntry
from finishing_tui.recipe.keys import TailName
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Item, Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class WeaveIn(Step):
    """Weave tails in."""

    do: Literal["weave in"] = "weave in"
    tails: tuple[TailName, ...] | Literal["all"] = "all"
    """Which; all that hang there where it is left out."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return an item a tail; refused when a named one is not there."""
        tails = tuple(here.ledger.tails) if self.tails == "all" else tuple(dict.fromkeys(self.tails))
        for tail in tails:
            here.tail(tail, "weave in")
        items = tuple(Item(tail, (TailEntry(tail, "woven", here.ledger.tails[tail]),)) for tail in tails)
        return (Stage("item", len(items), "tails", "weave-in", "Weave each tail in on the wrong side.", items=items),)
