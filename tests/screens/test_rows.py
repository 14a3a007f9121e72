"""The rows that every widget stands on: as high as what they hold, whatever comes in between."""

from collections.abc import Sequence

from textual.app import App, ComposeResult
from textual.containers import Vertical
from textual.content import Content

from finishing_tui.widgets.rows import Rows


class Lines(Rows):
    """So many lines as it is told; each says how wide it is."""

    def __init__(self) -> None:
        super().__init__()
        self.many = 1

    def show(self, many: int) -> None:
        """Show so many lines."""
        self.many = many
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the lines."""
        del height
        return [Content(f"{line} is {width} wide") for line in range(self.many)]


class Page(App[None]):
    """Lines in a box whose padding a class takes away."""

    CSS = "Vertical { padding: 0 3; } .-bare { padding: 0; } .-padded { padding: 0 1; }"

    def compose(self) -> ComposeResult:
        """Lay them out."""
        with Vertical():
            yield Lines()

    @property
    def lines(self) -> Lines:
        """The lines."""
        return self.query_one(Lines)

    def seen(self) -> list[str]:
        """Return what is on the screen, without its empty end."""
        rows = [strip.text.strip() for strip in self.screen._compositor.render_strips()]  # noqa: SLF001
        return [row for row in rows if row]


async def test_rows_said_while_the_screen_is_laid_out_for_those_before_get_their_room() -> None:
    """A layout is asked for, and comes with the old rows before it was counted as done; the new rows ask again."""
    app = Page()
    async with app.run_test(size=(30, 8)) as pilot:
        app.lines.refresh(layout=True)
        app.screen._refresh_layout()  # noqa: SLF001  (as on a busy machine: before the request was taken off)
        app.lines.show(3)
        await pilot.pause()
        assert app.lines.size.height == 3
        assert app.seen() == ["0 is 24 wide", "1 is 24 wide", "2 is 24 wide"]
        app.lines.refresh(layout=True)
        app.screen._refresh_layout()  # noqa: SLF001
        app.lines.show(1)
        await pilot.pause()
        assert app.lines.size.height == 1


async def test_rows_said_before_they_are_there_get_their_room() -> None:
    """They are laid out among the others already, but were not told yet that they are there."""
    app = Page()
    async with app.run_test(size=(30, 8)) as pilot:
        lines = Lines()
        app.query_one(Vertical).mount(lines)
        app.screen._refresh_layout()  # noqa: SLF001  (as for another's sake)
        assert not lines.is_mounted
        lines.show(4)
        await pilot.pause()
        assert lines.size.height == 4
        assert len(app.seen()) == 1 + 4


async def test_rows_fit_a_width_that_came_without_a_resize() -> None:
    """Padding that goes leaves its region as it was, so no resize is told of; the rows are fitted all the same."""
    app = Page()
    async with app.run_test(size=(30, 8)) as pilot:
        app.lines.add_class("-padded")
        await pilot.pause()
        assert app.seen() == ["0 is 22 wide"]
        app.lines.remove_class("-padded")
        await pilot.pause()
        assert app.seen() == ["0 is 24 wide"]
        app.query_one(Vertical).add_class("-bare")
        await pilot.pause()
        assert app.seen() == ["0 is 30 wide"]
