"""The face of rounds or rows: how many are done, what the next one asks for, the stitches on the needle."""

from finishing_tui.glance.values import Face, RoundFace
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown


class Rounds(FaceView):
    """Rounds or rows of a band."""

    def figures(self, face: Face) -> Shown:
        """Return the rounds done, and the word."""
        assert isinstance(face, RoundFace)
        aside = (f"{face.stitches} on the needle",)
        return Shown(str(face.count), str(face.of), aside, (f"{face.unit} {face.count + 1}",), "is the next")

    def sentences(self, face: Face) -> tuple[tuple[str, str], ...]:
        """Return what the next one asks for, the next shaped one, and what this is about."""
        assert isinstance(face, RoundFace)
        now = f"{face.unit} {face.count + 1}: {face.said}" if face.said else ""
        return ((now, "bold $mark"), (face.coming, "$quiet"), (face.words, "$foreground"))
