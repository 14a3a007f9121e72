"""The two sides of a seam: one row more on one side is eased, more than that is doubtful.

Sources: L. Neatby; Knitting Robin 2013.
"""

from finishing_tui.craft.edges import ROWS_PER
from finishing_tui.craft.words import plural
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.seam import Seam

_EASED = 1
"""Rows by which two sides may differ without a word."""


def look(look: Look) -> Findings:
    """Yield a warning where two sides of rows differ by more than is eased, or two of stitches differ at all."""
    step = look.step
    if not isinstance(step, Seam) or step.unequal or len(step.sides) != 2:
        return
    one, other = step.sides
    counts = [look.count(side.spots) for side in step.sides]
    rows = one.unit != "stitch" and other.unit != "stitch"
    if (one.unit == "stitch") != (other.unit == "stitch") or not any(counts):
        return  # stitches are sewn to rows by a ratio of their own
    along = [count * ROWS_PER.get(side.unit, 1) for side, count in zip(step.sides, counts, strict=True)]
    yield look.compared("sides", along[0], along[1], "sides")
    if abs(along[0] - along[1]) > (_EASED * max(ROWS_PER.get(one.unit, 1), ROWS_PER.get(other.unit, 1)) if rows else 0):
        what = "row" if rows else "stitch"
        yield look.finding(
            "warning",
            "seam sides",
            f"the sides of this seam differ: {plural(along[0], what)} and {plural(along[1], what)}",
            "sides",
            expected=along[0],
            found=along[1],
            sum=f"{max(along)} - {min(along)} = {abs(along[0] - along[1])}",
            suggestion=f"{min(along)} or {max(along)} on both, or say unequal = true",
        )
