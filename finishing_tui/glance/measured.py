"""What a measure says beside what is wanted: told before it is written down, for afterwards it is only a number."""

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.figures import read_number
from finishing_tui.craft.lengths import CM_PER, Length, read_length, say_length
from finishing_tui.garment.state import State
from finishing_tui.recipe.kinds.measure import Measure


def beside_wanted(state: State, typed: str) -> str:
    """Return how far what is ``typed``, for the measure under way, is from what is wanted, as part of a sentence.

    Empty where it is within its tolerance, where no length is wanted, or where ``typed`` is no length that can be.
    Without a tolerance every difference is told; 0 is as far off as all that is wanted.
    """
    step = state.plan.step(state.current) if state.current is not None else None
    if not isinstance(step, Measure) or not step.value.strip():
        return ""
    wanted = read_length(step.value)
    try:
        found = read_number(typed.strip()) * CM_PER[wanted.unit]
        off = Length(abs(found - wanted.cm), wanted.unit)  # no length where it is just what is wanted, or beyond all
    except Impossible:
        return ""
    if step.tolerance.strip() and off <= read_length(step.tolerance):
        return ""
    more = "more" if found > wanted.cm else "less"
    spare = f", give or take {say_length(read_length(step.tolerance))}" if step.tolerance.strip() else ""
    return f"{say_length(off)} {more} than the {say_length(wanted)} wanted{spare}"
