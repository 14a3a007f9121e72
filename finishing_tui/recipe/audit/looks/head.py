"""A ``check`` that the neck goes over the head: the last band bound off, at full stretch, against the head.

The head is known where a size is named for a wearer of the tables ("12 months", "2 years", "woman"), or for an age
beyond them. Else only a neck that would not pass the smallest head there is is told.
"""

import re
from fractions import Fraction

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.head import HEADS, head_of, opening, over_the_head
from finishing_tui.craft.lengths import Length, length, say_length
from finishing_tui.craft.words import plural
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.check import Check

AGE = re.compile(r"([0-9]{1,3}) ?(year|month)s?", re.IGNORECASE)
"""An age, as a size is named for one."""

_NEARLY_GROWN = 120
"""Months from which a child's head is taken to be as large as a small man's."""


def look(look: Look) -> Findings:
    """Yield a warning where the neck is too tight at an ordinary stretch."""
    step, band, gauge = look.step, look.trail.band, look.footing.per_10cm
    if not isinstance(step, Check) or not step.over_the_head or not band or not gauge:
        return
    head, whose = head_for(look.footing.size_name)
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


def head_for(size: str) -> tuple[Length, str]:
    """Return the head to allow for in a size, and whose it is.

    A size is known by a wearer of the tables ("12 months", "woman") or by an age ("2 years"). For children older than
    those of the medical table none is published there: the smallest adult head of the craft charts is allowed for, from
    ten years on a man's (trade.md section 7), which is on the safe side of what girls of that age are likely to have.
    For any other size the smallest head of all is returned, since nothing is known of the wearer.
    """
    wearer = size
    age = AGE.fullmatch(" ".join(size.split()))
    if age is not None:
        months = int(age[1]) * (12 if age[2].lower() == "year" else 1)
        known = {int(name.split()[0]): name for name in HEADS if name.endswith(" months")}
        if months > max(known):
            grown = "man" if months >= _NEARLY_GROWN else "woman"
            return length(HEADS[grown][0], "cm"), f"the head to allow for ({age[0]}: a small {grown}'s)"
        wearer = known.get(max((each for each in known if each <= months), default=0), "")
    try:
        return head_of(wearer), f"the head to allow for ({wearer})"
    except Impossible:
        return length(min(low for low, _ in HEADS.values()), "cm"), "even the smallest head"
