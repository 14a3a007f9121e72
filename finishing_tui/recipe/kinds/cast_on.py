"""``cast on``: new stitches from nothing but yarn, as under an arm or over a gap."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.words import plural
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, PlaceName
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Stage, lot_onto, none_of


@dataclass(frozen=True, slots=True, kw_only=True)
class CastOn(Step):
    """Cast stitches on."""

    main = "onto"
    do: Literal["cast on"] = "cast on"
    onto: PlaceName
    """The needle they go onto."""
    count: Count
    """How many."""
    method: str = ""
    """How, in words: "backward loops", "provisionally, over waste yarn" ..."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one stage of single stitches."""
        many = count_of(self.count, here.numbers, here.size)
        title = f"onto the {here.name(self.onto)}"
        if not many:
            return (none_of(title, "cast-on"),)
        words = f"Cast {plural(many, 'stitch')} {title}{': ' + self.method if self.method else ''}."
        return (lot_onto(self.onto, many, title, "cast-on", words),)
