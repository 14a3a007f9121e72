"""What each class whose values are stored is called on disk, for ever, and in which version it is written.

A class is stored under the name it has in the code, and so is a field, unless its line here says otherwise: either may
be renamed at any time, and its line then keeps the name it is stored under. What is stored changes only with an upcast
from the version before. ``tests/garment/stored_names.txt`` holds the whole of it.
"""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.codec import Stored
from finishing_tui.garment import events
from finishing_tui.garment.state import Note, State
from finishing_tui.garment.upcasts import finished_3, ids_of, labels_of, recounted_2, steps_named
from finishing_tui.garment.work import Reached, Standing, StepWork
from finishing_tui.recipe.annotations import models
from finishing_tui.recipe.stage import Stage

_AT_STEP = steps_named("step")
_LABEL = labels_of("label")

OTHERWISE: Mapping[type, Stored] = MappingProxyType(
    {
        events.Begun: Stored("Begun", (_AT_STEP, _LABEL)),
        events.DoneElsewhere: Stored("DoneElsewhere", (steps_named("steps"), _LABEL)),
        events.Edited: Stored("Edited", (_AT_STEP,)),
        events.Finished: Stored("Finished", (_AT_STEP, finished_3)),
        events.LeftOut: Stored("LeftOut", (_AT_STEP, _LABEL)),
        events.Marked: Stored("Marked", (_AT_STEP,)),
        events.Mended: Stored("Mended", (ids_of("how"), _LABEL)),
        events.Mirrored: Stored("Mirrored", (_AT_STEP, _LABEL)),
        events.Noted: Stored("Noted", (_AT_STEP,)),
        events.Progressed: Stored("Progressed", (_AT_STEP,)),
        events.Recounted: Stored("Recounted", (recounted_2, _AT_STEP, _LABEL)),
        events.Replanned: Stored("Replanned", (labels_of("label", "why"),)),
        events.RippedBack: Stored("RippedBack", (steps_named("step", "fell"), labels_of("label", "to"))),
        events.StepInserted: Stored("StepInserted", (_LABEL,)),
        events.Stood: Stored("Stood", (_AT_STEP,)),
        events.Strayed: Stored("Strayed", (_AT_STEP, _LABEL)),
        events.TakenBack: Stored("TakenBack", (labels_of("top_label"),)),
        events.TakenUp: Stored("TakenUp", (_AT_STEP, _LABEL)),
        events.Turned: Stored("Turned", (steps_named("before", "after"),)),
        events.Valued: Stored("Valued", (_AT_STEP, _LABEL)),
        events.Worked: Stored("Worked", (_AT_STEP, _LABEL)),
        Note: Stored("Note", (_AT_STEP,)),
        Reached: Stored("Mark"),
        Stage: Stored("Stage", (ids_of("act"),)),
        Standing: Stored("Standing", (ids_of("status"),)),
        State: Stored("State", (labels_of("top_label"),)),
        StepWork: Stored("Work"),
    }
)
"""The classes that have another name on disk than in the code, or were stored in another way before."""

STORED: Mapping[type, Stored] = MappingProxyType(
    {cls: OTHERWISE.get(cls, Stored(cls.__name__)) for cls in models(events.Event, State)}
)
"""How values of each class are stored. Steps and values that share a name are never read in one place."""
