"""A row of even shaping that cannot be worked: the audit goes on with the count it should have given."""

from dataclasses import replace

from finishing_tui.craft.errors import Impossible
from finishing_tui.recipe.audit.look import Instead, Look
from finishing_tui.recipe.kinds.base import CannotBegin
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.work import Work


def instead(look: Look) -> Instead:
    """Return the step, or where the row cannot hold the change a plain row that changes the count all the same."""
    step = look.step
    if not isinstance(step, Shape):
        return step, ()
    held, wanted = look.before.on(step.on), look.count(step.to)
    try:
        step.stages(look.here)
    except CannotBegin:
        return step, ()
    except Impossible as error:
        told = look.finding("error", "row does not fit", str(error), "to", expected=wanted, found=held)
        plain = Work(
            title=step.title, on=step.on, rounds=1, change=wanted - held, expect=step.expect, repeat=step.repeat
        )
        return (plain if wanted != held else replace(step, method="")), (told,)
    return step, ()
