"""How the work lies right now, as far as that is still known, and in words.

The ledger keeps what the last arranging said, for undo stands on that. But hands go on: the yarn goes along with every
stitch that is worked with it, pieces that were laid together come apart when they are sewn or another edge is taken up,
and rows are turned. What stopped being true is not said. Two pieces laid together for a join lie so until it is done,
whatever is checked, counted or moved before it; which needle is near and where it starts is the join's to say.
"""

from collections.abc import Iterator
from dataclasses import replace

from finishing_tui.craft.ledger import Posture
from finishing_tui.craft.lies import ENDS, End
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Reached, StepWork
from finishing_tui.glance.lying import yarn_words
from finishing_tui.recipe.kinds import AnyStep
from finishing_tui.recipe.kinds.arrange import Arrange
from finishing_tui.recipe.kinds.needles import TwoNeedles, only, piece_on, words
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit

WITH_YARN = frozenset({"pick up and knit", "join", "work", "shape", "buttonholes", "bind off", "cast on", "cut"})
"""Kinds of step in which the working yarn goes along with the hands, or is cut."""

WITH_TWO = frozenset({"join", "graft", "seam"})
"""Kinds of step that two pieces lie together for."""

LOOKED_OVER = frozenset({"check", "count", "move", "mark", "unmark"})
"""Kinds of step that may come between laying two pieces together and working them, and leave them lying so."""

PUT_AWAY = frozenset({"weave in", "check", "measure", "block", "sew on"})
"""Kinds of step for which the work is taken up and laid as it suits: what was arranged before holds no more."""


def posture_words(posture: Posture) -> str:
    """Return how the work lies in words, empty where nothing is known."""
    parts = (
        f"{posture.facing} side facing" if posture.facing else "",
        f"{posture.together} sides together" if posture.together else "",
        f"{posture.near} nearer to you" if posture.near else "",
        f"{posture.on_top} on top" if posture.on_top else "",
        yarn_words(posture) if posture.yarn_at else "",
    )
    return " · ".join(filter(None, parts))


def lie(state: State) -> Posture:
    """Return how the work lies as far as it is still as it was said; the parts that are not known are empty.

    Where the working yarn went along with the hands, it hangs from the place the ledger has it at.
    """
    said = state.ledger.posture
    arranged = laid_last(state)
    if arranged is None:
        return replace(Posture(), yarn_at=_hangs(state))
    later = [step for step, _ in _worked(state, state.order[state.order.index(arranged) + 1 :])]
    if arranged in state.by_turns:
        later = [*later, *(step for step, _ in _worked(state, state.order) if step != arranged)]
    kinds = {state.plan.step(step).do for step in later}
    joined = worked_so(state, arranged) if said.together else None
    if joined is not None:
        kinds -= LOOKED_OVER
    if kinds & PUT_AWAY:
        return replace(Posture(), yarn_at=_hangs(state))
    apart = bool(kinds - WITH_TWO) or (bool(kinds) and _any_sewn(state, later))
    along = bool(kinds & WITH_YARN)
    if joined is not None and not apart:
        said = as_worked(state, joined, said)
    if joined is None or start_end(state, joined) is None:
        along = along or _moved_since_it_was_said(state)
    return Posture(
        facing=_facing(state, said.facing, later),
        together="" if apart else said.together,
        near="" if apart else said.near,
        on_top="" if apart else said.on_top,
        yarn_at=_hangs(state) if along else said.yarn_at,
    )


def worked_so(state: State, laid: int) -> int | None:
    """Return the join or graft that step ``laid`` lays two needles together for; None where something else is next."""
    for step in range(laid + 1, len(state.steps)):
        if state.plan.is_for(step) and state.steps[step].status != "left-out":
            one = state.plan.step(step)
            if isinstance(one, TwoNeedles):
                return step
            if one.do not in LOOKED_OVER:
                return None
    return None


def start_end(state: State, step: int | None) -> End | None:
    """Return the end of the shoulder where a join or graft starts; None where that cannot be known."""
    one = state.plan.step(step) if step is not None else None
    return one.starts_at(state.plan.here(state.ledger)) if isinstance(one, TwoNeedles) else None


def as_worked(state: State, step: int, said: Posture) -> Posture:
    """Return how the work is laid for the join or graft ``step``: as it was ``said``, and what the step knows besides.

    The end where it starts is worked out: yarn that an older recipe lays at the other one is said where it must be.
    """
    one, here, starts = state.plan.step(step), state.plan.here(state.ledger), start_end(state, step)
    assert isinstance(one, TwoNeedles)
    near = said.near or f"the {here.name(one.needles(here)[0])}"
    right = starts is None or (said.yarn_at and only(ENDS, words(said.yarn_at)) in {None, starts})
    at = said.yarn_at if right else f"the {starts}"
    return replace(said, near=near, yarn_at=at)


def layers(state: State, step: int | None) -> tuple[str, ...]:
    """Return what of a join or graft lies further away, and nearer; nothing where no such step is known."""
    one, here = state.plan.step(step) if step is not None else None, state.plan.here(state.ledger)
    if not isinstance(one, TwoNeedles):
        return ()
    front, back = (piece_on(name, here) or here.name(name) for name in one.needles(here))
    return back, front


def _any_sewn(state: State, steps: list[int]) -> bool:
    return any(state.steps[step].status == "done" for step in steps if state.plan.step(step).do in WITH_TWO)


def laid_last(state: State) -> int | None:
    """Return the step that laid the work last; None when none did."""
    found = (step for step in reversed(state.order) if isinstance(state.plan.step(step), Arrange))
    return next((step for step in found if (work := state.steps[step].work) is not None and work.complete), None)


def _moved_since_it_was_said(state: State) -> bool:
    """Return whether the yarn was worked with since the arranging that said where it hangs."""
    for step in reversed(state.order):
        one = state.plan.step(step)
        if isinstance(one, Arrange):
            if one.yarn_at:
                return False
        elif one.do in WITH_YARN and (work := state.steps[step].work) is not None and _done_in(work):
            return True
    return True


def _worked(state: State, order: tuple[int, ...]) -> Iterator[tuple[int, AnyStep]]:
    """Yield the steps of ``order`` in which anything was done."""
    for step in order:
        work = state.steps[step].work
        if work is not None and _done_in(work):
            yield step, state.plan.step(step)


def _done_in(work: StepWork) -> bool:
    return any(progress.mark != Reached() for progress in work.progress)


def _facing(state: State, said: str, later: list[int]) -> str:
    """Return the side that faces: as it was said, or as a step that picks up says; unknown once rows were turned."""
    for step in reversed(later):
        one, work = state.plan.step(step), state.steps[step].work
        if work is not None and ("round", "row") in [(stage.unit, stage.spot) for stage in work.stages]:
            return ""
        if isinstance(one, PickUpAndKnit) and one.facing:
            return one.facing
    return said


def _hangs(state: State) -> str:
    """Return the place that the only working yarn hangs from, in words; empty where there is none, or several.

    In mid join it hangs from the stitch that the last pair left on the third needle, the one that works.
    """
    if len(state.ledger.yarns) != 1:
        return ""
    if state.current is not None and state.plan.step(state.current).do == "join":
        work = state.steps[state.current].work
        if work is not None and _done_in(work) and not work.complete:
            return "the working needle"
    here = state.plan.here(state.ledger)
    return f"the {here.name(state.ledger.yarns[0])}"
