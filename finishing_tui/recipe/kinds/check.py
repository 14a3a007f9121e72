"""``check``: look, compare, and tick off. What was seen is recorded; nothing moves."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.recipe.keys import PlaceName
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Item, Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class Check(Step):
    """A checklist."""

    do: Literal["check"] = "check"
    items: tuple[str, ...] = ()
    """What to look at, one thing each."""
    same: tuple[PlaceName, ...] = ()
    """Places that must hold the same number."""
    over_the_head: bool = False
    """Whether the neck is tried over the head."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return an item for everything to look at, with the counts that the ledger has for compared places."""
        texts = list(self.items)
        if self.same:
            held = ", ".join(f"{here.name(place)} {here.ledger.on(place)}" for place in self.same)
            even = len({here.ledger.on(place) for place in self.same}) == 1
            texts.append(f"The same number on each: {held}." if even else f"NOT the same number on each: {held}.")
        if self.over_the_head:
            texts.append("The neck goes over the head without force.")
        items = tuple(Item(text) for text in texts)
        return (Stage("item", len(items), self.title, "check", "Tick off each.", items=items),)
