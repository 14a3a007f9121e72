"""The first round of a band: there a difference that a recount left is put right, evenly, in a step to come."""

from dataclasses import replace

from finishing_tui.garment.events import Edited, Replanned
from finishing_tui.garment.labels import Label
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import State
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.graft import Graft
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.move import Move
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.work import Shaping
from finishing_tui.recipe.kinds.work import Work as WorkStep

MENDS = "evenly, after the recount"
"""Where in the first round a difference that a recount left is put right; it tells that shaping from the recipe's."""


def first_rounds_on(state: State, place: str, start: int, *, wherever: bool = False) -> tuple[int, WorkStep] | None:
    """Return the first step to come, from ``start`` on, that works rounds or rows on ``place``, with its index.

    None where the stitches go straight into a join or a bind off, or onto another needle: no round of theirs follows.
    Nor where a row that shapes them comes first, for that brings them to a number of its own.
    ``wherever``: it is looked for beyond that too, as journals of before may have left something there.
    """
    for index in range(max(start, 0), len(state.steps)):
        step = state.plan.step(index)
        if state.steps[index].status not in {"to-come", "under-way"} or not state.plan.is_for(index):
            continue
        if state.steps[index].status == "to-come" and isinstance(step, WorkStep) and step.on == place:
            return index, step
        if not wherever and _comes_between(step, place):
            return None
    return None


def _comes_between(step: AnyStep, place: str) -> bool:
    """Return whether ``step`` leaves no stitch on ``place``, or shapes those that are there."""
    match step:
        case Join() | Graft():
            return step.count == "all" and place in {step.front, step.back, step.near, step.far}
        case BindOff() | Move():
            return step.count == "all" and step.from_ == place
        case Shape():
            return step.on == place
        case _:
            return False


def mended_first_round(
    state: State, step: int, place: str, difference: int, *, only_mended: bool = False
) -> Replanned | None:
    """Return the change of plan by which the first round on ``place`` after ``step`` puts a difference right.

    What an earlier recount left to that round is added to it. With ``only_mended`` there must be such a recount: that
    is how ripping back takes its mending back. None when no later step works rounds there; the difference then
    shows at the end of the step.
    """
    found = first_rounds_on(state, place, step + 1, wherever=only_mended)
    if found is None:
        return None
    index, band = found
    before = mended_by(band)
    if only_mended and not before:
        return None
    ids = state.plan.ids
    why = Label("recount-to-first-round", (ids[step], ids[index]), numbers=(difference,))
    return Replanned(edits=(Edited(ids[index], band, _mending(band, before + difference)),), why=why)


def mending_kept(state: State, plan: Plan) -> Plan:
    """Return a changed plan with what recounts have left to first rounds to come: that is not in any file."""
    for index, old in enumerate(state.plan.recipe.step):
        new = plan.step(index)
        if isinstance(old, WorkStep) and isinstance(new, WorkStep) and old.on == new.on:
            plan = plan.with_step(index, _mending(new, mended_by(old)))
    return plan


def mended_by(step: WorkStep) -> int:
    """Return the stitches that recounts have left to the first round of ``step``."""
    return sum(one.change for one in step.shaping if one.at == MENDS)


def _mending(step: WorkStep, change: int) -> WorkStep:
    """Return ``step`` with ``change`` stitches put right in its first round (none, where that is 0)."""
    shaping = tuple(one for one in step.shaping if one.at != MENDS)
    mend = (Shaping(change=change, round=1, at=MENDS),) if change else ()
    return replace(step, shaping=(*shaping, *mend))
