"""Everything that can be done now: found by its words, and done by enter."""

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import Vertical

from finishing_tui.screens.keys import LISTS, bindings
from finishing_tui.screens.listed import Listed
from finishing_tui.screens.program import program
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.sentences import Sentences


class PaletteScreen(Listed[int | None]):
    """Returns which entry was chosen, counted from 0, or None; the words are typed at once."""

    BINDINGS = [*bindings("palette", {**LISTS, "lists.leave": "leave"})]  # noqa: RUF012  (Textual's way)

    def __init__(self, question: str, entries: Sequence[Choice]) -> None:
        """Show what may be done."""
        super().__init__()
        self._question = question
        self._entries = entries

    def compose(self) -> ComposeResult:
        """Lay out the list over the line."""
        with Vertical(classes="head"):
            yield Sentences()
        yield Choices(spaced=False, numbered=False)
        yield KeyLine()

    async def on_mount(self) -> None:
        """Show everything, and let words be typed."""
        program(self).speak(self._question)
        self.query_one(Sentences).show((self._question, "bold $count"))
        self.query_one(Choices).show(self._entries)
        await self.find()

    def action_take(self) -> None:
        """Do what the caret is at."""
        self.dismiss(self.query_one(Choices).at)

    def action_leave(self) -> None:
        """Do nothing."""
        self.dismiss(None)

    def on_find_line_left(self) -> None:
        """Leave with the line."""
        self.dismiss(None)

    @property
    def leaves(self) -> str:
        """What leaving the line does."""
        return "leave"
