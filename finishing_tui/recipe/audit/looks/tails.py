"""The tail that a join, a graft or a seam is worked with: it hangs at the end where that starts, and it is long enough.

Where a tail hangs only its name says ("left armhole"), and how long it is only the step that cut it; what neither says
is not looked at.
"""

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.lengths import Length, read_length, say_length
from finishing_tui.craft.lies import ENDS
from finishing_tui.craft.yarn import WEAVE_IN, needed, will_it_do
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.cut import Cut
from finishing_tui.recipe.kinds.needles import TwoNeedles, only, words
from finishing_tui.recipe.yarn_of import operation_of, tail_of, width_of


def look(look: Look) -> Findings:
    """Yield an error for a tail at the other end or too short by the least, a warning for one that is tight."""
    tail, key = tail_of(look.step)
    if not tail:
        return
    step = look.step
    starts = step.starts_at(look.here) if isinstance(step, TwoNeedles) else None
    hangs = only(ENDS, words(tail))
    if starts and hangs and starts != hangs:
        yield look.finding(
            "error",
            "tail",
            f"the tail {tail!r} hangs at the {hangs}, and this starts at the {starts}",
            key,
            expected=starts,
            found=hangs,
            suggestion="use a tail of that end, or new yarn",
        )
    have, takes = dict(look.trail.tails).get(tail), taken(look)
    if have is None or takes is None:
        return
    need = needed(operation_of(step), takes)
    verdict, _ = will_it_do(need, have)
    if verdict != "enough":
        yield look.finding(
            "error" if verdict == "too short" else "warning",
            "tail",
            f"the tail {tail!r} is {say_length(have)} long, and this takes {say_length(need.usual)} and "
            f"{say_length(Length(WEAVE_IN.cm, need.usual.unit))} to weave in",
            key,
            suggestion="leave a longer tail, or use new yarn",
        )


def left_of(look: Look) -> tuple[tuple[str, Length], ...]:
    """Return the lengths of the tails that are known after a step that is worked with one."""
    if isinstance(look.step, Cut):
        try:
            return (*look.trail.tails, (look.step.tail, read_length(look.step.length)))
        except Impossible:  # none is said, or not as a length
            return look.trail.tails
    tail, _ = tail_of(look.step)
    have, takes = dict(look.trail.tails).get(tail), taken(look)
    if have is None:
        return look.trail.tails
    others = tuple(one for one in look.trail.tails if one[0] != tail)
    if takes is None or (left := have.cm - needed(operation_of(look.step), takes).usual.cm) <= 0:
        return others
    return (*others, (tail, Length(left, have.unit)))


def taken(look: Look) -> Length | None:
    """Return how wide the work of the step lies; None where that cannot be known, or there is none in this size."""
    pairs = next((stage for stage in look.stages if stage.unit == "pair" and stage.units), None)
    try:
        return None if pairs is None else width_of(look.step, look.here, pairs, 0)
    except Impossible:  # longer than any length there is
        return None
