"""Where a stitch that is made, or two that are worked together, show least: by what is done with them next.

Common practice that every pair of hands can check, no single source: a shaping hides on a purl stitch of a rib, in the
bumps of garter stitch, beside an edge of stockinette, and under a ridge. Where nothing tells which it is, the one
sentence that holds for all of them is said.
"""

import re

from finishing_tui.garment.state import State
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.base import Here
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.graft import Graft
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.move import Move
from finishing_tui.recipe.kinds.needles import TwoNeedles
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Held
from finishing_tui.recipe.kinds.work import Work

SHOWS_LEAST = "It shows least beside an edge or a seam."
"""What is said where nothing tells how the stitches are worked."""


def shows_least(state: State, place: str, more: int) -> str:
    """Return how and where ``more`` stitches (below 0: fewer) show least on a needle or holder, in sentences."""
    here = state.plan.here(state.ledger)
    step = _next_on(state, place)
    match step:
        case Join() | Graft():
            return _joining(step, here, more)
        case BindOff():
            where = " beside a purl column" if _is_rib(step.method) else ""
            said = f"{_did(more)}{where} as you bind off: the bound-off ridge covers it."
        case Work():
            purled = step.rows is not None and here.ledger.posture.facing == "wrong"
            said = _in_texture(step.pattern, more) or _in_stockinette(step.pattern, more, purled=purled)
        case PickUpAndKnit():
            if abs(more) > 1:
                return "At both ends of these stitches, beside the corners: the picked-up ones cover them."
            said = "At an end of these stitches, beside the corner: the picked-up ones cover it."
        case _:
            said = ""
    return said + " Keep them apart." * (abs(more) > 1) if said else SHOWS_LEAST


def in_a_round(band: Work, more: int) -> str:
    """Return where a band's first round hides ``more`` stitches (below 0: fewer); empty where that is not known."""
    return _in_texture(band.pattern, more)


def _next_on(state: State, place: str) -> AnyStep | None:
    """Return the step that works the stitches on ``place`` now or next, wherever they are slipped before that."""
    for index, standing in enumerate(state.steps):
        if standing.status not in {"to-come", "under-way"} or not state.plan.is_for(index):
            continue
        step = state.plan.step(index)
        match step:
            case Move() if step.from_ == place:
                place = step.to
            case TwoNeedles() if place in {step.front, step.back, step.near, step.far}:
                return step
            case BindOff() if step.from_ == place:
                return step
            case Work() if step.on == place:
                return step
            case PickUpAndKnit() if any(isinstance(one, Held) and one.from_ == place for one in step.section):
                return step
            case _:
                continue
    return None


def _did(more: int) -> str:
    return "Lift the strand" if more > 0 else "Work two together"


def _joining(step: Join | Graft, here: Here, more: int) -> str:
    """Return where a stitch hides in a join or a graft: at its edge, and several under its ridge."""
    end = ", at the armhole end" if step.shoulder(here) else ""
    if abs(more) > 1 and isinstance(step, Join):
        return "Spread them along the join: its ridge covers them."
    if abs(more) > 1:
        return "One at each end, right after the edge stitch: in the middle of a graft they would show."
    why = "the ridge of the join covers it" if isinstance(step, Join) else "in the middle of a graft it would show"
    return f"{_did(more)} right after the edge stitch{end}: {why}."


def _is_rib(pattern: str) -> bool:
    return "rib" in pattern.lower() or bool(re.search(r"\bk\d+,? ?p\d+", pattern.lower()))


def _in_texture(pattern: str, more: int) -> str:
    """Return where it hides in a fabric that has purl stitches on its right side; empty for any other."""
    if _is_rib(pattern):
        how = "Lift the strand beside a purl column and purl it" if more > 0 else "Purl two together at a purl column"
        return f"{how}: it sinks between the ribs."
    if any(name in pattern.lower() for name in ("garter", "seed", "moss")):
        how = "Work into the front and back of one" if more > 0 else "Work two together"
        return f"{how}, away from the edge stitch: the bumps cover it."
    return ""


def _in_stockinette(pattern: str, more: int, *, purled: bool) -> str:
    """Return where it shows least in stockinette; ``purled``: its wrong side is towards the knitter. Else nothing."""
    if not any(name in pattern.lower() for name in ("stockinette", "stocking")):
        return ""
    verb = "purl" if purled else "knit"
    how = f"Lift the strand and {verb} it twisted" if more > 0 else f"{verb.capitalize()} two together"
    return f"{how}, one stitch in from an edge, a seam or the start of the round."
