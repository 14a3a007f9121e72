"""Deciding about counts: in a section of an edge, on a place, and of what was done at one go."""

from dataclasses import replace

from finishing_tui.craft.counts import span
from finishing_tui.craft.ledger import OUTSIDE, Entry, brought, inverses
from finishing_tui.garment.commands import Refusal, TakeCount, TakeMeasure
from finishing_tui.garment.decide.after_count import later_stages
from finishing_tui.garment.decide.first_round import mended_first_round
from finishing_tui.garment.decide.mirror import sides_to_come
from finishing_tui.garment.decide.pair_altered import as_long_as
from finishing_tui.garment.decide.stages import begun, going_on, openings, under_way, with_stage, work_on
from finishing_tui.garment.edge_end import carried_on
from finishing_tui.garment.events import AnyAct, Progressed, Recounted, Valued
from finishing_tui.garment.labels import Label
from finishing_tui.garment.recounting import outlook
from finishing_tui.garment.state import State
from finishing_tui.garment.ways import Outlook, Way, counted_stage
from finishing_tui.garment.work import Reached, StepWork
from finishing_tui.recipe.sums import MOST

LONGEST_VALUE = 40
"""The longest text a measure may have."""


def count(state: State, command: TakeCount) -> tuple[AnyAct, ...] | Refusal:
    """Take a count. Where it differs from a section's presses, the command must say what that is put down to."""
    if not 0 <= command.counted <= MOST:
        return Refusal(f"a count cannot be {command.counted:,}: use {span(0, MOST, command.counted)}")
    if not begun(state):
        return Refusal("start the step first, then count")
    _, work = under_way(state)
    if command.place:
        return _place(state, work, command.place, command.counted)
    if counted_stage(work) is not None:
        return _section(state, work, command)
    if work.complete:
        if work.stages and work.stages[-1].counts:  # counted once more, before it is left
            return _place(state, work, work.stages[-1].place, command.counted)
        return Refusal("this step is complete: check it, then finish it")
    stage = work.stages[work.at]
    if stage.counts:
        return _place(state, work, stage.place, command.counted)
    if stage.takes_all:
        if command.counted > stage.units:
            return Refusal(f"{command.counted:,} is too many: there are {stage.units:,}")
        done = Reached(command.counted, 0, command.counted)
        return work_on(state, done, label=Label("many-of-lot", names=(stage.title,), numbers=(command.counted,)))
    if stage.unit == "pair" and not stage.bars:
        return Refusal("which needle did you count: the near one or the far one?")
    if stage.place:
        return _place(state, work, stage.place, command.counted)
    return Refusal("there is nothing to count here")


def measure(state: State, command: TakeMeasure) -> tuple[AnyAct, ...] | Refusal:
    """Write down a measure, where the stage under way asks for one."""
    if not begun(state):
        return Refusal("no measurement is asked for here")
    step, work = under_way(state)
    if work.complete or work.stages[work.at].unit != "value":
        return Refusal("no measurement is asked for here")
    value = command.value.strip()
    if not value or len(value) > LONGEST_VALUE or not value.isprintable():
        return Refusal(f"type what it measures, in {work.stages[work.at].of}, with at most {LONGEST_VALUE} characters")
    before = work.progress[work.at]
    after = replace(before, mark=Reached(1, 0, 1), value=value)
    named = state.plan.ids[step]
    change = Progressed(named, work.at, before, after)
    return (Valued(step=named, value=value, changes=(change,), label=Label("measured")),)


def _section(state: State, work: StepWork, command: TakeCount) -> tuple[AnyAct, ...] | Refusal:
    seen = outlook(state, command.counted, command.answer, command.left)
    if seen.put == "loops" and command.answer is None:
        return Refusal(
            f"you counted {seen.counted}, and the count here is {seen.expected}: say whether you missed a press, "
            "picked up a different number, or lost your row"
        )
    way = next((way for way in seen.ways if way.repair == command.repair), None)
    if len(seen.ways) == 1:
        way = seen.ways[0]
    if way is None:
        there_is = ", ".join(one.repair.replace("-", " ") for one in seen.ways)
        return Refusal(f"that cannot be done here; there is: {there_is}")
    return _carried_out(state, work, seen, way)


def _carried_out(state: State, work: StepWork, seen: Outlook, way: Way) -> tuple[AnyAct, ...] | Refusal:
    """Return the events of a recount: the stage as the way has it, and what that means for what comes after."""
    step, _ = under_way(state)
    index = seen.index
    entries: tuple[Entry, ...] = way.entries
    was_complete = seen.before.mark.units >= work.stages[index].units
    is_complete = way.progress.mark.units >= way.stage.units
    if is_complete and not was_complete:
        entries += (*seen.stage.closing, *openings(work.stages, index + 1))
    elif was_complete and not is_complete:
        # The stages after it were opened but not begun: they close again until this one is complete once more.
        opened = (*seen.stage.closing, *openings(work.stages, index + 1))
        entries = (*inverses(opened), *entries)
    after = with_stage(work, index, way.stage).with_progress(index, way.progress)
    after = as_long_as(after, index, work.stages[index])
    after = (carried_on(after, index, way.carried) if way.carried else None) or after
    state.ledger.enter(*entries)  # refused here, and not when it is entered
    named = state.plan.ids[step]
    marked = (Progressed(named, index, work.progress[index], way.progress),)
    told = Recounted(
        step=named,
        place=seen.stage.place,
        counted=seen.counted,
        expected=seen.expected,
        answer=seen.put,
        verdict=seen.verdict,
        repair=way.repair,
        entries=entries,
        changes=marked if after.stages == work.stages else going_on(state, after),
        what=seen.stage.title,
        label=Label("recounted", names=(seen.stage.title,)),
    )
    if not way.difference:
        return (told,)
    difference = way.difference * sides_to_come(work, index)
    mended = mended_first_round(state, step, seen.stage.place, difference)
    return (told,) if mended is None else (told, mended)


def _place(state: State, work: StepWork, place: str, counted: int) -> tuple[AnyAct, ...] | Refusal:
    """Post the difference between what is on a place and what the ledger says, and plan what is left from there."""
    if place in OUTSIDE or place not in state.plan.recipe.place:
        return Refusal(f"there is no place named {place!r}")
    step, _ = under_way(state)
    held = state.ledger.on(place)
    entries: tuple[Entry, ...] = brought(place, held, counted)
    after = later_stages(state, work, place, entries)
    if not work.complete and work.stages[work.at].counts and work.stages[work.at].place == place:
        units = after.stages[work.at].units
        after = after.with_progress(work.at, replace(after.progress[work.at], mark=Reached(units, 0, counted)))
        entries += (*work.stages[work.at].closing, *openings(work.stages, work.at + 1))
    return (
        Recounted(
            step=state.plan.ids[step],
            place=place,
            counted=counted,
            expected=held,
            answer="as-planned" if counted == held else "counted",
            entries=entries,
            changes=going_on(state, after),
            what=state.plan.recipe.place[place].text,
            label=Label("place-counted", names=(state.plan.recipe.place[place].text,)),
        ),
    )
