"""``graft``: two needles of live stitches sewn together with a tail, as if a row had been knitted between them.

The words are those for the knit side, with the wrong sides together seen from the near needle. A loop is entered
twice: the set-up and every pair thread it a first time and leave it, the next pair threads it again and takes it off.
"""

from dataclasses import dataclass, replace
from typing import Literal

from finishing_tui.craft.ledger import OFF, PostureEntry, TailEntry
from finishing_tui.craft.lies import Fabric
from finishing_tui.craft.pairing import pair
from finishing_tui.recipe.keys import Count, TailName
from finishing_tui.recipe.kinds.base import CannotBegin, Here
from finishing_tui.recipe.kinds.needles import TwoNeedles
from finishing_tui.recipe.stage import Flow, Item, Moves, Stage, none_of

SET_UP = (
    "First loop of the near needle: needle in purlwise, pull the yarn through, leave the loop on.",
    "First loop of the far needle: needle in knitwise, pull the yarn through, leave the loop on.",
)
"""The two moves before the first pair comes off."""
PAIR = (
    "Near needle: first loop knitwise, and slip it off.",
    "Near needle: next loop purlwise, and leave it on.",
    "Far needle: first loop purlwise, and slip it off.",
    "Far needle: next loop knitwise, and leave it on.",
)
"""The four moves of every pair but the last (common practice, no source)."""
CLOSE = (
    "Near needle: last loop knitwise, and slip it off.",
    "Far needle: last loop purlwise, and slip it off.",
)
"""The two moves of the last pair."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Graft(TwoNeedles):
    """Graft the stitches of two needles together with a tail."""

    do: Literal["graft"] = "graft"
    count: Count | Literal["all"] = "all"
    """How many pairs; all of them where it is left out."""
    tail: TailName
    """The tail it is sewn with."""

    @property
    def touching(self) -> Fabric:
        """The wrong sides: a graft is worked from the knit side."""
        return "wrong"

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return the set-up, and then the pairs; the last of them closes, and the tail is shorter.

        With unequal needles the pairs are as many as the shorter holds; ``x`` takes two together on the longer. Raises
        ``Impossible`` when that one has more than twice as many.
        """
        near, far = self.needles(here)
        front, back = here.ledger.on(near), here.ledger.on(far)
        pairs = here.taking(self.count, "grafted", near, far)
        if not pairs:
            return (none_of("pairs", "graft"),)
        if near == far:
            raise CannotBegin(f"a graft needs two needles, and both are the {here.name(near)}")
        here.tail(self.tail, "graft with")
        lie = here.ledger.posture
        if lie.together == "right":
            raise CannotBegin(
                "the right sides touch; a graft on the knit side needs the wrong sides together",
                kind="ridge",
                mend=(PostureEntry(lie, replace(lie, together="wrong")),),
            )
        words = f"Graft with the tail {self.tail}, drawing every loop up to the size of its neighbours."
        if self.count == "all" and front != back:
            long = near if front > back else far
            words += f" {pair(front, back).text} Two together on the {here.name(long)} is x."
        return (
            Stage("item", 2, "set-up", "set-up", words, items=tuple(Item(move) for move in SET_UP)),
            Stage(
                "pair",
                pairs,
                "pairs",
                "graft",
                words,
                pairs,
                near,
                flows=(Flow(near, OFF, pairs, 1, pairs), Flow(far, OFF, pairs, 1, pairs)),
                closing=(TailEntry(self.tail, "shortened"),),
                said=((pairs, "Close: the last pair takes two moves."),),
                front=near,
                back=far,
                empties=self.count == "all",
                moves=(*((Moves(1, PAIR),) if pairs > 1 else ()), Moves(pairs, CLOSE)),
            ),
        )

    @property
    def main_place(self) -> str:
        """The needle nearer to the knitter."""
        return self.near or self.front
