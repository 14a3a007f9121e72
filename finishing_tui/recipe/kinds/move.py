"""``move``: slip live stitches from one place to another."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.recipe.keys import Count, PlaceName
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Flow, Stage, none_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Move(Step):
    """Slip stitches from one place to another without working them."""

    main = "to"
    do: Literal["move"] = "move"
    from_: PlaceName
    """The place they are on."""
    to: PlaceName
    """The place they go to."""
    count: Count | Literal["all"] = "all"
    """How many; all of them where it is left out."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one stage of single stitches; when all go, the working yarn goes with them."""
        held = here.ledger.on(self.from_)
        many = here.taking(self.count, "moved", self.from_)
        title = f"{here.name(self.from_)} to {here.name(self.to)}"
        if not many:
            return (none_of(title, "slip"),)
        words = f"Slip {many} from the {here.name(self.from_)} onto the {here.name(self.to)}, untwisted."
        return (
            Stage(
                "stitch",
                many,
                title,
                "slip",
                words,
                many,
                self.to,
                flows=(Flow(self.from_, self.to, many, 1, many),),
                closing=here.carry(self.to, self.from_) if many == held else (),
                takes_all=True,
            ),
        )
