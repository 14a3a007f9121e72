"""The faces of figures and words alone: rounds or rows, a value to type, a message."""

from finishing_tui.glance.values import MessageFace, RoundFace, ValueFace
from finishing_tui.widgets.faces.base import FaceView
from finishing_tui.widgets.figure_pair import Shown

MOODS = {"done": "$good", "to do": "$act", "in the way": "$alarm"}
"""How the word of a message is drawn; what it says and what comes after it tell the same without color."""


class Rounds(FaceView[RoundFace]):
    """Rounds or rows of a band."""

    def figures(self, face: RoundFace) -> Shown:
        """Return the rounds done, and the word."""
        aside = (f"{face.stitches} on the needle",)
        return Shown(str(face.count), str(face.of), aside, face.act, then=f"{face.unit} {face.count + 1}")

    def sentences(self, face: RoundFace) -> tuple[tuple[str, str], ...]:
        """Return what the next one asks for, the next shaped one, and what this is about."""
        now = f"{face.unit} {face.count + 1}: {face.said}" if face.said else ""
        return ((now, "bold $mark"), (face.coming, "$quiet"), (face.words, "$foreground"))


class Value(FaceView[ValueFace]):
    """A value to type."""

    def figures(self, face: ValueFace) -> Shown:
        """Return what was typed, or the word."""
        if face.value:
            return Shown(verb=face.value, then=face.unit)
        return Shown(verb=face.act, then=f"type it, in {face.unit}")

    def sentences(self, face: ValueFace) -> tuple[tuple[str, str], ...]:
        """Return what is measured."""
        return ((face.words, "$foreground"),)


class Message(FaceView[MessageFace]):
    """A word and a sentence."""

    def figures(self, face: MessageFace) -> Shown:
        """Return the word."""
        return Shown(verb=face.act, then=face.then, style=MOODS[face.mood])

    def sentences(self, face: MessageFace) -> tuple[tuple[str, str], ...]:
        """Return the sentence."""
        return ((face.words, "$foreground"),)
