"""Help: every key that does something now, and how to do this step, in all its words."""

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.content import Content

from finishing_tui.glance.lying import Picture
from finishing_tui.glance.values import WordLine
from finishing_tui.screens.keys import bindings
from finishing_tui.screens.keys_shown import KeyGroup
from finishing_tui.screens.page import PAGE, PageScreen
from finishing_tui.widgets.plain import packed, plain, wrapped
from finishing_tui.widgets.rows import Rows
from finishing_tui.widgets.step_words import picture_rows


class Page(Rows):
    """A title, the keys under their headings, the words of a step, how the work lies, and what the shapes mean."""

    def __init__(
        self, title: str, lines: Sequence[WordLine], keys: Sequence[KeyGroup], legend: Sequence[str], picture: Picture
    ) -> None:
        super().__init__()
        self._picture = picture
        self._title = title
        self._texts = lines
        self._groups = keys
        self._legend = legend

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the page, wrapped."""
        del height
        width = min(width, 90)
        found = wrapped(plain(self._title, "bold $count"), width)
        wide = max((len(key) for _, keys in self._groups for key, _ in keys), default=0) + 2
        for heading, keys in self._groups:
            found += [Content(), plain(heading, "bold $act")]
            for key, what in keys:
                text = wrapped(plain(what), width - wide)
                found.append(plain(key.ljust(wide), "bold $count") + text[0])
                found += [Content(" " * wide) + rest for rest in text[1:]]
        for line in self._texts:
            found.append(Content())
            if line.heading:
                found.append(plain(line.heading, "bold $alarm" if line.heading == "take care" else "bold $act"))
            found += wrapped(plain(line.text), width)
        if self._picture.lines:
            found += [Content(), plain(self._picture.heading, "bold $act"), *picture_rows(self._picture, width)]
        if self._legend:
            found += [Content(), plain("what the signs mean", "bold $act"), *packed(self._legend, width)]
        return found


class HelpScreen(PageScreen):
    """All there is to know about the screen below: its keys first, then its words."""

    BINDINGS = [*bindings("help", {**PAGE, "needles.help": "leave"})]  # noqa: RUF012  (Textual's way)

    def __init__(
        self,
        title: str,
        lines: Sequence[WordLine],
        keys: Sequence[KeyGroup],
        *,
        legend: Sequence[str] = (),
        picture: Picture | None = None,
    ) -> None:
        """Show a ``title``, ``keys`` with what they do under their headings, and the words of a step.

        ``legend``: what the signs of the drawing mean; ``picture``: how the work lies.
        """
        super().__init__()
        self._page = Page(title, lines, keys, legend, picture or Picture())

    def text(self) -> ComposeResult:
        """Lay out everything in one column."""
        yield self._page
