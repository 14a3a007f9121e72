"""Deciding about a key that was held down: what it did so far is one act, and nothing of that lies past a stop."""

from dataclasses import replace

from finishing_tui.garment.commands import Hold
from finishing_tui.garment.events import AnyAct, Event, TakenBack
from finishing_tui.garment.evolve import applied
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import stops


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
