"""``decide``: what follows from a command, worked out once.

It does all the computing and answers with the events to store, or with a refusal in one sentence. It changes nothing
itself: the state it was given is as valid after it as before.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Any

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import (
    AlreadyAt,
    ChooseMirror,
    ChoosePace,
    Command,
    Finish,
    FinishAll,
    Hold,
    InsertStep,
    LeaveOut,
    Other,
    PickUpGarment,
    PinEdge,
    Press,
    PutBackAgain,
    PutGarmentDown,
    PutRight,
    Refusal,
    Replan,
    TakeBack,
    TakeCount,
    TakeMeasure,
    TakeOut,
    TakeUp,
    WhatIf,
    WriteNote,
)
from finishing_tui.garment.decide.altering import what_if
from finishing_tui.garment.decide.count import count, measure
from finishing_tui.garment.decide.elsewhere import already_at
from finishing_tui.garment.decide.mend import put_right
from finishing_tui.garment.decide.mirror import choose_mirror, with_mirrors
from finishing_tui.garment.decide.pins import pin_edge
from finishing_tui.garment.decide.press import finish_all, other, press
from finishing_tui.garment.decide.replan import insert_step, replan
from finishing_tui.garment.decide.rip import rip_back
from finishing_tui.garment.decide.sittings import (
    choose_pace,
    hold,
    pick_up_garment,
    put_back,
    put_garment_down,
    take_back,
    write_note,
)
from finishing_tui.garment.decide.stages import sentence
from finishing_tui.garment.decide.steps import finish, leave_out, take_up
from finishing_tui.garment.events import Act, Event
from finishing_tui.garment.state import State

DECIDES: Mapping[type[Command], Callable[[State, Any], tuple[Event, ...] | Refusal]] = MappingProxyType(
    {
        Press: lambda state, _: press(state),
        Other: other,
        Finish: finish,
        FinishAll: lambda state, _: finish_all(state),
        TakeCount: count,
        TakeMeasure: measure,
        PutRight: put_right,
        ChooseMirror: choose_mirror,
        PinEdge: pin_edge,
        WhatIf: what_if,
        TakeOut: rip_back,
        TakeUp: take_up,
        AlreadyAt: already_at,
        LeaveOut: leave_out,
        TakeBack: take_back,
        PutBackAgain: put_back,
        Hold: hold,
        ChoosePace: choose_pace,
        WriteNote: write_note,
        PickUpGarment: lambda state, _: pick_up_garment(state),
        PutGarmentDown: put_garment_down,
        InsertStep: insert_step,
        Replan: replan,
    }
)
"""What carries each command out."""


def decide(state: State, command: Command) -> tuple[Event, ...] | Refusal:
    """Return the events that carry ``command`` out in ``state`` (none, when nothing changes), or why it is refused."""
    try:
        events = DECIDES[type(command)](state, command)
        if isinstance(events, Refusal):
            return events
        if not isinstance(command, TakeBack | PutBackAgain | Hold | ChooseMirror | WhatIf):
            events = with_mirrors(state, events)
        return _on_top(state, events)
    except FinishingError as error:  # what the books cannot bear, or sums that have no answer
        return Refusal(sentence(error))


def _on_top(state: State, events: tuple[Event, ...]) -> tuple[Event, ...]:
    """Return ``events``, the first of them saying, if it is an act, which group was the latest before."""
    if not events or not isinstance(events[0], Act):
        return events
    return (replace(events[0], under=state.top), *events[1:])
