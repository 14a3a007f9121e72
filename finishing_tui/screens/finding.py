"""Finding a line of a long list by its words: one line at the foot of the list that narrows it while it is typed on."""

from typing import ClassVar

from textual.message import Message
from textual.screen import ScreenResultType

from finishing_tui.screens.keys import MOVE, bindings, keys_of, numbers
from finishing_tui.screens.leaving import Leaving
from finishing_tui.widgets.choices import Choices
from finishing_tui.widgets.entry import EntryBox
from finishing_tui.widgets.key_line import KeyLine, ShownKey

NUMBERED = 9
"""So many lines of a list have a digit; in a longer one the others are found by their words."""

LONGEST = 40
"""The most characters that are typed to find a line."""


class FindLine(EntryBox):
    """The words to find."""

    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *bindings(
            "find",
            {"lines.keep": "submit", "lines.leave": "leave", "lines.up": "move(-1)", "lines.down": "move(1)"},
        )
    ]

    class Moved(Message):
        """The caret of the list is to move."""

        def __init__(self, by: int) -> None:
            super().__init__()
            self.by = by

    class Narrowed(Message):
        """Other words are to be found."""

        def __init__(self, text: str) -> None:
            super().__init__()
            self.text = text

    class Taken(Message):
        """The line at the caret is chosen."""

    class Left(Message):
        """The whole list is wanted again."""

    def __init__(self) -> None:
        super().__init__()
        self.placeholder = "type any part of its name"

    def on_input_changed(self, event: EntryBox.Changed) -> None:
        """Tell of the words."""
        event.stop()
        self.post_message(self.Narrowed(event.value))

    def on_input_submitted(self, event: EntryBox.Submitted) -> None:
        """Tell of the choice."""
        event.stop()
        self.post_message(self.Taken())

    def action_move(self, by: int) -> None:
        """Move the caret of the list."""
        self.post_message(self.Moved(by))

    def action_leave(self) -> None:
        """Leave the line."""
        self.post_message(self.Left())


class Finding(Leaving[ScreenResultType]):
    """A screen with a list whose lines can be found by their words; ``action_move`` moves its caret."""

    CHOOSES: ClassVar[str] = "choose"
    """What choosing a line does, in a verb."""

    def action_move(self, by: int) -> None:
        """Move the caret."""
        raise NotImplementedError

    def found(self) -> None:
        """Do what enter does at the caret's line."""
        raise NotImplementedError

    async def action_find(self) -> None:
        """Open the line where the list is long enough, else ring."""
        if self.is_long and not self.query(FindLine):
            await self.find()
        else:
            self.app.bell()

    async def find(self) -> None:
        """Open the line, and let it be typed on."""
        line = FindLine()
        await self.mount(line, after=self.query_one(Choices))
        line.ask("", LONGEST, mark=False)
        self.query_one(Choices).narrow("")
        key = keys_of(self).shown
        moves, leave = (key("lines.up", "lines.down"), "move"), (key("lines.leave"), self.leaves)
        self.query_one(KeyLine).instead(((key("lines.keep"), "choose"), moves, leave))

    def choosing(self) -> list[ShownKey]:
        """Return the keys that choose: the same in every list, enter the line at the caret, a digit its own line."""
        many, take = len(self.query_one(Choices)), keys_of(self).shown("lists.take")
        if many == 1:
            return [(take, f"{self.CHOOSES} it")]
        return [*([(f"{take} {numbers(many)}", self.CHOOSES)] if many else []), *self.finding()]

    def finding(self) -> list[ShownKey]:
        """Return the key that finds a line, where the list is long enough: without it some lines have no key at all."""
        return [(keys_of(self).shown("lists.find"), "find")] if self.is_long else []

    def moving(self) -> list[ShownKey]:
        """Return the keys that move the caret."""
        return [(keys_of(self).shown(*MOVE), "move")] if len(self.query_one(Choices)) > 1 else []

    @property
    def leaves(self) -> str:
        """What leaving the line does, in a word or two."""
        return "show all"

    def on_find_line_narrowed(self, event: FindLine.Narrowed) -> None:
        """Narrow the list to what was typed."""
        self.query_one(Choices).narrow(event.text)

    def on_find_line_taken(self) -> None:
        """Choose the line at the caret, if any is left."""
        if self.query_one(Choices).beside(0) is None:
            self.app.bell()
        else:
            self.close_line()
            self.found()

    def on_find_line_moved(self, event: FindLine.Moved) -> None:
        """Move the caret among the lines that are left."""
        self.action_move(event.by)

    def on_find_line_left(self) -> None:
        """Show the whole list again."""
        self.close_line()

    def close_line(self) -> None:
        """Take the line away; the caret stays where it is."""
        self.query(FindLine).remove()
        self.set_focus(None)
        self.query_one(Choices).narrow(None)
        self.query_one(KeyLine).instead()

    @property
    def is_long(self) -> bool:
        """Whether there are more lines than digits."""
        choices = self.query_one(Choices)
        return choices.display and len(choices) > NUMBERED
