"""A ``check`` that the neck goes over the head: the last band bound off, at full stretch, against the head.

The head is known where a size is named as the tables name a wearer ("12 months"); else only a neck that would not pass
the smallest head there is is told.
"""

from fractions import Fraction

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.head import HEADS, head_of, opening, over_the_head
from finishing_tui.craft.lengths import Length, length, say_length
from finishing_tui.craft.words import plural
from finishing_tui.recipe.audit.look import Found, Look
from finishing_tui.recipe.kinds.check import Check


def look(look: Look) -> Found:
    """Yield a warning where the neck is too tight at an ordinary stretch."""
    step, band, gauge = look.step, look.trail.band, look.footing.per_10cm
    if not isinstance(step, Check) or not step.over_the_head or not band or not gauge:
        return
    head, whose = _head(look.footing.size)
    found = over_the_head(opening(band, Fraction(gauge)), head)
    if not found.goes:
        wanted = -(-head.cm * gauge * found.relaxed.cm // (found.stretched.cm * 10))
        yield look.finding(
            "warning",
            "head",
            f"a neck of {plural(band, 'stitch')} stretches to {say_length(found.stretched)}, and {whose} is "
            f"{say_length(head)}",
            "over_the_head",
            expected=int(wanted),
            found=band,
            suggestion=f"have {wanted} stitches or more, bind off more loosely, or make an opening",
        )


def _head(size: str) -> tuple[Length, str]:
    try:
        return head_of(size), f"the head to allow for ({size})"
    except Impossible:
        return length(min(low for low, _ in HEADS.values()), "cm"), "even the smallest head"
