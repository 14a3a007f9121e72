"""The tail that a join, a graft or a seam is worked with: it hangs on that side, and at the end where that starts.

Where a tail hangs follows where the step that left it began and ended: a join at its ends, a pick-up at its first
spot, a bind-off at its last stitch, a seam at its other end. Of any other only its name says it ("left armhole").
Where none of these tells, it is not looked at.
"""

import re
from dataclasses import replace

from finishing_tui.craft.ledger import TailEntry
from finishing_tui.craft.lies import ENDS, End, Side
from finishing_tui.recipe.audit.look import Edge, Findings, Hangs, Look
from finishing_tui.recipe.kinds.base import Step
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.buttonholes import Buttonholes
from finishing_tui.recipe.kinds.cut import Cut
from finishing_tui.recipe.kinds.move import Move
from finishing_tui.recipe.kinds.needles import TwoNeedles, only, words
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.seam import Seam
from finishing_tui.recipe.kinds.sections import Along, Gap, Held
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.work import Work
from finishing_tui.recipe.yarn_of import left_by, tail_of

_SIDES: tuple[Side, Side] = ("left", "right")


def look(look: Look) -> Findings:
    """Yield an error for a tail that hangs on the other side than is worked, or at its other end."""
    step, (tail, key) = look.step, tail_of(look.step)
    if not tail or not isinstance(step, TwoNeedles | Seam):
        return
    hangs = dict(look.trail.ends).get(tail) or Hangs(side_in(tail), only(ENDS, words(tail)))
    side = _side_of(step, look)
    starts = step.starts_at(look.here) if isinstance(step, TwoNeedles) else None
    if side and hangs.side and side != hangs.side:
        one = f"the {side} one" if hangs.said.endswith("shoulder") else f"on the {side}"
        yield look.finding(
            "error",
            "tail",
            f"the tail {tail!r} hangs {f'at the {hangs.said}' if hangs.said else f'on the {hangs.side}'}, "
            f"and this is {one}",
            key,
            expected=side,
            found=hangs.side,
            suggestion=f"use a tail of that {'shoulder' if one.endswith('one') else 'side'}, or new yarn",
        )
    elif starts and hangs.end and starts != hangs.end:
        yield look.finding(
            "error",
            "tail",
            f"the tail {tail!r} hangs at the {hangs.end}, and this starts at the {starts}",
            key,
            expected=starts,
            found=hangs.end,
            suggestion="use a tail of that end, or new yarn",
        )


def side_in(*texts: str) -> Side | None:
    """Return the wearer's side that texts name; None where they name none, or both.

    The right side of a fabric is none of hers, and what is left at the end of a sentence is no side.
    """
    said = re.sub(r"\b(right|wrong) sides?\b", "", " ".join(texts).lower())
    return only(_SIDES, set(re.findall(r"\b(left|right)\b(?=\s+\w)", said)))


def _side_of(step: Step, look: Look) -> Side | None:
    """Return the side on which a join, a graft or a seam is worked."""
    if isinstance(step, TwoNeedles):
        return step.shoulder(look.here) or side_in(step.title)
    assert isinstance(step, Seam)
    return side_in(step.title) or side_in(*(f"{side.along}." for side in step.sides))


def hanging_at(look: Look) -> tuple[tuple[str, Hangs], ...]:
    """Return where tails hang after a step, of those of which that is known.

    A tail that something else was worked with hangs elsewhere, and one that was not where it was to be used nobody
    knows.
    """
    used, _ = tail_of(look.step)
    hanging = {tail: at for tail, at in look.trail.ends if tail != used} | _left(look, used)
    return tuple((tail, at) for tail, at in hanging.items() if tail in look.ledger.tails and at != Hangs())


