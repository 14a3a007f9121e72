"""Deciding about what is not work: sittings, notes, the pace, taking back and putting back.

What a key that was held down did so far is one act, and nothing of that lies past a stop.
"""

from dataclasses import replace

from finishing_tui.garment.commands import ChoosePace, Hold, PutBackAgain, PutGarmentDown, Refusal, TakeBack, WriteNote
from finishing_tui.garment.events import AnyAct, Event, Noted, PaceChosen, PutBack, PutDown, SittingBegan, TakenBack
from finishing_tui.garment.evolve import applied
from finishing_tui.garment.state import LONGEST_NOTE, MOST_KEPT, State
from finishing_tui.garment.stops import stops


def pick_up_garment(state: State) -> tuple[Event, ...] | Refusal:
    """Begin a sitting."""
    if len(state.sittings) >= MOST_KEPT:
        return Refusal(f"this garment was picked up {MOST_KEPT:,} times, and no more can be kept")
    return (SittingBegan(len(state.sittings) + 1),)


def put_garment_down(state: State, command: PutGarmentDown) -> tuple[Event, ...] | Refusal:
    """End the sitting, with what the knitter wrote about where she left it."""
    if not state.sittings or state.sittings[-1].ended:
        return Refusal("the garment is put down already")
    where = command.where.strip()
    if len(where) > LONGEST_NOTE or not where.isprintable():
        return Refusal(f"a note has at most {LONGEST_NOTE} characters, on one line")
    return (PutDown(where),)


def write_note(state: State, command: WriteNote) -> tuple[Event, ...] | Refusal:
    """Write a note at the step under way."""
    text = command.text.strip()
    if not text or len(text) > LONGEST_NOTE or not text.isprintable():
        return Refusal(f"a note has 1 to {LONGEST_NOTE} characters, on one line")
    if len(state.notes) >= MOST_KEPT:
        return Refusal(f"this garment has {MOST_KEPT:,} notes, and no more can be kept")
    at = None if state.current is None else state.plan.ids[state.current]
    return (Noted(text, at),)


def choose_pace(state: State, command: ChoosePace) -> tuple[Event, ...] | Refusal:
    """Let a press stand for something else."""
    return () if command.pace == state.pace else (PaceChosen(command.pace),)


def take_back(state: State, command: TakeBack) -> tuple[Event, ...] | Refusal:
    """Take the latest standing group back: the inverses of what happened in it, last first."""
    if not state.top:
        return Refusal("nothing is left to take back")
    if len(state.undone) >= MOST_KEPT:
        return Refusal(f"{MOST_KEPT:,} acts are taken back; to go back further, rip back")
    if command.group != state.top:
        raise ValueError(f"group {command.group} is not the latest standing one, {state.top}")
    inverses = tuple(act.inverse() for act in reversed(command.acts))
    return (TakenBack(command.group, inverses, command.top, command.top_label),)


def put_back(state: State, command: PutBackAgain) -> tuple[Event, ...] | Refusal:
    """Let the group that was taken back last stand again, just as it was."""
    if not state.undone:
        return Refusal("nothing was taken back that could be put back")
    if command.group != state.undone[-1]:
        raise ValueError(f"group {command.group} is not the one taken back last, {state.undone[-1]}")
    return (PutBack(command.group, command.acts),)


def hold(state: State, command: Hold) -> tuple[Event, ...]:
    """Take back every group of ``command``, and let those stand again as one that it says, or up to the first stop."""
    back: list[Event] = []
    kept, here = len(command.groups) if command.most is None else command.most, state
    for at in range(len(command.groups) - 1, -1, -1):
        if command.most is None and stops(here):
            kept = at + 1
        group, acts = command.groups[at]
        inverses = tuple(act.inverse() for act in reversed(acts))
        under, label = command.under, command.under_label
        if at:
            under, before = command.groups[at - 1]
            label = before[0].label
        back.append(TakenBack(group, inverses, under, label))
        here = applied(here, inverses)
    again: list[AnyAct] = [act for _, acts in command.groups[:kept] for act in acts]
    unders = (command.under, *[None] * len(again))
    return (*back, *(replace(act, under=under) for act, under in zip(again, unders, strict=False)))
