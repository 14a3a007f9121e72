"""An alteration of what is under way, as plain values: what was, what would be, and what is to be stored of it."""

from dataclasses import dataclass
from fractions import Fraction

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.judging import Verdict
from finishing_tui.garment.events import Edited
from finishing_tui.garment.labels import Label
from finishing_tui.garment.work import StepWork
from finishing_tui.recipe.stage import Stage


class CannotAsk(FinishingError):
    """Nothing can be asked here, or what was asked cannot be."""


@dataclass(frozen=True, slots=True)
class Alteration:
    """What would be another way, at the stage ``index`` of the step under the needles.

    ``work``: the step as it would stand; ``edit``: the step of the plan, where that changes too; ``why``: the new plan
    and the old one, to be stored and put into words; ``drift``: how far the old plan and the new one stray in what is
    left, None where nothing is spread; ``verdict``: how the rest would lie, None where nothing lies any way.
    """

    index: int
    stage: Stage
    work: StepWork
    edit: Edited | None
    why: Label
    drift: tuple[Fraction, Fraction] | None = None
    verdict: Verdict | None = None
