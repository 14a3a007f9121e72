"""How a join or a graft lies: the end where it starts is the one that the laying before it has the yarn at."""

from finishing_tui.craft.lies import ENDS
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.needles import TwoNeedles, only, piece_on, words


def look(look: Look) -> Findings:
    """Yield an error for yarn laid at the other end, or another piece laid near than the step has near."""
    step = look.step
    if not isinstance(step, TwoNeedles) or not look.trail.arranged or not any(stage.units for stage in look.stages):
        return
    here, lie = look.here, look.before.posture
    near = piece_on(step.needles(here)[0], here)
    laid = only(("front", "back"), words(lie.near))
    if near and laid and laid != near:
        yield look.finding(
            "error",
            "lie",
            f"the {laid} was laid nearer to you, and this step has the {near} near",
            expected=near,
            found=laid,
            suggestion="say the other needle in 'near', or lay it the other way round",
        )
        return
    starts, said = step.starts_at(here), only(ENDS, words(lie.yarn_at))
    if starts and said and said != starts:
        hand = "" if here.hand == "right" else ", left-handed"
        yield look.finding(
            "error",
            "lie",
            f"with the {near} near and {step.touching} sides together{hand} this starts at the {starts}, "
            f"and the yarn was laid at the {said}",
            expected=starts,
            found=said,
            suggestion=f"have the {'back' if near == 'front' else 'front'} near, or start at the {starts}",
        )
