"""Sentences, each wrapped, one under the other."""

from collections.abc import Sequence

from textual.content import Content

from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows


class Sentences(Rows):
    """Sentences in the order of what matters now."""

    def __init__(self, *, id: str | None = None) -> None:  # noqa: A002  (Textual's name)
        super().__init__(id=id or "sentences")
        self._sentences: tuple[tuple[str, str], ...] = ()

    def show(self, *sentences: tuple[str, str]) -> None:
        """Show (sentence, style) pairs; empty sentences are left out."""
        sentences = tuple(one for one in sentences if one[0])
        if sentences != self._sentences:
            self._sentences = sentences
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the sentences, each wrapped."""
        lines = [line for text, style in self._sentences for line in wrapped(plain(text, style), width)]
        return lines if height is None else lines[:height]
