"""``sew on``: buttons and the like, one by one. What was sewn on is recorded; no live stitch is touched."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.words import plural
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.stage import Item, Stage, none_of

MOST = 1_000
"""Nobody sews on more than this."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SewOn(Step):
    """Sew something on."""

    do: Literal["sew on"] = "sew on"
    what: str
    """What is sewn on, in the singular: "button"."""
    count: Count = 1
    """How many."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one item for each."""
        many = count_of(self.count, here.numbers, here.size)
        if not many:
            return (none_of(self.what, "sew-on"),)
        if many > MOST:
            raise CannotBegin(f"{many} are to be sewn on ({self.what}); {MOST} is the most")
        text = f"Sew the {self.what} on" if many == 1 else f"Sew {plural(many, self.what)} on, each at its mark"
        items = tuple(Item(f"{self.what} {each} of {many}" if many > 1 else self.what) for each in range(1, many + 1))
        return (Stage("item", many, self.what, "sew-on", f"{text}.", items=items),)
