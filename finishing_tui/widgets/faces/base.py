"""What all faces have in common: figures and words above, and below them what belongs to this unit alone."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import ClassVar, Generic, TypeVar

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.widget import Widget

from finishing_tui.glance.values import Face
from finishing_tui.widgets.figure_pair import FigurePair, Shown
from finishing_tui.widgets.sentences import Sentences

F = TypeVar("F", bound=Face)


@dataclass(frozen=True, slots=True)
class Typed:
    """Digits typed so far, and what they would mean, in words."""

    digits: str
    meaning: str


class FaceView(Vertical, Generic[F]):
    """What shows a face of the type ``F``: a subclass says what its figures are, and has widgets for the rest."""

    MOST: ClassVar[Mapping[str, int]] = MappingProxyType({"low": 4, "middling": 3, "high": 4})
    """Lines of sentences there is room for; help shows all of them."""

    LEGEND: ClassVar[tuple[str, ...]] = ()
    """What the signs of its drawing mean."""

    def __init__(self) -> None:
        super().__init__()
        self._shown: tuple[F, Typed | None, int, str] | None = None

    def compose(self) -> ComposeResult:
        """Lay out the figures, the sentences, and what else the face has."""
        yield FigurePair()
        yield Sentences(most=self.MOST)
        yield from self.more()

    def more(self) -> Sequence[Widget]:
        """Return what stands below the figures and sentences."""
        return ()

    def show(self, face: F, typed: Typed | None = None, digits: int = 0, help_key: str = "?") -> None:
        """Show ``face``; digits being typed take the place of the word.

        ``digits``: of the largest number this garment comes to; ``help_key``: the key that shows all the sentences.
        """
        self._shown = (face, typed, digits, help_key)
        if self.is_mounted:
            self._show(face, typed, digits, help_key)

    def on_mount(self) -> None:
        """Show what was to be shown before this was here."""
        if self._shown is not None:
            self._show(*self._shown)

    def _show(self, face: F, typed: Typed | None, digits: int, help_key: str) -> None:
        shown = self.figures(face)
        if typed is not None:
            shown = replace(shown, verb=typed.digits, first="typed", then=typed.meaning, style="$mark")
        self.query_one(FigurePair).show(shown, digits)
        self.query_one(Sentences).show(*self.sentences(face), help_key=help_key)
        self.show_more(face)

    def figures(self, face: F) -> Shown:
        """Return the figures and words of ``face``."""
        raise NotImplementedError

    def sentences(self, face: F) -> tuple[tuple[str, str], ...]:
        """Return the sentences under the figures, each with its style."""
        raise NotImplementedError

    def show_more(self, face: F) -> None:
        """Show what stands below."""
