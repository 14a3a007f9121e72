"""The face of single stitches: knitted across, slipped, counted, bound off."""

from collections.abc import Sequence

from textual.widget import Widget

from finishing_tui.glance.values import StitchFace
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown
from finishing_tui.widgets.loops import LEGEND, DrawnNeedle, Loops


class Stitches(FaceView[StitchFace]):
    """Single stitches."""

    LEGEND = LEGEND

    def more(self) -> Sequence[Widget]:
        """Return the stitches, done and to come."""
        return (Loops(),)

    def figures(self, face: StitchFace) -> Shown:
        """Return how many are done, and the word."""
        return Shown(str(face.count), str(face.of), (f"{face.of - face.count} to go",), face.act)

    def sentences(self, face: StitchFace) -> tuple[tuple[str, str], ...]:
        """Return words for just the next one, and what this is about."""
        return ((face.said, "bold $mark"), (face.words, "$foreground"), (face.yarn, "$quiet"))

    def show_more(self, face: StitchFace) -> None:
        """Show the stitches."""
        self.query_one(Loops).show((DrawnNeedle("", face.count, face.of - face.count),))
