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
        if face.waits:
            return Shown(str(face.count), face.wanted, (face.where,), "COUNT", "", face.halfway)
        return Shown(str(face.count), face.wanted, (face.where,), face.act, *face.flags)

    def sentences(self, face: SpotFace) -> tuple[tuple[str, str], ...]:
        """Return the rhythm, and the recount where it does not stand under the word."""
        rhythm = (" · ".join(part for part in (face.rhythm, face.to_go) if part), "$foreground")
        if face.waits:
            return (rhythm,)
        halfway = (face.halfway, "bold $alarm" if face.due else "$quiet")
        return (halfway, rhythm) if face.due else (rhythm, halfway)

    def show_more(self, face: SpotFace) -> None:
        """Show the edge."""
        self.query_one(EdgeStrip).show(face.edge, face.ahead)
