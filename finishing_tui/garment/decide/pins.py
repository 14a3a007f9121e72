"""An edge pinned in equal parts: each has its share of the stitches, each pin is a count, and no row is counted."""

from dataclasses import replace

from finishing_tui.craft.counts import span
from finishing_tui.craft.ledger import EDGE, Entry, brought
from finishing_tui.craft.markers import divide
from finishing_tui.craft.words import plural
from finishing_tui.garment.commands import PinEdge, Refusal
from finishing_tui.garment.decide.stages import begun, going_on, openings, under_way, with_stage
from finishing_tui.garment.events import AnyAct, Recounted, Replanned
from finishing_tui.garment.labels import Label
from finishing_tui.garment.state import State
from finishing_tui.garment.work import Reached, StepWork, fresh
from finishing_tui.recipe.stage import Stage, loops_onto

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
    after = with_stage(work, work.at, pinned(stage, command.parts))
    after = after.with_progress(work.at, fresh(after.stages[work.at]))
    for at in range(work.at + 1, len(work.stages)):
        other = work.stages[at]
        if other.mirrors == stage.title and other.uncounted and other.target == stage.target:
            after = with_stage(after, at, pinned(other, command.parts))
            after = after.with_progress(at, fresh(after.stages[at]))
    label = Label("edge-pinned", names=(stage.title,), numbers=(command.parts,))
    return (Replanned(changes=going_on(state, after), label=label),)


def pinned(stage: Stage, parts: int) -> Stage:
    """Return the edge in ``parts``: counted stitch by stitch, with a halt at every pin but the last."""
    shares = divide(stage.target, parts)
    pins = tuple(sum(shares[:part]) for part in range(1, parts))
    each = " or ".join(str(share) for share in sorted(set(shares)))
    return Stage(
        "stitch",
        stage.target,
        stage.title,
        stage.act,
        f"Pin the edge in {parts} equal parts. Pick up {each} in each, spread evenly between the pins.",
        stage.target,
        stage.place,
        flows=loops_onto(stage.place, 2 * stage.target),
        opening=stage.opening,
        closing=stage.closing,
        halts=pins,
    )


def count_at_pin(state: State, work: StepWork, counted: int) -> tuple[AnyAct, ...] | Refusal:
    """Take a count of a pinned edge: what is one over or under goes into the next part, for the pins stay."""
    step, _ = under_way(state)
    stage, before = work.stages[work.at], work.progress[work.at]
    if counted > stage.units:
        return Refusal(f"{counted:,} is too many for {stage.title}: it takes {stage.units}")
    after = replace(before, mark=Reached(counted, 0, counted), confirmed=(counted, counted))
    # The pin stays where it is on the edge, so what it was to have is what was counted there.
    halts = tuple(counted if pin == before.mark.units else pin for pin in stage.halts)
    in_order = halts == tuple(sorted(set(halts)))
    there = with_stage(work, work.at, replace(stage, halts=halts)) if in_order else work
    entries: tuple[Entry, ...] = brought(stage.place, before.mark.units, counted, EDGE, EDGE)
    if counted == stage.units:
        entries = (*entries, *stage.closing, *openings(work.stages, work.at + 1))
    named = state.plan.ids[step]
    return (
        Recounted(
            step=named,
            place=stage.place,
            counted=counted,
            expected=before.mark.units,
            answer="as-planned" if counted == before.mark.units else "counted",
            entries=entries,
            changes=going_on(state, there.with_progress(work.at, after)),
            what=stage.title,
            label=Label("recounted", names=(stage.title,)),
        ),
    )
