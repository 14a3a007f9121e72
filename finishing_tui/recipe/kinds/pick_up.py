"""``pick up``: lift loops onto a needle without working them; no yarn is used."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, PlaceName
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Stage, lot_onto


@dataclass(frozen=True, slots=True, kw_only=True)
class PickUp(Step):
    """Lift loops of an edge onto a needle, as extra stitches beside a gap are."""

    main = "onto"
    do: Literal["pick up"] = "pick up"
    onto: PlaceName
    """The place they go onto."""
    count: Count
    """How many."""
    at: Literal["before", "after"] = "after"
    """Whether they come before or after the stitches that are there, in walking order."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one stage of single loops from the edge."""
        many = count_of(self.count, here.numbers, here.size)
        words = f"Lift {many} {'loop' if many == 1 else 'loops'} {self.at} the stitches on the {here.name(self.onto)}."
        title = f"loops {self.at} the {here.name(self.onto)}"
        return (lot_onto(self.onto, many, title, "lift", words),)
