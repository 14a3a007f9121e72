"""Every action at the needles, a file each. To add one: its file, its line here, and its id in ``rooms.NEWER``.

The order is that of the help and of the foot of the screen: what is wanted most first, help last. Keys, footer, help,
plain words and the settings' table of actions are made from this.
"""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.talk.action import Action
from finishing_tui.talk.acts import (
    edge_ends,
    finish,
    first_stitch,
    help,  # noqa: A004  (the name of the action)
    leave_out,
    ledger,
    look_back,
    look_on,
    mirror,
    note,
    numbers,
    other,
    pace,
    palette,
    pins,
    press,
    put_back,
    put_down,
    recount,
    rip_back,
    take_back,
    technique,
    what_if,
)

ACTS: tuple[Action, ...] = (
    press.ACT,
    finish.ACT,
    first_stitch.ACT,
    recount.ACT,
    other.ACT,
    take_back.ACT,
    pins.ACT,
    mirror.ACT,
    put_down.ACT,
    edge_ends.ACT,
    technique.ACT,
    palette.ACT,
    ledger.ACT,
    note.ACT,
    what_if.ACT,
    pace.ACT,
    leave_out.ACT,
    numbers.ACT,
    rip_back.ACT,
    look_back.ACT,
    look_on.ACT,
    put_back.ACT,
    help.ACT,
)
"""All of them."""

BY_ID: Mapping[str, Action] = MappingProxyType({act.id: act for act in ACTS})
"""The same by id."""
