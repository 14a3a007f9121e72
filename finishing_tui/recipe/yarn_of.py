"""What ``craft.yarn`` must know of a step: what its work is called there, and how wide it lies."""

from fractions import Fraction

from finishing_tui.craft.edges import ROWS_PER
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.lengths import Length, read_length
from finishing_tui.recipe.kinds.base import Here, Step
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.close_hole import CloseHole
from finishing_tui.recipe.kinds.cut import Cut
from finishing_tui.recipe.kinds.graft import Graft
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.seam import Seam
from finishing_tui.recipe.stage import Stage


def operation_of(step: Step) -> str:
    """Return what ``craft.yarn`` calls the work of ``step``; empty where it takes no yarn along an edge."""
    match step:
        case BindOff():
            method = step.method.casefold()
            return "" if "sewn" in method else "tubular bind-off" if "tubular" in method else "bind-off"
        case Join():
            return "three-needle bind-off"
        case Graft():
            return "graft"
        case Seam():
            return "mattress seam"
        case _:
            return ""


def tail_of(step: Step) -> tuple[str, str]:
    """Return the tail that hangs already and that ``step`` is worked with, and the key that names it; else nothing."""
    match step:
        case Join(with_tail=tail):
            return tail, "with_tail"
        case Graft(tail=tail) | Seam(tail=tail) | CloseHole(tail=tail):
            return tail, "tail"
        case _:
            return "", ""


def left_by(step: Step) -> tuple[tuple[str, str], ...]:
    """Return the tails that ``step`` leaves where it says so, at its start and its end: each with how long, or ""."""
    match step:
        case Cut():
            return ((step.tail, step.length),)
        case PickUpAndKnit(yarn="new"):
            return ((step.tail or f"start of {step.own_tail}", step.length),)
        case Join() | BindOff():
            start = ((step.start_tail or f"start of {step.own_tail}", step.start_length),) if step.yarn == "new" else ()
            ends = () if step.keep or (isinstance(step, Join) and step.with_tail) else (step.tail or step.own_tail,)
            return (*start, *((tail, step.length) for tail in ends))
        case _:
            return ()


def length_left(step: Step, tail: str) -> Length | None:
    """Return how long ``step`` leaves a tail; None where it leaves none of that name, or does not say how long."""
    said = dict(left_by(step)).get(tail, "")
    try:
        return read_length(said) if said else None
    except Impossible:  # not as a length
        return None


def width_of(step: Step, here: Here, stage: Stage, done: int) -> Length | None:
    """Return how wide what is left lies; None where that cannot be known."""
    if isinstance(step, Seam):
        unit, gauge = step.sides[0].unit, here.body
        left = Fraction(sum(stage.bars[0][done:])) if stage.bars else Fraction(stage.units - done)
        if gauge is None or not left or (unit != "stitch" and gauge.rows is None):
            return None
        return _laid(
            left / gauge.stitches_per_cm if unit == "stitch" else left * ROWS_PER.get(unit, 1) / gauge.rows_per_cm,
            gauge,
        )
    gauge = here.body if here.band is None or not isinstance(step, BindOff) else here.band
    left = Fraction(stage.units - done)
    return None if gauge is None or not left else _laid(left / gauge.stitches_per_cm, gauge)


def _laid(cm: Fraction, gauge: Gauge) -> Length:
    return Length(cm, gauge.over.unit)
