"""Help: how this step is done, in all its words, and every key with what it does."""

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static

from finishing_tui.glance.values import Line
from finishing_tui.widgets.edge_strip import LEGEND
from finishing_tui.widgets.key_line import Key, KeyLine
from finishing_tui.widgets.looks import in_ascii
from finishing_tui.widgets.plain import plain


class HelpScreen(Screen[None]):
    """All the words there are about what is on the screen below."""

    CSS_PATH = "help.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *(Binding(key, "leave", show=False) for key in ("escape", "enter", "space", "q", "question_mark")),
        Binding("up", "scroll(-1)", show=False),
        Binding("down", "scroll(1)", show=False),
        Binding("left", "scroll(-10)", show=False),
        Binding("right", "scroll(10)", show=False),
    ]

    def __init__(self, title: str, lines: Sequence[Line], keys: Sequence[Key], *, shapes: bool = False) -> None:
        """Show a ``title``, the words of a step, and all ``keys`` with what they do; ``shapes`` of the edge too."""
        super().__init__()
        self._head = title
        self._lines = lines
        self._all = keys
        self._shapes = shapes

    def compose(self) -> ComposeResult:
        """Lay out everything in one column that can be scrolled."""
        with VerticalScroll(id="page", can_focus=False):
            yield Static(plain(self._head, "bold $count"))
            for line in self._lines:
                style = "bold $alarm" if line.heading == "take care" else "bold $act"
                head = plain(f"{line.heading}\n" if line.heading else "", style) if line.heading else Content()
                yield Static(head + plain(line.text), classes="words")
            yield Static(self._keys(), classes="words")
            if self._shapes:
                legend = in_ascii(LEGEND) if self.app.has_class("-ascii") else LEGEND
                yield Static(plain(legend, "$quiet"), classes="words")
        yield KeyLine()

    def on_mount(self) -> None:
        """Show how to scroll and leave."""
        self.query_one(KeyLine).show((("up down left right", "scroll"), ("escape", "back")))

    def action_scroll(self, by: int) -> None:
        """Scroll by so many lines."""
        self.query_one("#page").scroll_relative(y=by, animate=False)

    def action_leave(self) -> None:
        """Go back."""
        self.dismiss()

    def _keys(self) -> Content:
        wide = max(len(key) for key, _ in self._all) + 3
        rows = [plain("keys\n", "bold $act")]
        rows += [plain(key.ljust(wide), "bold $count") + plain(f"{what}\n") for key, what in self._all]
        return Content.assemble(*rows)
