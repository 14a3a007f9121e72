"""The face of a value that is typed: a measure."""

from finishing_tui.glance.values import Face, ValueFace
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown


class Value(FaceView):
    """A value to type."""

    def figures(self, face: Face) -> Shown:
        """Return what was typed, or the word."""
        assert isinstance(face, ValueFace)
        if face.value:
            return Shown(acts=(face.value,), then=face.unit)
        return Shown(acts=(face.act,), then=f"type it, in {face.unit}")

    def sentences(self, face: Face) -> tuple[tuple[str, str], ...]:
        """Return what is measured."""
        assert isinstance(face, ValueFace)
        return ((face.words, "$foreground"),)
