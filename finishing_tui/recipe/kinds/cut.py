"""``cut``: cut the working yarn and leave a tail."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.craft.ledger import YarnEntry
from finishing_tui.recipe.keys import TailName
from finishing_tui.recipe.kinds.base import CannotBegin, Here, Step
from finishing_tui.recipe.stage import Stage, ticked


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut(Step):
    """Cut the yarn."""

    do: Literal["cut"] = "cut"
    tail: TailName
    """The tail this leaves."""
    length: str = ""
    """How long to leave it, with its unit: "40 cm"."""

    def stages(self, here: Here) -> tuple[Stage, ...]:
        """Return one item; refused when yarn hangs from several places, since it cannot tell which is meant."""
        yarns = here.ledger.yarns
        if len(yarns) > 1:
            places = " and the ".join(here.name(place) for place in yarns)
            raise CannotBegin(
                f"working yarn hangs from the {places}; bind off or join one of them first",
                kind="yarn",
                mend=tuple(YarnEntry(place, "cut") for place in yarns[1:]),
            )
        text = f"Cut the yarn{', leaving ' + self.length if self.length else ''}: the tail {self.tail}."
        cut = (YarnEntry(place, "cut") for place in yarns)
        return (ticked(self.tail, "cut", text, *cut, *here.new_tail(self.tail)),)