def _left(look: Look, used: str) -> dict[str, Hangs]:
    match look.step:
        case TwoNeedles():
            return _of_two_needles(look, look.step, used)
        case Seam():
            return {used: _sewn(look, look.step, used)}
        case PickUpAndKnit(yarn="new"):
            return {tail: _edges(look, look.step).first for tail, _ in left_by(look.step)}
        case BindOff(from_=place) if not look.ledger.on(place) and not look.step.keep:
            edge = dict(look.trail.edges).get(place, Edge())
            last = left_by(look.step)[-1][0]
            return {last: edge.other_end if look.step.yarn == "same" else edge.both}
        case _:
            return {}


def _of_two_needles(look: Look, step: TwoNeedles, used: str) -> dict[str, Hangs]:
    """Return where a join leaves tails: new yarn at its start, and what it ended with at the other end."""
    side, starts = _side_of(step, look), step.starts_at(look.here)
    if not any(stage.unit == "pair" and stage.units for stage in look.stages):
        return {}
    said = f"{side} shoulder" if step.shoulder(look.here) else ""
    first = {one.tail for stage in look.stages for one in stage.opening if isinstance(one, TailEntry)}
    found = dict.fromkeys(sorted(first), Hangs(side, starts, said))
    if not all(look.ledger.on(needle) for needle in step.needles(look.here)):
        last = {*look.ledger.tails} - {*look.before.tails} - first
        was = dict(look.trail.ends).get(used)
        if used and (was is None or was.fits(side, starts)):
            last.add(used)
        found |= dict.fromkeys(sorted(last), Hangs(side, _other(starts), said))
    return found


def _other(end: End | None) -> End | None:
    return None if end is None else ENDS[1 - ENDS.index(end)]


def _sewn(look: Look, step: Seam, used: str) -> Hangs:
    """Return where the tail of a seam hangs when that is sewn: on its side, and of a shoulder at the other end."""
    was = dict(look.trail.ends).get(used, Hangs())
    side = _side_of(step, look)
    if side and was.side and side != was.side:
        return Hangs()
    if "shoulder" not in words(step.title):
        return Hangs(side or was.side)
    return Hangs(side or was.side, _other(was.end), f"{side} shoulder" if side else "")


def edges_of(look: Look) -> tuple[tuple[str, Edge], ...]:
    """Return, after a step, the two ends of the edges that stitches on needles were picked up along, where known."""
    edges, step = dict(look.trail.edges), look.step
    match step:
        case PickUpAndKnit(onto=place):
            edges[place] = _edges(look, step) if not look.before.on(place) else Edge()
        case Move(from_=place, to=to) if place in edges:
            edges[to] = edges.pop(place) if not look.ledger.on(place) and not look.before.on(to) else Edge()
        case Work(on=place) if place in edges:
            rows = sum(stage.units for stage in look.stages)
            edges[place] = edges[place].after(rows if step.rounds is None else None, turned=bool(step.short_rows))
        case Shape(on=place) if place in edges:
            edges[place] = edges[place].after(1 if step.flat else None)
        case Buttonholes() | Cut():
            edges = {place: replace(edge, at=None) for place, edge in edges.items()}
        case _:
            for place in [*edges]:
                if look.ledger.on(place) != look.before.on(place):
                    edges[place] = Edge()
    return tuple((place, edge) for place, edge in edges.items() if edge != Edge() and look.ledger.on(place))


def _edges(look: Look, step: PickUpAndKnit) -> Edge:
    """Return the edge that was picked up, as it was walked: the yarn hangs at the end of the last section."""
    walked = [one for one in step.section if not isinstance(one, Gap)]
    if not walked:
        return Edge()
    if look.here.hand == "left":
        walked.reverse()
    first, last = (_at(name, one, look) for name, one in (("start", walked[0]), ("end", walked[-1])))
    return Edge(first, last, 1)


def _at(end: str, section: Along | Held, look: Look) -> Hangs:
    """Return what hangs at the start or the end of a section, where its name says a side or an end."""
    name = section.along or (look.name(section.from_) if isinstance(section, Held) else "")
    side, edge = side_in(name), only(ENDS, words(name))
    return Hangs(side, edge, f"{end} of the {name}") if side or edge else Hangs()
