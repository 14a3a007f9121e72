"""The shelf: the garments in hand, and how far each of them is."""

from datetime import UTC
from pathlib import Path
from typing import TYPE_CHECKING, cast

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.screen import Screen

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.shelf import OnShelf, on_shelf, take_copy
from finishing_tui.glance.coming_back import ago
from finishing_tui.screens.asking import KEYS
from finishing_tui.screens.demos import DemoScreen
from finishing_tui.screens.help import HelpScreen
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences

if TYPE_CHECKING:
    from finishing_tui.screens.app import FinishingApp

HELP = (
    ("up down", "move to a garment"),
    ("enter", "pick it up"),
    ("1 to 9", "pick that one up"),
    ("d", "take a demo garment to try things on"),
    ("?", "this help"),
    ("q", "leave; everything is kept"),
)
"""The keys of the shelf."""


class ShelfScreen(Screen[None]):
    """Garments in hand; the one touched last stands first."""

    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *KEYS,
        Binding("d", "demos", show=False, id="shelf.demos"),
        Binding("question_mark", "help", show=False, id="shelf.help"),
        Binding("q", "app.quit", show=False, id="shelf.leave"),
    ]

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self._folder = folder
        self._garments: tuple[OnShelf, ...] = ()

    def compose(self) -> ComposeResult:
        """Lay out the garments under a line about them."""
        with Vertical(classes="head"):
            yield Sentences()
        yield Choices()
        yield Notice()
        yield KeyLine()

    def on_screen_resume(self) -> None:
        """Look at the shelf again, each time this comes to the front."""
        app = cast("FinishingApp", self.app)
        self._garments = on_shelf(self._folder)
        now = app.clock.now().astimezone(UTC)
        choices = []
        for one in self._garments:
            size = f" · size {one.size}" if one.size else ""
            step = f"step {one.step} of {one.steps}, {one.heading}" if one.steps else one.heading
            lines = (one.trouble,) if one.trouble else (step, *_progress(one))
            choices.append(Choice(f"{one.title}{size}", lines, ago(one.touched, now), alarm=bool(one.trouble)))
        many = len(self._garments)
        told = (
            "Nothing is on the shelf yet." if not many else f"{many} {'garment' if many == 1 else 'garments'} in hand"
        )
        hint = "Press d for a demo garment to try things on." if not many else ""
        self.query_one(Sentences).show(("The shelf", "bold $count"), (told, "$quiet"), (hint, "$foreground"))
        self.query_one(Choices).show(choices)
        keys = [("enter", "pick it up"), ("up down", "move")] if many else []
        self.query_one(KeyLine).show([*keys, ("d", "demo garment"), ("q", "leave"), ("?", "help")])

    def action_take(self, number: int | None = None) -> None:
        """Pick a garment up."""
        at = self.query_one(Choices).at if number is None else number
        self.query_one(Notice).show("")
        if at >= len(self._garments):
            self.app.bell()
        elif self._garments[at].trouble:
            self.app.bell()
            self.query_one(Notice).show(self._garments[at].trouble, alarm=True)
        else:
            self._open(self._garments[at].folder)

    def action_move(self, by: int) -> None:
        """Move the caret."""
        self.query_one(Notice).show("")
        self.query_one(Choices).move(by)

    def action_demos(self) -> None:
        """Choose a demo garment."""
        try:
            screen = DemoScreen()
        except FinishingError as error:
            self.app.bell()
            self.query_one(Notice).show(str(error), alarm=True)
            return
        self.app.push_screen(screen, self._taken)

    def action_help(self) -> None:
        """Show the keys."""
        self.app.push_screen(HelpScreen("The shelf", (), HELP))

    def _taken(self, source: Path | None) -> None:
        if source is None:
            return
        try:
            self._open(take_copy(source, self._folder))
        except FinishingError as error:
            self.app.bell()
            self.query_one(Notice).show(str(error), alarm=True)

    def _open(self, folder: Path) -> None:
        from finishing_tui.screens.opening import open_garment  # noqa: PLC0415  (the needles only when they are needed)

        open_garment(cast("FinishingApp", self.app), folder)


def _progress(one: OnShelf) -> tuple[str, ...]:
    """Return a line of signs, one a step done and one a step to come."""
    if not one.steps:
        return ()
    done = one.steps if one.heading == "finished" else one.step - 1
    return ("■" * done + "□" * (one.steps - done),)
