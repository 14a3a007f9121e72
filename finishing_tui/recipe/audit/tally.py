"""Counts what an audit does, so that no recipe can keep it busy without end. Nothing here looks at a clock."""

from dataclasses import fields

from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.stage import Stage

MOST = 1_000_000
"""Ledger entries in one audit, with what is counted beside them; the recipes that come with it make some thousands."""
A_STEP = 10
"""What beginning a step counts for, in entries."""
A_REFUSAL = 100
"""What a step that cannot be begun counts for: how much was worked out before that showed is not known."""
A_NUMBER = 5
"""What working out a number or comparing two counts for: either may be a sum."""


class TooMuch(FinishingError):
    """A recipe is too much to audit."""


class Tally:
    """What was done so far in one audit, in entries of the ledger."""

    def __init__(self) -> None:
        self.entries = 0

    def step(self, step: Step) -> None:
        """Count a step that is begun, and each of its sections and the like. Raises ``TooMuch``."""
        parts = (getattr(step, field.name) for field in fields(step))
        self._add(A_STEP * (1 + sum(len(part) for part in parts if isinstance(part, tuple))))

    def refusal(self) -> None:
        """Count a step that cannot be begun as things are. Raises ``TooMuch``."""
        self._add(A_REFUSAL)

    def stage(self, stage: Stage, entries: int) -> None:
        """Count a stage that made so many ``entries``, and what was worked out for it. Raises ``TooMuch``."""
        shared = stage.units if stage.unit in {"spot", "pair"} else 0
        self._add(entries + shared + len(stage.items) + len(stage.said))

    def numbers(self, many: int) -> None:
        """Count numbers that are worked out or compared. Raises ``TooMuch``."""
        self._add(A_NUMBER * many)

    def _add(self, more: int) -> None:
        self.entries += more
        if self.entries > MOST:
            raise TooMuch(
                f"this recipe is too much to audit: it takes more than {MOST:,} entries in the ledger; "
                "write fewer sizes or steps in one recipe, or print more of its numbers"
            )
