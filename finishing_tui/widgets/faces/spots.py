"""The face of picking up along an edge: loops counted up, and the edge itself."""

from collections.abc import Sequence

from textual.widget import Widget

from finishing_tui.glance.values import SpotFace
from finishing_tui.widgets.edge_strip import LEGEND, EdgeStrip
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown


class Spots(FaceView[SpotFace]):
    """Picking up along an edge."""

    LEGEND = LEGEND

    def more(self) -> Sequence[Widget]:
        """Return the edge."""
        return (EdgeStrip(),)

    def figures(self, face: SpotFace) -> Shown:
        """Return the loops, the target, where on the edge, and what to do next."""
        where = f"{face.unit} {face.spot} of {face.spots}"
        if face.waits:
            return Shown(str(face.count), str(face.target), (where,), "COUNT", "", face.halfway)
        return Shown(str(face.count), str(face.target), (where,), face.act, *face.flags)

    def sentences(self, face: SpotFace) -> tuple[tuple[str, str], ...]:
        """Return the rhythm, and the recount where it does not stand under the word."""
        if face.waits:
            return ((face.rhythm, "$foreground"),)
        halfway = (face.halfway, "bold $alarm" if face.due else "$quiet")
        rhythm = (face.rhythm, "$foreground")
        return (halfway, rhythm) if face.due else (rhythm, halfway)

    def show_more(self, face: SpotFace) -> None:
        """Show the edge."""
        self.query_one(EdgeStrip).show(face.edge, face.ahead)
