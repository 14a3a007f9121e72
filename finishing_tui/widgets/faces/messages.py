"""The face when there is nothing to count: a word to read from two metres, and a sentence."""

from finishing_tui.glance.values import Face, MessageFace
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown


class Message(FaceView):
    """A word and a sentence."""

    def figures(self, face: Face) -> Shown:
        """Return the word."""
        assert isinstance(face, MessageFace)
        return Shown(acts=(face.act,), style="$good" if face.good else "$alarm")

    def sentences(self, face: Face) -> tuple[tuple[str, str], ...]:
        """Return the sentence."""
        assert isinstance(face, MessageFace)
        return ((face.words, "$foreground"),)
