"""A ``check`` that places hold the same number: on paper they must."""

from finishing_tui.craft.words import listing
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.check import Check


def look(look: Look) -> Findings:
    """Yield a comparison of every place with the first, and one finding where they differ."""
    step = look.step
    if not isinstance(step, Check) or step.unequal or not step.same:
        return
    held = [look.before.on(place) for place in step.same]
    for place, count in zip(step.same[1:], held[1:], strict=True):
        yield look.compared(place, held[0], count, "same")
    if len(set(held)) > 1:
        counts = listing([f"{count} on the {look.name(place)}" for place, count in zip(step.same, held, strict=True)])
        yield look.finding(
            "error",
            "places differ",
            f"these should hold the same number: {counts}",
            "same",
            expected=held[0],
            found=next(count for count in held if count != held[0]),
            suggestion="mend what comes before, or say unequal = true",
        )
