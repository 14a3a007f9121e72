"""Help: how this step is done, in all its words, and every key with what it does."""

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.content import Content

from finishing_tui.glance.lying import Picture
from finishing_tui.glance.values import WordLine
from finishing_tui.screens.keys import bindings
from finishing_tui.screens.page import PAGE, PageScreen
from finishing_tui.widgets.edge_strip import LEGEND
from finishing_tui.widgets.key_line import ShownKey
from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows
from finishing_tui.widgets.step_words import picture_rows


class Page(Rows):
    """A title, the words of a step under their headings, the keys, and what the shapes mean."""

    def __init__(
        self, title: str, lines: Sequence[WordLine], keys: Sequence[ShownKey], legend: str, picture: Picture
    ) -> None:
        super().__init__()
        self._picture = picture
        self._title = title
        self._texts = lines
        self._table = keys
        self._legend = legend

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the page, wrapped."""
        del height
        width = min(width, 90)
        found = wrapped(plain(self._title, "bold $count"), width)
        for line in self._texts:
            found.append(Content())
            if line.heading:
                found.append(plain(line.heading, "bold $alarm" if line.heading == "take care" else "bold $act"))
            found += wrapped(plain(line.text), width)
        if self._picture.lines:
            found += [Content(), plain(self._picture.heading, "bold $act"), *picture_rows(self._picture, width)]
        found += [Content(), plain("keys", "bold $act")]
        wide = max(len(key) for key, _ in self._table) + 2
        for key, what in self._table:
            text = wrapped(plain(what), width - wide)
            found.append(plain(key.ljust(wide), "bold $count") + text[0])
            found += [Content(" " * wide) + rest for rest in text[1:]]
        if self._legend:
            found += [Content(), plain("the edge", "bold $act"), *wrapped(plain(self._legend), width)]
        return found


class HelpScreen(PageScreen):
    """All the words there are about what is on the screen below."""

    BINDINGS = [*bindings("help", {**PAGE, "needles.help": "leave"})]  # noqa: RUF012  (Textual's way)

    def __init__(
        self,
        title: str,
        lines: Sequence[WordLine],
        keys: Sequence[ShownKey],
        *,
        shapes: bool = False,
        picture: Picture | None = None,
    ) -> None:
        """Show a ``title``, the words of a step, and all ``keys`` with what they do.

        ``shapes``: those of the edge too; ``picture``: how the work lies.
        """
        super().__init__()
        self._page = Page(title, lines, keys, LEGEND if shapes else "", picture or Picture())

    def text(self) -> ComposeResult:
        """Lay out everything in one column."""
        yield self._page
