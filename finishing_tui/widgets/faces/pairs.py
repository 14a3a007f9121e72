"""The face of a join: pairs counted up, and both needles running empty side by side."""

from collections.abc import Sequence
from types import MappingProxyType

from textual.widget import Widget

from finishing_tui.glance.values import Face, PairFace
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown
from finishing_tui.widgets.loops import Loops, Needle


class Pairs(FaceView):
    """Pairs of a join."""

    MOST = MappingProxyType({"low": 1, "middling": 3, "high": 4})

    def more(self) -> Sequence[Widget]:
        """Return both needles."""
        return (Loops(),)

    def figures(self, face: Face) -> Shown:
        """Return how many pairs are done, and the word."""
        assert isinstance(face, PairFace)
        return Shown(str(face.count), str(face.of), (f"{face.of - face.count} to go",), (face.act,))

    def sentences(self, face: Face) -> tuple[tuple[str, str], ...]:
        """Return what this is about; and that the needles differ, where they do."""
        assert isinstance(face, PairFace)
        differ = face.front_left - face.back_left
        longer = face.front if differ > 0 else face.back
        uneven = f"The {longer} holds {abs(differ)} more than the other." if differ else ""
        return ((uneven, "bold $alarm"), (face.words, "$foreground"))

    def show_more(self, face: Face) -> None:
        """Show what is left on both needles, the further one above."""
        assert isinstance(face, PairFace)
        back, front = Needle(face.back, 0, face.back_left), Needle(face.front, 0, face.front_left)
        self.query_one(Loops).show((back, front))
