"""``decide``: what follows from a command, worked out once.

It does all the computing and answers with the events to store, or with a refusal in one sentence. It changes nothing
itself: the state it was given is as valid after it as before.
"""

from dataclasses import replace

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
from finishing_tui.garment.decide.held import hold
from finishing_tui.garment.decide.insert import insert_step
from finishing_tui.garment.decide.mend import put_right
from finishing_tui.garment.decide.mirror import choose_mirror, with_mirrors
from finishing_tui.garment.decide.pins import pin_edge
from finishing_tui.garment.decide.press import finish_all, other, press
from finishing_tui.garment.decide.replan import replan
from finishing_tui.garment.decide.rip import rip_back
from finishing_tui.garment.decide.sittings import (
    choose_pace,
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


def decide(state: State, command: Command) -> tuple[Event, ...] | Refusal:
    """Return the events that carry ``command`` out in ``state`` (none, when nothing changes), or why it is refused."""
    try:
        events = _decided(state, command)
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


def _decided(state: State, command: Command) -> tuple[Event, ...] | Refusal:
    match command:
        case Press():
            return press(state)
        case Other():
            return other(state, command)
        case Finish():
            return finish(state, command)
        case FinishAll():
            return finish_all(state)
        case TakeCount():
            return count(state, command)
        case TakeMeasure():
            return measure(state, command)
        case PutRight():
            return put_right(state, command)
        case ChooseMirror():
            return choose_mirror(state, command)
        case PinEdge():
            return pin_edge(state, command)
        case WhatIf():
            return what_if(state, command)
        case TakeOut():
            return rip_back(state, command)
        case TakeUp():
            return take_up(state, command)
        case AlreadyAt():
            return already_at(state, command)
        case LeaveOut():
            return leave_out(state, command)
        case TakeBack():
            return take_back(state, command)
        case PutBackAgain():
            return put_back(state, command)
        case Hold():
            return hold(state, command)
        case ChoosePace():
            return choose_pace(state, command)
        case WriteNote():
            return write_note(state, command)
        case PickUpGarment():
            return pick_up_garment(state)
        case PutGarmentDown():
            return put_garment_down(state, command)
        case InsertStep():
            return insert_step(state, command)
        case Replan():
            return replan(state, command)
