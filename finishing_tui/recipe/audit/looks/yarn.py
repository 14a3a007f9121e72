"""The working yarn: it must hang where the work is, and at the end where the row begins.

A ledger that knows of no yarn at all says nothing: the yarn a piece was knitted with may still hang from it.
"""

from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.work import Work

_TURNS = {"right": "left", "left": "right"}


def look(look: Look) -> Findings:
    """Yield what is wrong where yarn hangs from another place, from none, or at the wrong end."""
    step = look.step
    match step:
        case PickUpAndKnit(yarn="same"):
            places: tuple[str, ...] = (step.onto,)
        case BindOff(yarn="same"):
            places = (step.from_,)
        case Join(yarn="same", with_tail=""):
            places = step.needles(look.here)
        case Work():
            places = (step.on,)
        case _:
            return
    if look.stages and not any(stage.units for stage in look.stages):
        return  # there is none of it in this size
    yarns = look.before.yarns
    needs = isinstance(step, PickUpAndKnit | Join)
    if (yarns or needs) and not any(place in yarns for place in places):
        hangs = f"the working yarn hangs from the {look.name(yarns[0])}" if yarns else "no working yarn hangs there"
        way = "" if isinstance(step, Work) else 'say yarn = "new", or '
        yield look.finding(
            "warning" if isinstance(step, Work) else "error",
            "yarn",
            f"{hangs}, and this step works with the yarn of the {look.name(places[0])}",
            *(("yarn",) if needs else ()),
            suggestion=f"{way}move or join it there first",
        )
    start = look.footing.hand
    at = look.before.posture.yarn_at.lower()
    if look.trail.arranged and _TURNS[start] in at and start not in at:
        yield look.finding(
            "warning",
            "yarn",
            f"the yarn hangs at the {_TURNS[start]}, and the row begins at the {start}",
            suggestion="turn the work, begin at the other end, or join new yarn",
        )
