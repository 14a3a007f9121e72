"""``move``: slip live stitches from one place to another."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, PlaceName
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Flow, Stage, none_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Move(Step):
    """Slip stitches from one place to another without working them."""

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
        many = held if self.count == "all" else count_of(self.count, here.numbers, here.size)
        if here.absent(self.from_) or (many == 0 and self.count != "all"):
            return (none_of(f"{here.name(self.from_)} to {here.name(self.to)}", "slip"),)
        here.holding(self.from_, max(many, 1), "moved")
        words = f"Slip {many} from the {here.name(self.from_)} onto the {here.name(self.to)}, untwisted."
        return (
            Stage(
                "stitch",
                many,
                f"{here.name(self.from_)} to {here.name(self.to)}",
                "slip",
                words,
                many,
                self.to,
                flows=(Flow(self.from_, self.to, many, 1, many),) if many else (),
                closing=here.carry(self.to, self.from_) if many == held else (),
                takes_all=True,
            ),
        )

    @property
    def main_place(self) -> str:
        """The place they go to."""
        return self.to
