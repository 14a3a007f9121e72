"""At the end: whatever is left behind. A finished garment has no live stitch, marker, hole, tail or working yarn."""

from finishing_tui.craft.ledger import Ledger
from finishing_tui.craft.words import plural
from finishing_tui.recipe.audit.finding import Compared, Finding, Where
from finishing_tui.recipe.audit.footing import AuditFooting
from finishing_tui.recipe.audit.look import Findings

_HOW = {
    "marker": "take it out in an 'unmark' step",
    "hole": "close it in a 'close hole' step",
    "tail": "weave it in: a 'weave in' step, with all tails or this one",
    "yarn": "bind off, join or cut before the end",
}


def left(footing: AuditFooting, ledger: Ledger, unsure: frozenset[str]) -> Findings:
    """Yield what is left when every step is done; places whose count is not known are passed over."""
    for place in footing.recipe.place:
        count = ledger.on(place)
        if place in unsure:
            continue
        yield Compared(None, ("place", place), "left", 0, count)
        if count:
            yield _finding(
                footing,
                f"{plural(count, 'live stitch')} left on the {footing.texts[place]} at the end",
                ("place", place),
                "bind them off, join them, or pick them up in a step",
                count,
            )
    for what, names in (("marker", ledger.markers), ("hole", ledger.holes), ("tail", tuple(ledger.tails))):
        for name in names:
            text = f"the {what} {name} is left in the work at the end"
            yield _finding(footing, text, ("step",), _HOW[what], 1, what)
    order = tuple(footing.recipe.place)  # not that of their names, which are the writer's own
    for place in sorted(ledger.yarns, key=lambda one: order.index(one) if one in order else len(order)):
        text = f"the working yarn still hangs from the {footing.name(place)} at the end"
        yield _finding(footing, text, ("place", place), _HOW["yarn"], 1, "yarn")


def _finding(
    footing: AuditFooting, message: str, where: Where, suggestion: str, found: int, what: str = "stitches"
) -> Finding:
    return Finding(
        level="error",
        kind=f"{what} left",
        message=message,
        where=where,
        size=footing.size_name,
        expected=0,
        found=found,
        suggestion=suggestion,
    )
