"""A row of even shaping that cannot be worked: the audit goes on with the count it should have given."""

from finishing_tui.craft.errors import Impossible
from finishing_tui.recipe.audit.look import Instead, Look
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.work import Work


def instead(look: Look) -> Instead:
    """Return a plain row that changes the count all the same, and why the one that is written cannot be worked."""
    step = look.step
    if not isinstance(step, Shape):
        return step, ()
    held, wanted = look.before.on(step.on), look.count(step.to)
    if not held:
        return step, ()
    try:
        step.stages(look.here)
    except Impossible as error:
        told = look.finding("error", "row does not fit", str(error), "to", expected=wanted, found=held)
        return Work(title=step.title, on=step.on, rounds=1, change=wanted - held), (told,)
    return step, ()
