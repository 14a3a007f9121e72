"""``count``: count what is really on a place. A difference is posted as found or missing, never overwritten."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, PlaceName
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class CountStitches(Step):
    """Count the stitches on one place and compare them with what should be there."""

    main = "place"
    do: Literal["count"] = "count"
    place: PlaceName
    """The place to count."""
    count: Count | None = None
    """What should be there; what the ledger says where it is left out."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one stage of as many stitches as should be there; pressing through them enters nothing."""
        held = here.ledger.on(self.place)
        wanted = held if self.count is None else count_of(self.count, here.numbers, here.size)
        name = here.name(self.place)
        words = f"Count the {name}: there should be {wanted}. Type what you count."
        return (Stage("stitch", wanted, name, "count", words, wanted, self.place, takes_all=True, counts=True),)
