"""Deciding about repairs: what a knitter chose to do about a difference. The choice is an event."""

from dataclasses import replace

from finishing_tui.craft.ledger import EDGE, OFF, OUTSIDE, brought
from finishing_tui.garment.commands import PutRight, Refusal
from finishing_tui.garment.decide.after_count import later_stages
from finishing_tui.garment.decide.first_round import mended_first_round
from finishing_tui.garment.decide.respacing import respaced
from finishing_tui.garment.decide.stages import begun, going_on, under_way
from finishing_tui.garment.events import AnyAct, Edited, Mended, Replanned, Stood
from finishing_tui.garment.labels import Deed, Label
from finishing_tui.garment.state import State
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.sums import MOST


def put_right(state: State, command: PutRight) -> tuple[AnyAct, ...] | Refusal:
    """Carry a repair out: here and now, in a step to come, in a first round, or not at all."""
    match command.how:
        case "here":
            return _here(state, command)
        case "re-space":
            return _respace(state, command)
        case "first-round":
            return _first_round(state, command)
        case "as-it-is":
            label = Label("kept-as-it-is")
            return (Mended(place=command.place, how="as-it-is", difference=0, label=label),)


def _here(state: State, command: PutRight) -> tuple[AnyAct, ...] | Refusal:
    place, more = command.place, command.difference
    if place in OUTSIDE or place not in state.plan.recipe.place or not more:
        return Refusal("there is nothing to fix there")
    if state.ledger.on(place) + more > MOST:
        return Refusal(f"a place holds up to {MOST:,} stitches")
    held = state.ledger.on(place)
    entries = brought(place, held, held + more, EDGE, OFF)
    state.ledger.enter(*entries)  # refused here, and not when it is entered
    changes: tuple[Stood, ...] = ()
    if begun(state):
        _, work = under_way(state)
        changes = going_on(state, later_stages(state, work, place, entries))
    did: Deed = "stitches-made" if more > 0 else "stitches-worked-off"
    return (
        Mended(
            place=place,
            how="here",
            difference=more,
            entries=entries,
            changes=changes,
            label=Label(did, names=(state.plan.recipe.place[place].text,), numbers=(abs(more),)),
        ),
    )


def _respace(state: State, command: PutRight) -> tuple[AnyAct, ...] | Refusal:
    index = command.step
    if index is None or not 0 <= index < len(state.steps) or state.steps[index].status != "to-come":
        return Refusal("only a step you haven't started can be re-spaced")
    step = state.plan.step(index)
    if not isinstance(step, PickUpAndKnit):
        return Refusal(f"step {index + 1} picks up nothing to re-space")
    found = respaced(step, command.difference, state.plan.here(state.ledger))
    if found is None:
        return Refusal(f"no section of step {index + 1} can take {command.difference:+d}")
    changed, sections = found
    named = state.plan.ids[index]
    numbers = tuple(number for one in sections for number in (one.now, one.was))
    why = Label("sections-re-spaced", (named,), tuple(one.title for one in sections), numbers)
    label = Label("re-spaced", (named,))
    return (Replanned(edits=(Edited(named, step, changed),), why=why, label=label),)


def _first_round(state: State, command: PutRight) -> tuple[AnyAct, ...] | Refusal:
    if not 0 < abs(command.difference) <= MOST or not 0 <= (command.step or 0) < len(state.steps):
        return Refusal("there is no such difference, or no such step, to fix")
    after = (command.step if command.step is not None else 0) - 1
    mended = mended_first_round(state, after, command.place, command.difference)
    if mended is None:
        return Refusal("no later step works rounds there")
    why = Label("to-first-round", (mended.edits[0].step,), numbers=(command.difference,))
    return (replace(mended, why=why, label=Label("first-round-changed")),)
