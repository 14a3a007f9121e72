"""What follows when a section goes another way: its step in the plan, and the section that is a pair with it."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from finishing_tui.craft.spacing import say, space
from finishing_tui.garment.commands import WhatIf
from finishing_tui.garment.decide.stages import with_stage
from finishing_tui.garment.edge_length import as_long
from finishing_tui.garment.events import Edited
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Reached, StepWork, fresh
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along, Section
from finishing_tui.recipe.stage import Stage


def step_altered(state: State, step: int, stage: Stage, command: WhatIf) -> Edited | None:
    """Return the step of the plan with the section as it is asked for, and as many stitches in the one it mirrors."""
    old = state.plan.step(step)
    if not isinstance(old, PickUpAndKnit):
        return None
    sections = list(old.section)
    at = next((at for at, one in enumerate(sections) if isinstance(one, Along) and one.along == stage.title), None)
    if at is None:
        return None
    section = sections[at]
    assert isinstance(section, Along)
    target = None if stage.uncounted == "all" else stage.target
    section = replace(section, stitches=target, style=command.style or section.style)
    if stage.uncounted and command.rhythm is not None:
        section = replace(section, ratio=str(stage.rate))
    sections[at] = section if command.spots is None else replace(section, spots=command.spots, slope="", length="")
    for one, partner in _partners(sections, at):
        if state.steps[step].work is not None and not _begun(state, step, partner.along):
            sections[one] = replace(partner, stitches=target)
    return Edited(state.plan.ids[step], old, replace(old, section=tuple(sections)))


def _partners(sections: Sequence[Section], at: int) -> Iterator[tuple[int, Along]]:
    """Yield the sections that are a pair with the one at ``at``."""
    here = sections[at]
    assert isinstance(here, Along)
    for index, one in enumerate(sections):
        if isinstance(one, Along) and index != at and (one.mirrors == here.along or here.mirrors == one.along):
            yield index, one


def _begun(state: State, step: int, title: str) -> bool:
    work = state.steps[step].work
    return work is not None and any(
        one.title == title and progress.mark != Reached()
        for one, progress in zip(work.stages, work.progress, strict=True)
    )


def as_long_as(work: StepWork, index: int, was: Stage) -> StepWork:
    """Return the work with the section that mirrors the one at ``index`` as long as that one really is; ``was``: that.

    It keeps its stitches, so that the sum stands until the knitter says otherwise.
    """
    stage = work.stages[index]
    for at in twins(work, was, stage):
        other = work.stages[at]
        new = as_long(other.as_planned or other, stage.units)
        work = with_stage(work, at, new).with_progress(at, fresh(new))
    return work


def twins(work: StepWork, was: Stage, stage: Stage) -> tuple[int, ...]:
    """Return the sections to come that mirror one which turns out as long as ``stage``, planned as long as it ``was``.

    None where it is as long as planned, or nobody counted it: those follow it anyway, once it is done.
    """
    if was.uncounted or stage.uncounted or was.units == stage.units:
        return ()
    return tuple(
        at
        for at, (one, progress) in enumerate(zip(work.stages, work.progress, strict=True))
        if one.mirrors == was.title and progress.mark == Reached() and _printed(one) == was.units
    )


def _printed(stage: Stage) -> int | None:
    """Return the spots a section was planned with; None where nobody counted it."""
    begun = stage.as_planned or stage
    return None if begun.uncounted else begun.units


def pair_altered(work: StepWork, index: int) -> StepWork:
    """Return the work with the section that mirrors the one at ``index``, if it is to come, planned the same way."""
    stage = work.stages[index]
    for at in range(index + 1, len(work.stages)):
        other = work.stages[at]
        if other.mirrors != stage.title or other.as_worked:
            continue
        if other.uncounted:
            other = replace(other, units=stage.units, uncounted=stage.uncounted, natural=stage.natural)
        if stage.rhythm is not None and other.units == stage.units and stage.rhythm.stitches == stage.target:
            rhythm = stage.rhythm.mirrored()
        else:
            rhythm = space(max(1, min(stage.target, 2 * other.units)), other.units, style=stage.style)
        new = replace(other, rhythm=rhythm, target=rhythm.stitches, words=say(rhythm, unit=other.spot))
        work = with_stage(work, at, new).with_progress(at, fresh(new))
    return work
