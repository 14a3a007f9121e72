"""Chapters of a text that is read: headings that stand out, and the words under them."""

from collections.abc import Iterator, Sequence

from textual.content import Content

from finishing_tui.glance.reading import Chapter
from finishing_tui.widgets.pages import WIDEST
from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows


class Chapters(Rows):
    """Chapters, one under the other; a title over them where there is one."""

    def __init__(self) -> None:
        super().__init__()
        self._title = ("", "")
        self._chapters: tuple[Chapter, ...] = ()

    def show(self, chapters: Sequence[Chapter], title: str = "", aside: str = "") -> None:
        """Show ``chapters``; ``aside`` stands under the title."""
        self._title, self._chapters = (title, aside), tuple(chapters)
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return everything, wrapped."""
        del height
        return list(self._all(min(width, WIDEST)))

    def _all(self, width: int) -> Iterator[Content]:
        for text, style in zip(self._title, ("bold $count", "$quiet"), strict=True):
            if text:
                yield from wrapped(plain(text, style), width)
        for chapter in self._chapters:
            yield Content()
            yield from wrapped(plain(chapter.heading, "bold $act"), width)
            for line in chapter.lines:
                style = "bold $alarm" if line.heading == "take care" else "bold $quiet"
                head = plain(f"{line.heading}: ", style) if line.heading else Content()
                yield from (Content("  ") + one for one in wrapped(head + plain(line.text), width - 2))
