"""``decide``: what follows from a command, worked out once.

It does all the computing and answers with the events to store, or with a refusal in one sentence. It changes nothing
itself: the state it was given is as valid after it as before.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Any

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment import commands
from finishing_tui.garment.commands import Command, Refusal
from finishing_tui.garment.decide import sittings
from finishing_tui.garment.decide.altering import what_if
from finishing_tui.garment.decide.count import count, measure
from finishing_tui.garment.decide.elsewhere import already_at
from finishing_tui.garment.decide.mend import put_right
from finishing_tui.garment.decide.mirror import choose_mirror, with_mirrors
from finishing_tui.garment.decide.pins import pin_edge
from finishing_tui.garment.decide.press import finish_all, other, press
from finishing_tui.garment.decide.replan import insert_step, replan
from finishing_tui.garment.decide.rip import rip_back
from finishing_tui.garment.decide.stages import sentence
from finishing_tui.garment.decide.steps import finish, leave_out, take_up
from finishing_tui.garment.events import Act, Event
from finishing_tui.garment.state import State

DECIDES: Mapping[type[Command], Callable[[State, Any], tuple[Event, ...] | Refusal]] = MappingProxyType(
    {
        commands.Press: lambda state, _: press(state),
        commands.Other: other,
        commands.Finish: finish,
        commands.FinishAll: lambda state, _: finish_all(state),
        commands.TakeCount: count,
        commands.TakeMeasure: measure,
        commands.PutRight: put_right,
        commands.ChooseMirror: choose_mirror,
        commands.PinEdge: pin_edge,
        commands.WhatIf: what_if,
        commands.TakeOut: rip_back,
        commands.TakeUp: take_up,
        commands.AlreadyAt: already_at,
        commands.LeaveOut: leave_out,
        commands.TakeBack: sittings.take_back,
        commands.PutBackAgain: sittings.put_back,
        commands.Hold: sittings.hold,
        commands.ChoosePace: sittings.choose_pace,
        commands.WriteNote: sittings.write_note,
        commands.PickUpGarment: lambda state, _: sittings.pick_up_garment(state),
        commands.PutGarmentDown: sittings.put_garment_down,
        commands.InsertStep: insert_step,
        commands.Replan: replan,
    }
)
"""What carries each command out."""

_AS_THEY_SAY = (commands.TakeBack, commands.PutBackAgain, commands.Hold, commands.ChooseMirror, commands.WhatIf)
"""Commands that say themselves how the sections that mirror another are to be."""


def decide(state: State, command: Command) -> tuple[Event, ...] | Refusal:
    """Return the events that carry ``command`` out in ``state`` (none, when nothing changes), or why it is refused."""
    try:
        events = DECIDES[type(command)](state, command)
        if isinstance(events, Refusal):
            return events
        if not isinstance(command, _AS_THEY_SAY):
            events = with_mirrors(state, events)
        return _on_top(state, events)
    except FinishingError as error:  # what the books cannot bear, or sums that have no answer
        return Refusal(sentence(error))


def _on_top(state: State, events: tuple[Event, ...]) -> tuple[Event, ...]:
    """Return ``events``, the first of them saying, if it is an act, which group was the latest before."""
    if not events or not isinstance(events[0], Act):
        return events
    return (replace(events[0], under=state.top), *events[1:])
