"""The yarn that what is left of an edge still takes, so that nobody runs out three stitches before the end."""

from fractions import Fraction
from math import ceil

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.lengths import Length, length, say_length
from finishing_tui.craft.yarn import WEAVE_IN, needed
from finishing_tui.garment.state import State
from finishing_tui.glance.wishes import Units
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.base import Here
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.graft import Graft
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.seam import Seam
from finishing_tui.recipe.stage import Stage

ROWS = {"row": 1, "ridge": 2, "chain": 2}
"""How many rows a bar of a sewn edge is."""


def yarn_to_go(state: State, stage: Stage, done: int, units: Units = "as given") -> str:
    """Return the yarn that the units of ``stage`` after the first ``done`` take, in a sentence.

    It is the width of what is left, by the gauge, times what is published for this way of working (``craft.yarn``), in
    ``units``. Empty where nothing is left, the gauge is not known, or the width that counts is not (a sewn bind-off
    goes by the stretched one).
    """
    if state.current is None:
        return ""
    step, here = state.plan.step(state.current), state.plan.here(state.ledger)
    operation = _operation(step)
    if not operation:
        return ""
    try:
        width = _width(step, here, stage, done)
        if width is None:
            return ""
        need = needed(operation, width if units == "as given" else Length(width.cm, units))
    except Impossible:  # longer than any length there is
        return ""
    usual, most = _upwards(need.usual), _upwards(need.most)
    at_most = f" (up to {say_length(most)})" if most != usual else ""
    tail = _upwards(Length(WEAVE_IN.cm, need.usual.unit))
    return f"Yarn still needed: {say_length(usual)}{at_most}, plus a {say_length(tail)} tail."


def _operation(step: AnyStep) -> str:
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


def _width(step: AnyStep, here: Here, stage: Stage, done: int) -> Length | None:
    """Return how wide what is left lies; None where that cannot be known."""
    if isinstance(step, Seam):
        unit, gauge = step.sides[0].unit, here.body
        left = Fraction(sum(stage.bars[0][done:])) if stage.bars else Fraction(stage.units - done)
        if gauge is None or not left or (unit != "stitch" and gauge.rows is None):
            return None
        return _laid(left / gauge.stitches_per_cm if unit == "stitch" else left * ROWS[unit] / gauge.rows_per_cm, gauge)
    gauge = here.body if here.band is None or not isinstance(step, BindOff) else here.band
    left = Fraction(stage.units - done)
    return None if gauge is None or not left else _laid(left / gauge.stitches_per_cm, gauge)


def _laid(cm: Fraction, gauge: Gauge) -> Length:
    return Length(cm, gauge.over.unit)


def _upwards(given: Length) -> Length:
    """Return a length a little longer that is easy to say: whole fives of centimetres, or whole inches."""
    step = 5 if given.unit == "cm" else 1
    return length(ceil(given.amount / step) * step, given.unit)
