"""The face of single stitches: knitted across, slipped, counted, bound off."""

from collections.abc import Sequence

from textual.widget import Widget

from finishing_tui.glance.values import StitchFace
from finishing_tui.widgets.edge_strip import LEGEND as EDGE_LEGEND
from finishing_tui.widgets.edge_strip import EdgeStrip
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown
from finishing_tui.widgets.loops import LEGEND, DrawnNeedle, Loops


class Stitches(FaceView[StitchFace]):
    """Single stitches."""

    LEGEND = (*LEGEND, *(part for part in EDGE_LEGEND if part[0] in "╷!"))

    def more(self) -> Sequence[Widget]:
        """Return the stitches, done and to come, and the edge where they are picked up along a pinned one."""
        return (Loops(), EdgeStrip())

    def figures(self, face: StitchFace) -> Shown:
        """Return how many are done, and the word."""
        then = face.said if face.waits else ""
        return Shown(str(face.count), str(face.of), (f"{face.of - face.count} to go",), face.act, "", then)

    def sentences(self, face: StitchFace) -> tuple[tuple[str, str], ...]:
        """Return words for just the next one, and what this is about."""
        said = "" if face.waits else face.said
        return ((said, "bold $mark"), (face.words, "$foreground"), (face.yarn, "$quiet"))

    def show_more(self, face: StitchFace) -> None:
        """Show the stitches, or the edge."""
        needle = DrawnNeedle("", face.count, face.of - face.count)
        self.query_one(Loops).show(() if face.edge else (needle,))
        self.query_one(EdgeStrip).show(face.edge)
