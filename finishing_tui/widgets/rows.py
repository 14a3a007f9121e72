"""The widget that everything here stands on: rows of text, of which only those that changed are drawn again."""

from collections.abc import Callable, Sequence
from itertools import zip_longest

from rich.segment import Segment
from textual.content import Content
from textual.events import Resize
from textual.geometry import Region, Size
from textual.markup import parse_style
from textual.strip import Strip
from textual.style import Style
from textual.widget import Widget

from finishing_tui.letters import in_ascii

TALLNESS = ("low", "middling", "high", "tall")
"""The heights of a screen, as the classes that stand for them say (with a dash before)."""


_NOTHING = Content()


class Rows(Widget):
    """Rows of inert text. A subclass says in ``rows`` what they are, and calls ``redraw`` when that changed."""

    DEFAULT_CSS = "Rows { height: auto; }"

    def __init__(self, *, id: str | None = None, classes: str | None = None) -> None:  # noqa: A002  (Textual's name)
        super().__init__(id=id, classes=classes)
        self._drawn: Sequence[Content] = ()
        self._drawn_for = Size()
        self._asked_for = 0  # so many rows were asked for when this was last laid out
        self._tall = ""
        self._styles = _Styles({})

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the rows for this width; ``height`` is the room there is, None when as many as are needed."""
        raise NotImplementedError

    def redraw(self) -> None:
        """Draw the rows again that are not as they were; lay out anew only when their number changed and matters."""
        self._forget_heights()
        width = self.size.width
        if not width:
            self.refresh(layout=True)
            return
        before, self._drawn = self._drawn, self._rows_now()
        changed = [
            Region(0, y, width, 1)
            for y, (was, now) in enumerate(zip_longest(before, self._drawn, fillvalue=_NOTHING))
            if was is not now and (was.plain != now.plain or was.spans != now.spans)
        ]
        if changed:
            self.refresh(*changed)

    @property
    def ascii(self) -> bool:
        """Whether only signs of ASCII may be drawn."""
        return self.app.has_class("-ascii")

    @property
    def tallness(self) -> str:
        """How high the screen is: low, middling, high or tall.

        It goes by the limits that give the screen its classes, and not by these: a screen has them only after it was
        laid out once, and would be laid out for another height.
        """
        height, limits = self.app.size.height, self.app.VERTICAL_BREAKPOINTS or []
        name = "middling"
        for least, limit in limits:
            if least <= height and limit[1:] in TALLNESS:
                name = limit[1:]
        return name

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """Return as many lines as there are rows."""
        del container, viewport
        self._asked_for = len(self.rows(width, None))
        return self._asked_for

    def render_line(self, y: int) -> Strip:
        """Return one row as the terminal shows it."""
        base, only_ascii = self.visual_style, self.ascii
        row = self._drawn[y] if y < len(self._drawn) else _NOTHING
        segments = [
            Segment(in_ascii(text) if only_ascii else text, style.rich_style)
            for text, style in row.render(base, end="", parse_style=self._styled())
            if text
        ]
        return Strip(segments, row.cell_length).adjust_cell_length(self.size.width, base.rich_style)

    def on_mount(self) -> None:
        """Hear when the screen was laid out: where only the padding differs, no resize comes."""
        self.screen.screen_layout_refresh_signal.subscribe(self, self._laid_out)

    def on_resize(self, _: Resize) -> None:
        """Fit the rows to the new size."""
        self._drawn = self._rows_now()
        self.refresh()

    def _laid_out(self, _: object) -> None:
        if self.size != self._drawn_for:
            self._drawn = self._rows_now()
            self.refresh()

    def notify_style_update(self) -> None:
        """On a screen of another height ask for the room anew."""
        super().notify_style_update()
        if self.is_mounted and self._tall != (tall := self.tallness):
            self._tall = tall
            self._forget_heights()
            self.refresh(layout=True)

    def _forget_heights(self) -> None:
        """Have it asked anew how many rows there are, whenever the screen is laid out next.

        Textual keeps the answers, for as long as this count is the same; it counts no second request to lay out while
        the first is under way, and would go on with the answer from before.
        """
        self._layout_updates += 1

    def _rows_now(self) -> Sequence[Content]:
        self._drawn_for = self.size
        width, height = self.size
        if not width:
            return ()
        if self.styles.is_auto_height:
            rows = self.rows(width, None)
            if len(rows) != self._asked_for:  # what was laid out is not what there is to show by now
                self.refresh(layout=True)
            if len(rows) <= height:
                return rows
        return self.rows(width, height) if height else ()

    def _styled(self) -> Callable[[str | Style], Style]:
        """Return what makes a style of what is written for it, in the colours of the theme that is in force."""
        if self._styles.variables is not (variables := self.app.theme_variables):
            self._styles = _Styles(variables)
        return self._styles.__getitem__


class _Styles(dict[str | Style, Style]):
    """Styles as they are written, and what they are with the ``variables`` of a theme: each is read once."""

    def __init__(self, variables: dict[str, str]) -> None:
        super().__init__()
        self.variables = variables

    def __missing__(self, name: str | Style) -> Style:
        style = name if isinstance(name, Style) else parse_style(name, self.variables)
        self[name] = style
        return style
