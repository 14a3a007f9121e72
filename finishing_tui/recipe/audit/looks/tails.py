"""The tail that a join, a graft or a seam is worked with, or a hole closed: it is long enough.

How long it is only the step that left it says; where that says nothing, nothing is looked at.
"""

from math import ceil

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.lengths import Length, say_length
from finishing_tui.craft.yarn import CLOSE_A_HOLE, HOLE, WEAVE_IN, WillDo, needed, will_it_close, will_it_do
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.close_hole import CloseHole
from finishing_tui.recipe.yarn_of import left_by, length_left, operation_of, tail_of, width_of


def look(look: Look) -> Findings:
    """Yield an error for a tail that is too short by the least, a warning for one that is tight."""
    tail, key = tail_of(look.step)
    if not tail:
        return
    have = dict(look.trail.tails).get(tail)
    verdict, takes = ("enough", "") if have is None else _judged(look, have)
    if have is not None and verdict != "enough":
        yield look.finding(
            "error" if verdict == "too short" else "warning",
            "tail",
            f"the tail {tail!r} is {say_length(have)} long, and this takes {takes}",
            key,
            suggestion="leave a longer tail, or use new yarn",
        )


def _judged(look: Look, have: Length) -> tuple[WillDo, str]:
    """Return whether a tail of length ``have`` will do for the step, and what that takes."""
    if isinstance(look.step, CloseHole):
        least, most = (ceil(Length(each.cm, have.unit).amount) for each in CLOSE_A_HOLE)
        return will_it_close(have), f"{least} to {most} {have.unit}"
    width = taken(look)
    if width is None:
        return "enough", ""
    need = needed(operation_of(look.step), width)
    weave_in = say_length(Length(WEAVE_IN.cm, need.usual.unit))
    return will_it_do(need, have)[0], f"{say_length(need.usual)} and {weave_in} to weave in"


def left_of(look: Look) -> tuple[tuple[str, Length], ...]:
    """Return the lengths of the tails that are known after a step that is worked with one."""
    hanging = tuple(one for one in look.trail.tails if one[0] in look.ledger.tails)
    made = ((tail, length_left(look.step, tail)) for tail, _ in left_by(look.step) if tail not in look.before.tails)
    hanging += tuple((tail, have) for tail, have in made if have is not None and tail in look.ledger.tails)
    tail, _ = tail_of(look.step)
    have = dict(hanging).get(tail)
    if have is None:
        return hanging
    others = tuple(one for one in hanging if one[0] != tail)
    used = HOLE if isinstance(look.step, CloseHole) else _used(look)
    return others if used is None or used.cm >= have.cm else (*others, (tail, Length(have.cm - used.cm, have.unit)))


def _used(look: Look) -> Length | None:
    """Return the yarn that the work of the step takes; None where that cannot be known."""
    width = taken(look)
    return None if width is None else needed(operation_of(look.step), width).usual


def taken(look: Look) -> Length | None:
    """Return how wide the work of the step lies; None where that cannot be known, or there is none in this size."""
    pairs = next((stage for stage in look.stages if stage.unit == "pair" and stage.units), None)
    try:
        return None if pairs is None else width_of(look.step, look.here, pairs, 0)
    except Impossible:  # longer than any length there is
        return None
