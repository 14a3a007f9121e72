"""What every screen with a list has: the arrows move the caret, and ring where there is nothing more that way."""

from textual.screen import ScreenResultType

from finishing_tui.screens.leaving import Leaving
from finishing_tui.widgets.choices import Choices
from finishing_tui.widgets.notice import Notice


class Listed(Leaving[ScreenResultType]):
    """A screen with a list; ``move_to`` shows the caret at another line."""

    def action_move(self, by: int) -> None:
        """Move the caret."""
        self.quiet()
        choices = self.query_one(Choices)
        if 0 <= choices.at + by < len(choices):
            self.move_to(choices.at + by)
        else:
            self.app.bell()

    def move_to(self, at: int) -> None:
        """Show the caret at a line."""
        choices = self.query_one(Choices)
        choices.move(at - choices.at)

    def quiet(self) -> None:
        """Say nothing any more: what was said was about another line."""
        for notice in self.query(Notice):
            notice.show("")
