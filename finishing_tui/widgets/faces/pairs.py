"""The face of a join: pairs counted up, and both needles running empty side by side."""

from collections.abc import Sequence
from types import MappingProxyType

from textual.widget import Widget

from finishing_tui.glance.values import PairFace
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown
from finishing_tui.widgets.loops import LEGEND, DrawnNeedle, Loops
from finishing_tui.widgets.moves import MoveLines


class Pairs(FaceView[PairFace]):
    """Pairs of a join."""

    LEGEND = LEGEND
    MOST = MappingProxyType({"low": 4, "middling": 3, "high": 4})

    def more(self) -> Sequence[Widget]:
        """Return the moves of a pair, and both needles."""
        return (MoveLines(), Loops())

    def figures(self, face: PairFace) -> Shown:
        """Return how many pairs are done, and the word."""
        return Shown(str(face.count), str(face.of), (f"{face.of - face.count} to go",), face.act)

    def sentences(self, face: PairFace) -> tuple[tuple[str, str], ...]:
        """Return words for just the next pair, that the needles differ, where they do, and what this is about.

        Where a pair is several moves, these are what it is about.
        """
        differ = face.front_left - face.back_left
        longer = face.front if differ > 0 else face.back
        often = "once" if abs(differ) == 1 else f"{abs(differ)} times"
        uneven = f"The {longer} holds {abs(differ)} more: work two together there {often}." if differ else ""
        if face.sewn and differ:
            bars = "bar" if abs(differ) == 1 else "bars"
            uneven = f"The {longer} has {abs(differ)} {bars} more: take two at a time where it says so."
        about = "" if face.moves else face.words
        told = ((face.said, "bold $mark"), (uneven, "$quiet" if face.sewn else "bold $alarm"), (about, "$foreground"))
        return (*told, (face.yarn, "$quiet"))

    def show_more(self, face: PairFace) -> None:
        """Show the moves of the next pair, and what is left on both needles, the further one above."""
        self.query_one(MoveLines).show(face.moves)
        self.set_class(bool(face.moves), "-moves")
        sides = (face.back, face.back_left), (face.front, face.front_left)
        back, front = (DrawnNeedle(name, 0, left, bare=face.sewn) for name, left in sides)
        self.query_one(Loops).show((back, front))
