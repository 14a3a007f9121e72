"""Deciding about a key that was held down: what it did so far is one act, and nothing of that lies past a stop."""

from dataclasses import replace

from finishing_tui.garment.commands import Hold
from finishing_tui.garment.events import AnyAct, Event, TakenBack
from finishing_tui.garment.evolve import applied
from finishing_tui.garment.state import State
from finishing_tui.garment.stops import stops


def hold(state: State, command: Hold) -> tuple[Event, ...]:
    """Take back every group of ``command``, and let those up to the first stop stand again as one."""
    back: list[Event] = []
    kept, here = len(command.groups), state
    for at in range(len(command.groups) - 1, -1, -1):
        if stops(here):
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
    first, *others = again
    return (*back, replace(first, under=command.under), *(replace(act, under=None) for act in others))
