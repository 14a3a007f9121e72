"""One line to write: a note, or where the work was left."""

from textual.app import ComposeResult
from textual.containers import Vertical

from finishing_tui.garment.state import LONGEST_NOTE
from finishing_tui.screens.box import Box
from finishing_tui.screens.keys import bindings, keys_of
from finishing_tui.widgets.entry import EntryBox
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.sentences import Sentences


class OneLine(Box[str | None]):
    """A question answered by a line of text; None when it was left with escape."""

    BINDINGS = [*bindings("line", {"lines.keep": "keep", "lines.leave": "leave"})]  # noqa: RUF012  (Textual's way)

    def __init__(self, question: str, hint: str, *, enter: str, escape: str, value: str = "") -> None:
        """Ask ``question``; ``hint`` stands below it; ``enter`` and ``escape`` say what these keys do.

        ``value``: what stands on the line already.
        """
        super().__init__()
        self._texts = (question, hint)
        self._does = (enter, escape)
        self._value = value

    def compose(self) -> ComposeResult:
        """Lay out the question over the line."""
        with Vertical(classes="box"):
            yield Sentences()
            yield EntryBox()
            yield KeyLine(whole=True)

    def on_mount(self) -> None:
        """Show the keys, and let the line be written at once."""
        question, hint = self._texts
        self.query_one(Sentences).show((question, "bold"), (hint, "$quiet"))
        keys, (keep, leave) = keys_of(self), self._does
        self.query_one(KeyLine).show(((keys.shown("lines.keep"), keep), (keys.shown("lines.leave"), leave)))
        self.query_one(EntryBox).ask(self._value, LONGEST_NOTE, mark=False)

    def on_input_submitted(self, event: EntryBox.Submitted) -> None:
        """Take the line."""
        event.stop()
        self.dismiss("".join(sign for sign in event.value if sign.isprintable()))

    async def action_keep(self) -> None:
        """Take the line, with another key than the one that always does."""
        await self.query_one(EntryBox).action_submit()

    def action_leave(self) -> None:
        """Leave without a line."""
        self.dismiss(None)
