"""What each class whose values are stored is called on disk, for ever: apart from what it is called in the code.

A class or a field may be renamed in the code at any time; then its line here keeps the name it is stored under. What is
stored changes only with an upcast from the version before. ``tests/garment/stored_names.txt`` holds the whole of it.
"""

from collections.abc import Mapping
from types import MappingProxyType

from finishing_tui.codec import Stored
from finishing_tui.craft.ledger import (
    HoleEntry,
    Ledger,
    MarkerEntry,
    Posting,
    Posture,
    PostureEntry,
    TailEntry,
    YarnEntry,
)
from finishing_tui.craft.line import Line
from finishing_tui.craft.runs import Run, Runs
from finishing_tui.garment.events import (
    Begun,
    DoneElsewhere,
    Edited,
    Finished,
    LeftOut,
    Marked,
    Mended,
    Mirrored,
    Noted,
    PaceChosen,
    Progressed,
    PutBack,
    PutDown,
    Recounted,
    Replanned,
    RippedBack,
    SittingBegan,
    StepInserted,
    Stood,
    Strayed,
    Taken,
    TakenBack,
    TakenUp,
    Turned,
    Valued,
    Worked,
)
from finishing_tui.garment.labels import Label
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import Note, Sitting, State
from finishing_tui.garment.upcasts import finished_3, ids_of, labels_of, recounted_2, steps_named
from finishing_tui.garment.work import Progress, Reached, Standing, StepWork, Stretch
from finishing_tui.recipe.kinds.arrange import Arrange
from finishing_tui.recipe.kinds.base import RepeatOf
from finishing_tui.recipe.kinds.bind_off import BindOff
from finishing_tui.recipe.kinds.block import Block
from finishing_tui.recipe.kinds.buttonholes import Buttonholes
from finishing_tui.recipe.kinds.cast_on import CastOn
from finishing_tui.recipe.kinds.check import Check
from finishing_tui.recipe.kinds.close_hole import CloseHole
from finishing_tui.recipe.kinds.count import CountStitches
from finishing_tui.recipe.kinds.cut import Cut
from finishing_tui.recipe.kinds.graft import Graft
from finishing_tui.recipe.kinds.join import Join
from finishing_tui.recipe.kinds.mark import Mark as MarkStep
from finishing_tui.recipe.kinds.mark import Unmark
from finishing_tui.recipe.kinds.measure import Measure
from finishing_tui.recipe.kinds.move import Move
from finishing_tui.recipe.kinds.pick_up import PickUp
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.seam import Seam, Side
from finishing_tui.recipe.kinds.sections import Along, Gap, Held
from finishing_tui.recipe.kinds.sew_on import SewOn
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.kinds.short_rows import ShortRows
from finishing_tui.recipe.kinds.weave_in import WeaveIn
from finishing_tui.recipe.kinds.work import Shaping
from finishing_tui.recipe.kinds.work import Work as WorkStep
from finishing_tui.recipe.model import BandGauge, Number, Place, Recipe, RecipeGauge
from finishing_tui.recipe.stage import Flow, Item, Moves, Stage

_AT_STEP = steps_named("step")
_LABEL = labels_of("label")

STORED: Mapping[type, Stored] = MappingProxyType(
    {
        HoleEntry: Stored("HoleEntry"),
        Ledger: Stored("Ledger"),
        MarkerEntry: Stored("MarkerEntry"),
        Posting: Stored("Posting"),
        Posture: Stored("Posture"),
        PostureEntry: Stored("PostureEntry"),
        TailEntry: Stored("TailEntry"),
        YarnEntry: Stored("YarnEntry"),
        Line: Stored("Line"),
        Run: Stored("Run"),
        Runs: Stored("Runs"),
        Begun: Stored("Begun", (_AT_STEP, _LABEL)),
        DoneElsewhere: Stored("DoneElsewhere", (steps_named("steps"), _LABEL)),
        Edited: Stored("Edited", (_AT_STEP,)),
        Finished: Stored("Finished", (_AT_STEP, finished_3)),
        LeftOut: Stored("LeftOut", (_AT_STEP, _LABEL)),
        Marked: Stored("Marked", (_AT_STEP,)),
        Mended: Stored("Mended", (ids_of("how"), _LABEL)),
        Mirrored: Stored("Mirrored", (_AT_STEP, _LABEL)),
        Noted: Stored("Noted", (_AT_STEP,)),
        PaceChosen: Stored("PaceChosen"),
        Progressed: Stored("Progressed", (_AT_STEP,)),
        PutBack: Stored("PutBack"),
        PutDown: Stored("PutDown"),
        Recounted: Stored("Recounted", (recounted_2, _AT_STEP, _LABEL)),
        Replanned: Stored("Replanned", (labels_of("label", "why"),)),
        RippedBack: Stored("RippedBack", (steps_named("step", "fell"), labels_of("label", "to"))),
        SittingBegan: Stored("SittingBegan"),
        StepInserted: Stored("StepInserted", (_LABEL,)),
        Stood: Stored("Stood", (_AT_STEP,)),
        Strayed: Stored("Strayed", (_AT_STEP, _LABEL)),
        Taken: Stored("Taken"),
        TakenBack: Stored("TakenBack", (labels_of("top_label"),)),
        TakenUp: Stored("TakenUp", (_AT_STEP, _LABEL)),
        Turned: Stored("Turned", (steps_named("before", "after"),)),
        Valued: Stored("Valued", (_AT_STEP, _LABEL)),
        Worked: Stored("Worked", (_AT_STEP, _LABEL)),
        Label: Stored("Label"),
        Plan: Stored("Plan"),
        Note: Stored("Note", (_AT_STEP,)),
        Sitting: Stored("Sitting"),
        State: Stored("State", (labels_of("top_label"),)),
        Reached: Stored("Mark"),
        Progress: Stored("Progress"),
        Standing: Stored("Standing", (ids_of("status"),)),
        Stretch: Stored("Stretch"),
        StepWork: Stored("Work"),
        Arrange: Stored("Arrange"),
        RepeatOf: Stored("RepeatOf"),
        BindOff: Stored("BindOff"),
        Block: Stored("Block"),
        Buttonholes: Stored("Buttonholes"),
        CastOn: Stored("CastOn"),
        Check: Stored("Check"),
        CloseHole: Stored("CloseHole"),
        CountStitches: Stored("CountStitches"),
        Cut: Stored("Cut"),
        Graft: Stored("Graft"),
        Join: Stored("Join"),
        MarkStep: Stored("Mark"),
        Unmark: Stored("Unmark"),
        Measure: Stored("Measure"),
        Move: Stored("Move"),
        PickUp: Stored("PickUp"),
        PickUpAndKnit: Stored("PickUpAndKnit"),
        Seam: Stored("Seam"),
        Side: Stored("Side"),
        Along: Stored("Along"),
        Gap: Stored("Gap"),
        Held: Stored("Held"),
        SewOn: Stored("SewOn"),
        Shape: Stored("Shape"),
        ShortRows: Stored("ShortRows"),
        WeaveIn: Stored("WeaveIn"),
        Shaping: Stored("Shaping"),
        WorkStep: Stored("Work"),
        BandGauge: Stored("BandGauge"),
        Number: Stored("Number"),
        Place: Stored("Place"),
        Recipe: Stored("Recipe"),
        RecipeGauge: Stored("RecipeGauge"),
        Flow: Stored("Flow"),
        Item: Stored("Item"),
        Moves: Stored("Moves"),
        Stage: Stored("Stage", (ids_of("act"),)),
    }
)
"""How values of each class are stored. Steps and values that share a name are never read in one place."""
