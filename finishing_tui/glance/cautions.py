"""When a caution is shown, and when it stands behind its key: once a garment, but for a child's, which always is.

What was shown follows from what was begun, so nothing is stored for it.
"""

import re

from finishing_tui.craft.wearers import is_childs as for_child
from finishing_tui.garment.left_open import TICKS
from finishing_tui.garment.state import State
from finishing_tui.garment.work import StepWork
from finishing_tui.recipe.kinds.base import Step

CARE = "take care"
"""The heading of a caution."""

_CHILD = re.compile(r"\b(child|children|baby|babies|infants?|toddlers?|kids?|newborns?)\b", re.IGNORECASE)
_DANGER = re.compile(
    r"\b(chok\w*|strang(le|ul)\w*|swallow\w*|smother\w*|suffocat\w*|cords?|drawstrings?|a (tie|bow)|ties|bows)\b",
    re.IGNORECASE,
)


def is_childs(step: Step) -> bool:
    """Return whether the caution of a step is a child's.

    It or the step's title speaks of a child; it speaks of what cords and small parts do to one; or the step is for
    children's sizes alone.
    """
    small = bool(step.for_) and all(map(for_child, step.for_))
    return small or bool(_CHILD.search(f"{step.title} {step.mind}") or _DANGER.search(step.mind))


def is_behind(state: State, step: int) -> bool:
    """Return whether the caution of ``step``, counted from 0, was shown before, and may stand behind its key now."""
    here = state.plan.step(step)
    if is_childs(here):
        return False
    order, standing = state.order, state.steps[step]
    work = standing.work
    if work is not None and (standing.status == "done" or order[-1:] != (step,) or _hands_went_on(work)):
        return True
    before = order[: order.index(step)] if step in order else order
    return any(state.plan.step(one).mind == here.mind for one in before)


def _hands_went_on(work: StepWork) -> bool:
    """Return whether a stitch of a step was made since; of ticks, each may be what is to be taken care of."""
    return any(
        progress.mark.units and stage.unit not in TICKS
        for stage, progress in zip(work.stages, work.progress, strict=False)
    )
