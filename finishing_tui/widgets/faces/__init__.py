"""One face for each unit a press can stand for; it fills the middle of the screen."""

from typing import Any

from finishing_tui.glance.values import (
    Face,
    ItemFace,
    MessageFace,
    PairFace,
    RoundFace,
    SpotFace,
    StitchFace,
    ValueFace,
)
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.faces.figures import Message, Rounds, Value
from finishing_tui.widgets.faces.items import Items
from finishing_tui.widgets.faces.pairs import Pairs
from finishing_tui.widgets.faces.spots import Spots
from finishing_tui.widgets.faces.stitches import Stitches

VIEWS: dict[type[Face], type[FaceView[Any]]] = {
    SpotFace: Spots,
    StitchFace: Stitches,
    PairFace: Pairs,
    RoundFace: Rounds,
    ItemFace: Items,
    ValueFace: Value,
    MessageFace: Message,
}
"""The widget that shows each face."""

__all__ = ["VIEWS", "FaceView"]
