"""The demo garments to choose from; a copy of the chosen one goes on the shelf, so that nothing here can be spoilt."""

from pathlib import Path

from textual.app import ComposeResult
from textual.containers import Vertical

from finishing_tui import shipped
from finishing_tui.screens.keys import LONG_LISTS, NUMBERS, bindings, keys_of
from finishing_tui.screens.listed import Listed
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.sentences import Sentences


class DemoScreen(Listed[Path | None]):
    """Choose one; returns its folder, or None."""

    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *NUMBERS,
        *bindings("demos", {**LONG_LISTS, "lists.leave": "leave", "lists.close": "leave"}),
    ]

    def __init__(self) -> None:
        """Look for the demo garments; raises ``NotShipped`` when the install lacks them, and ``BadGarment``."""
        from finishing_tui.garment.file import read_garment  # noqa: PLC0415  (the reader: only for this screen)

        super().__init__()
        self._folders = tuple(shipped.demos().values())
        garments = [read_garment(folder)[0] for folder in self._folders]
        self._choices = [
            Choice(f"{one.title} · size {one.size}", (one.about,) if one.about else ()) for one in garments
        ]

    def compose(self) -> ComposeResult:
        """Lay out the garments."""
        with Vertical(classes="head"):
            yield Sentences()
        yield Choices()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show them."""
        told = "You get a copy; you can't break anything." if self._folders else "None comes with this program."
        self.query_one(Sentences).show(("Demo garments", "bold $count"), (told, "$quiet"))
        self.query_one(Choices).show(self._choices)
        key = keys_of(self).shown
        self.query_one(KeyLine).show([*self.choosing(), *self.moving(), (key("lists.leave"), "back")])

    def action_take(self, number: int | None = None) -> None:
        """Take one."""
        at = self.query_one(Choices).at if number is None else number
        if at < len(self._folders):
            self.dismiss(self._folders[at])
        else:
            self.app.bell()

    def action_leave(self) -> None:
        """Go to the shelf."""
        self.dismiss(None)
