"""An edge pinned in equal parts: each has its share of the stitches, each pin is a count, and no row is counted."""

from finishing_tui.craft.counts import span
from finishing_tui.craft.words import plural
from finishing_tui.garment.commands import PinEdge, Refusal
from finishing_tui.garment.decide.stages import begun, going_on, under_way, with_stage
from finishing_tui.garment.events import AnyAct, Replanned
from finishing_tui.garment.labels import Label
from finishing_tui.garment.pinned import pinned
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Reached, fresh
from finishing_tui.recipe.stage import Stage

FEWEST = 2
"""The fewest parts there are."""


def can_be_pinned(state: State) -> Stage | None:
    """Return the edge that is about to be picked up, if nobody counted it and its stitches are printed."""
    if not begun(state):
        return None
    _, work = under_way(state)
    if work.complete or work.progress[work.at].mark != Reached():
        return None
    stage = work.stages[work.at]
    return stage if stage.uncounted == "spots" and stage.target >= 2 * FEWEST else None


def pin_edge(state: State, command: PinEdge) -> tuple[AnyAct, ...] | Refusal:
    """Pin the edge about to be picked up, and the one that mirrors it: the same shares, the other way round."""
    stage = can_be_pinned(state)
    if stage is None:
        return Refusal("an edge is pinned before its first stitch, where nobody counted its rows")
    most = stage.target // 2
    if not FEWEST <= command.parts <= most:
        return Refusal(f"{plural(stage.target, 'stitch')} in {command.parts} parts: use {span(FEWEST, most)} parts")
    _, work = under_way(state)
    after = with_stage(work, work.at, pinned(stage, command.parts, stage.target))
    after = after.with_progress(work.at, fresh(after.stages[work.at]))
    for at in range(work.at + 1, len(work.stages)):
        other = work.stages[at]
        if other.mirrors == stage.title and other.uncounted and other.target == stage.target:
            after = with_stage(after, at, pinned(other, command.parts, other.target, mirrored=True))
            after = after.with_progress(at, fresh(after.stages[at]))
    label = Label("edge-pinned", names=(stage.title,), numbers=(command.parts,))
    return (Replanned(changes=going_on(state, after), label=label),)
