"""``block``: wash or damp the piece, lay it out to size, and write down what it measures when dry."""

from dataclasses import dataclass
from typing import Literal

from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.stage import Stage, ticked


@dataclass(frozen=True, slots=True, kw_only=True)
class Block(Step):
    """Block the work."""

    do: Literal["block"] = "block"
    to: str = ""
    """What it should measure, in words with its unit."""

    def stages(self, _here: Here) -> tuple[Stage, ...]:
        """Return laying out, and where a size is given the value it measures when dry, in cm."""
        text = f"Lay it out{' to ' + self.to if self.to else ''} and let it dry."
        laid = ticked("lay out", "block", text)
        if not self.to:
            return (laid,)
        words = f"Unpinned and rested: type what it measures, in cm. Wanted: {self.to}."
        return (laid, Stage("value", 1, "dry", "measure", words, of="cm"))
