"""The yarn that what is left of an edge still takes, so that nobody runs out three stitches before the end."""

from math import ceil

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.lengths import Length, length, say_length
from finishing_tui.craft.yarn import WEAVE_IN, needed
from finishing_tui.garment.state import State
from finishing_tui.glance.wishes import Units
from finishing_tui.recipe.stage import Stage
from finishing_tui.recipe.yarn_of import operation_of, width_of


def yarn_to_go(state: State, stage: Stage, done: int, units: Units = "as given") -> str:
    """Return the yarn that the units of ``stage`` after the first ``done`` take, in a sentence.

    It is the width of what is left, by the gauge, times what is published for this way of working (``craft.yarn``), in
    ``units``. Empty where nothing is left, the gauge is not known, or the width that counts is not (a sewn bind-off
    goes by the stretched one).
    """
    if state.current is None:
        return ""
    step, here = state.plan.step(state.current), state.plan.here(state.ledger)
    operation = operation_of(step)
    if not operation:
        return ""
    try:
        width = width_of(step, here, stage, done)
        if width is None:
            return ""
        need = needed(operation, width if units == "as given" else Length(width.cm, units))
    except Impossible:  # longer than any length there is
        return ""
    usual, most = _upwards(need.usual), _upwards(need.most)
    at_most = f" (up to {say_length(most)})" if most != usual else ""
    tail = _upwards(Length(WEAVE_IN.cm, need.usual.unit))
    return f"Yarn still needed: {say_length(usual)}{at_most}, plus a {say_length(tail)} tail."


def _upwards(given: Length) -> Length:
    """Return a length a little longer that is easy to say: whole fives of centimetres, or whole inches."""
    step = 5 if given.unit == "cm" else 1
    return length(ceil(given.amount / step) * step, given.unit)
