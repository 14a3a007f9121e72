"""The yarn that what is left of an edge still takes, so that nobody runs out three stitches before the end."""

import re
from collections.abc import Callable
from math import ceil

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.ledger import TailEntry
from finishing_tui.craft.lengths import Length, LengthUnit, length, say_length
from finishing_tui.craft.yarn import HOLE, WEAVE_IN, Need, WillDo, needed, will_it_close, will_it_do
from finishing_tui.garment.decide.stages import entered
from finishing_tui.garment.state import State
from finishing_tui.glance.wishes import Units
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.close_hole import CloseHole
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.stage import Stage
from finishing_tui.recipe.yarn_of import left_by, length_left, operation_of, tail_of, width_of


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
    short = "" if done else _too_short(state, need, units)
    return f"Yarn still needed: {say_length(usual)}{at_most}{_its_tail(step, need.usual.unit, units)}.{short}"


def _its_tail(step: Step, unit: LengthUnit, units: Units) -> str:
    """Say how long a tail comes on top: as the recipe leaves it, with no number of ours beside one in its words."""
    if isinstance(step, Join | BindOff):
        if step.keep:  # no yarn is cut
            return ""
        said = length_left(step, left_by(step)[-1][0]) if left_by(step) else None
        if said is not None:
            same = units in {"as given", said.unit}
            return f", plus its {say_length(said if same else _upwards(Length(said.cm, unit)))} tail"
        if _LEAVES.search(step.say):
            return ", plus its tail"
    return f", plus a {say_length(_upwards(Length(WEAVE_IN.cm, unit)))} tail"


_LEAVES = re.compile(r"\bleav(?:e|ing)\b[^.;:]*\d[^.;:]*?(?:cm|in\b|\")")
"""How a recipe says in words how long a tail is left."""


def tail_at_hole(state: State, units: Units = "as given") -> str:
    """Return that the tail the hole under way is to be closed with will not do, where it is known how long that is."""
    return _will_not_do(state, will_it_close, units)


def length_at_hole(state: State, tail: str) -> tuple[str, WillDo]:
    """Return how long a tail that could close the hole is, and whether it will do.

    As the recipe gives it, less what was worked with it since; an empty text where nothing says how long.
    """
    have = _left_of(state, tail)
    return ("", "enough") if have is None else (say_length(have), will_it_close(have))


def _too_short(state: State, need: Need, units: Units) -> str:
    """Return that the tail the step is worked with will not do, where it is known how long that is."""
    return _will_not_do(state, lambda have: will_it_do(need, have)[0], units)


def _will_not_do(state: State, judge: Callable[[Length], WillDo], units: Units) -> str:
    assert state.current is not None
    tail, _ = tail_of(state.plan.step(state.current))
    try:
        have = _left_of(state, tail) if tail else None
    except Impossible:  # no length at all, or longer than any there is
        have = None
    if have is None or (verdict := judge(have)) == "enough":
        return ""
    long = say_length(have if units == "as given" else Length(have.cm, units))
    return f" The tail {tail} is {long}, {verdict} for that: use new yarn or a longer tail."


def _left_of(state: State, tail: str) -> Length | None:
    """Return how long a tail is by the step that cut it, less what was worked with it since; None where none says."""
    have: Length | None = None
    for index in state.order:
        step, work = state.plan.step(index), state.steps[index].work
        if work is not None and tail in dict(left_by(step)):
            have = length_left(step, tail)
        elif have is None or work is None or index == state.current:
            continue
        elif isinstance(step, CloseHole):  # with this tail or another
            if TailEntry(tail, "shortened") in entered(work):
                have = Length(have.cm - HOLE.cm, have.unit) if HOLE.cm < have.cm else None
        elif tail_of(step)[0] == tail:
            pairs = next((stage for stage in work.stages if stage.unit == "pair" and stage.units), None)
            width = pairs and width_of(step, state.plan.here(work.before), pairs, 0)
            used = needed(operation_of(step), width).usual.cm if width else have.cm
            have = Length(have.cm - used, have.unit) if used < have.cm else None
    return have


def _upwards(given: Length) -> Length:
    """Return a length a little longer that is easy to say: whole fives of centimetres, or whole inches."""
    step = 5 if given.unit == "cm" else 1
    return length(ceil(given.amount / step) * step, given.unit)
