"""The tail that a join or a graft is worked with: it hangs at the end of the shoulder where that starts.

Where a tail hangs follows where the join of a shoulder left it; of any other only its name says it ("left armhole").
Where neither does, it is not looked at.
"""

from finishing_tui.craft.ledger import TailEntry
from finishing_tui.craft.lies import ENDS, End, Side
from finishing_tui.recipe.audit.look import Findings, Look
from finishing_tui.recipe.kinds.needles import TwoNeedles, only, words
from finishing_tui.recipe.yarn_of import tail_of


def look(look: Look) -> Findings:
    """Yield an error for a tail that hangs at another shoulder than the one that is joined, or at its other end."""
    tail, key = tail_of(look.step)
    if not tail or not isinstance(look.step, TwoNeedles):
        return
    named: tuple[Side | None, End | None] = (None, only(ENDS, words(tail)))
    side, hangs = dict(look.trail.ends).get(tail, named)
    shoulder, starts = look.step.shoulder(look.here), look.step.starts_at(look.here)
    if side and shoulder and side != shoulder:
        yield look.finding(
            "error",
            "tail",
            f"the tail {tail!r} hangs at the {side} shoulder, and this is the {shoulder} one",
            key,
            expected=shoulder,
            found=side,
            suggestion="use a tail of that shoulder, or new yarn",
        )
    elif starts and hangs and starts != hangs:
        yield look.finding(
            "error",
            "tail",
            f"the tail {tail!r} hangs at the {hangs}, and this starts at the {starts}",
            key,
            expected=starts,
            found=hangs,
            suggestion="use a tail of that end, or new yarn",
        )


def hanging_at(look: Look) -> tuple[tuple[str, tuple[Side, End]], ...]:
    """Return at which shoulder and which end of it tails hang after a step, of those that the join of one left there.

    New yarn leaves one at the start; where a needle was emptied, what the step ended with hangs at the other end. A
    tail that something else was worked with hangs elsewhere, and one that was not where it was to be used nobody knows.
    """
    step, (used, _) = look.step, tail_of(look.step)
    hanging = {tail: at for tail, at in look.trail.ends if tail in look.ledger.tails and tail != used}
    if isinstance(step, TwoNeedles) and any(stage.unit == "pair" and stage.units for stage in look.stages):
        shoulder, starts = step.shoulder(look.here), step.starts_at(look.here)
        if shoulder and starts:
            first = {one.tail for stage in look.stages for one in stage.opening if isinstance(one, TailEntry)}
            hanging |= dict.fromkeys(sorted(first), (shoulder, starts))
            if not all(look.ledger.on(needle) for needle in step.needles(look.here)):
                last = {*look.ledger.tails} - {*look.before.tails} - first
                if used and dict(look.trail.ends).get(used, (shoulder, starts)) == (shoulder, starts):
                    last.add(used)
                hanging |= dict.fromkeys(sorted(last), (shoulder, ENDS[1 - ENDS.index(starts)]))
    return tuple(hanging.items())
