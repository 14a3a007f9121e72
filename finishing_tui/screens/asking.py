"""A question with a few answers, each with its key."""

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.screen import ModalScreen

from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.sentences import Sentences

KEYS = (
    *(Binding(str(number), f"take({number - 1})", show=False) for number in range(1, 10)),
    Binding("up", "move(-1)", show=False),
    Binding("down", "move(1)", show=False),
    Binding("enter", "take", show=False),
)
"""The keys of every list: numbers take, arrows move, enter takes what the caret is at."""

ROOM = {"low": 7, "middling": 9, "high": 12}
"""Lines of the question there is room for above its answers."""


class Asking(ModalScreen[int | None]):
    """A question; it returns which answer was taken, counted from 0, or None when it was left."""

    BINDINGS = [*KEYS, Binding("escape", "leave", show=False)]  # noqa: RUF012  (Textual's way)

    def __init__(self, question: str, answers: Sequence[Choice], lines: Sequence[str] = ()) -> None:
        """``lines``: what the question is about, one thing each."""
        super().__init__()
        self._question = question
        self._lines = lines
        self._answers = answers

    def compose(self) -> ComposeResult:
        """Lay out the question over its answers."""
        with Vertical(classes="box"):
            yield Sentences(most=ROOM)
            yield Choices(spaced=False)
            yield KeyLine()

    def on_mount(self) -> None:
        """Show the answers."""
        lines = ((f"· {line}", "$foreground") for line in self._lines)
        self.query_one(Sentences).show((self._question, "bold"), *lines)
        self.query_one(Choices).show(self._answers)
        self.query_one(KeyLine).show((("enter", "takes it"), ("1 2 ...", "choose"), ("escape", "leave")))

    def action_take(self, number: int | None = None) -> None:
        """Take an answer: by its number, or the one the caret is at."""
        at = self.query_one(Choices).at if number is None else number
        if at < len(self._answers):
            self.dismiss(at)
        else:
            self.app.bell()

    def action_move(self, by: int) -> None:
        """Move the caret."""
        self.query_one(Choices).move(by)

    def action_leave(self) -> None:
        """Leave without an answer."""
        self.dismiss(None)
