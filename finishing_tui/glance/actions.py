"""Every action at the needles, with its id, its usual key and its help: the one place they are named.

``offers`` says which of them may be done now and what they would do; keys, footer, help and palette all read this.
"""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

ActionId = Literal[
    "press",
    "other",
    "take_back",
    "finish",
    "recount",
    "rip_back",
    "what_if",
    "put_back",
    "pace",
    "mirror",
    "numbers",
    "note",
    "look_back",
    "look_on",
    "leave_out",
    "technique",
    "ledger",
    "help",
    "put_down",
]
"""The ids of the actions; they are what a settings file names."""


@dataclass(frozen=True, slots=True)
class Action:
    """``key``: the usual key, as Textual names keys; ``shown``: the key as people read it; ``help``: what it does."""

    id: ActionId
    key: str
    shown: str
    help: str


_ALL = (
    Action("press", "space", "space", "the next thing is done"),
    Action("other", "x", "x", "the other thing was done than the plan says"),
    Action("mirror", "m", "m", "the second side goes as the first was worked, or as planned"),
    Action(
        "finish", "enter", "enter", "this step is done; after digits: the count is that; on another step: take it up"
    ),
    Action("take_back", "backspace", "backspace", "takes the last thing back, or the last digit typed"),
    Action("recount", "r", "r", "recount now"),
    Action("what_if", "w", "w", "what if: another target, rows, rhythm or rounds; nothing changes until you take it"),
    Action("put_back", "u", "u", "puts back what was taken back"),
    Action("put_down", "q", "q", "put it down; it warns if something is not saved"),
    Action("rip_back", "t", "t", "I took it out to an earlier place"),
    Action("numbers", "e", "e", "the numbers of this garment: change one, and see first what that changes"),
    Action("note", "n", "n", "write a note"),
    Action("pace", "p", "p", "a press stands for a loop, a spot, or a run"),
    Action("technique", "h", "h", "how the hands do it: the techniques of this step, with drawings"),
    Action("ledger", "l", "l", "the ledger: where every stitch, tail, marker and hole is, and what was entered last"),
    Action("leave_out", "o", "o", "leave this step out"),
    Action("look_back", "left", "left", "look at the step before"),
    Action("look_on", "right", "right", "look at the step after"),
    Action("help", "question_mark", "?", "this help"),
)

ACTIONS: MappingProxyType[ActionId, Action] = MappingProxyType({action.id: action for action in _ALL})
"""The actions by id, in the order of the help and of the foot of the screen: what is wanted most first, help last."""
