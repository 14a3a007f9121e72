"""``arrange``: lay the work another way. The ledger keeps the posture; nothing else moves."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.ledger import Posture, PostureEntry
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Item, Stage


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrange(Step):
    """Lay the work: which side faces, what touches, what is near, what is on top, where the yarn hangs."""

    do: Literal["arrange"] = "arrange"
    facing: Literal["right", "wrong", ""] = ""
    """The side towards you."""
    together: Literal["right", "wrong", ""] = ""
    """The sides that touch."""
    near: str = ""
    """The piece or needle nearer to you."""
    on_top: str = ""
    """What lies on top."""
    yarn_at: str = ""
    """Where the working yarn hangs."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one item. What touches, is near or on top holds until the next arranging; the rest until changed."""
        before = here.ledger.posture
        after = Posture(
            facing=self.facing or before.facing,
            together=self.together,
            near=self.near,
            on_top=self.on_top,
            yarn_at=self.yarn_at or before.yarn_at,
        )
        entries = (PostureEntry(before, after),) if after != before else ()
        return (Stage("item", 1, self.title, "arrange", items=(Item(self.title, entries),)),)
