"""All there is to see of a garment right now, as plain frozen values.

The screens, the line-by-line mode and speech show these values and nothing else. Nothing here draws, reads a clock
or a file, or changes anything.
"""

from finishing_tui.glance.coming_back import ComingBack, coming_back
from finishing_tui.glance.glancing import glance, look_at
from finishing_tui.glance.recounts import RecountView, recount_view
from finishing_tui.glance.ripping import RipPoint, rip_points
from finishing_tui.glance.values import (
    Edge,
    Face,
    Glance,
    Holding,
    ItemFace,
    MessageFace,
    PairFace,
    RoundFace,
    SpotFace,
    SpotSort,
    StepLine,
    StitchFace,
    ValueFace,
    WordLine,
)

__all__ = [
    "ComingBack",
    "Edge",
    "Face",
    "Glance",
    "Holding",
    "ItemFace",
    "MessageFace",
    "PairFace",
    "RecountView",
    "RipPoint",
    "RoundFace",
    "SpotFace",
    "SpotSort",
    "StepLine",
    "StitchFace",
    "ValueFace",
    "WordLine",
    "coming_back",
    "glance",
    "look_at",
    "recount_view",
    "rip_points",
]
