"""A ``check`` that the neck goes over the head: the last band bound off, at full stretch, against the head.

The head is known where the garment or its size is said to be for an age, a child or an adult ("12 months", "2T",
"woman"). Else only a neck that would not pass the smallest head there is is told.
"""

from fractions import Fraction

from finishing_tui.craft.head import opening, over_the_head
from finishing_tui.craft.lengths import Length, length, say_length
from finishing_tui.craft.wearers import MEDICAL, wearer_of
from finishing_tui.craft.words import plural
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.check import Check


def look(look: Look) -> Findings:
    """Yield a warning where the neck is too tight at an ordinary stretch."""
    step, band, gauge = look.step, look.trail.band, look.footing.per_10cm
    if not isinstance(step, Check) or not step.over_the_head or not band or not gauge:
        return
    head, whose = head_for(look.footing.wearer or look.footing.size_name)
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


def head_for(who: str) -> tuple[Length, str]:
    """Return the head to allow for a size or whoever will wear it, and whose it is, by the table it is from.

    Where that tells no age, child or adult, the smallest head of all is returned: nothing is known of the wearer.
    """
    wearer = wearer_of(who)
    if wearer is None:
        return length(MEDICAL[min(MEDICAL)], "cm"), "even the smallest head"
    return wearer.head, f"the head to allow for ({wearer.basis})"
