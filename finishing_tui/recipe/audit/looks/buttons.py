"""Buttons sewn on against the buttonholes that were worked."""

from finishing_tui.craft.words import plural
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.sew_on import SewOn


def look(look: Look) -> Findings:
    """Yield a comparison where buttons are sewn on and there are holes for them, and a warning where they differ."""
    step, holes = look.step, look.trail.buttonholes
    if not isinstance(step, SewOn) or "button" not in step.what.lower() or not holes or step.unequal:
        return
    buttons = look.count(step.count)
    yield look.compared("buttons", holes, buttons, "count")
    if buttons != holes:
        yield look.finding(
            "warning",
            "buttons",
            f"{plural(buttons, 'button')} for {plural(holes, 'buttonhole')}",
            "count",
            expected=holes,
            found=buttons,
            suggestion=f"sew {holes} on, or work {plural(buttons, 'hole')}; the first and the last are counted too",
        )
