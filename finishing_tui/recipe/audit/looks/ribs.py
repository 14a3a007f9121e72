"""A rib worked on a number it does not come out on: told as a warning where the step names no repeat of its own.

Sources: Binka Schwan, TKGA, 2022; NobleKnits, 2007 (60 in k2p2 flat: the edges do not mirror).
"""

import re

from finishing_tui.craft.ribs import Rib, edges_mirror, nearest, read_rib
from finishing_tui.craft.words import listing
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.work import Work

_RIB = re.compile(r"\bk([0-9]{1,2})[ ,]{0,3}p([0-9]{1,2})\b", re.IGNORECASE)


def look(look: Look) -> Findings:
    """Yield a warning where the one rib that the pattern names does not close, or its two edges differ."""
    step = look.step
    if not isinstance(step, Work) or step.repeat is not None or step.unequal:
        return
    named = {match[0] for match in _RIB.finditer(step.pattern)}
    held = look.before.on(step.on)
    if (
        len(named) != 1
        or "rib" not in step.pattern.lower()
        or step.shaping
        or step.change
        or not held
        or (step.on, held) in look.trail.odd
    ):
        return
    rib = read_rib(named.pop())
    flat = step.rows is not None
    if edges_mirror(held, rib) if flat else held % rib.period == 0:
        return
    plus = rib.knit if flat else 0
    near = [str(count) for count in nearest(held, rib.period, plus)]
    yield look.finding(
        "warning",
        "rib",
        _said(held, rib, flat=flat),
        "pattern",
        expected=" or ".join(near),
        found=held,
        suggestion=f"{listing(near, 'or')} would",
    )


def _said(held: int, rib: Rib, *, flat: bool) -> str:
    if flat:
        return f"{held} stitches of {rib} worked flat do not end as they began, so the two edges differ"
    return f"{held} stitches of {rib} do not close in the round"
