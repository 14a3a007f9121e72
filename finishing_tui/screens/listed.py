"""What every screen with a list has: the arrows move the caret, and ring where there is nothing more that way."""

from textual.screen import ScreenResultType

from finishing_tui.screens.finding import Finding
from finishing_tui.widgets.choices import Choices
from finishing_tui.widgets.notice import Notice


class Listed(Finding[ScreenResultType]):
    """A screen with a list; ``move_to`` shows the caret at another line, ``action_take`` chooses it."""

    def action_move(self, by: int) -> None:
        """Move the caret."""
        self.quiet()
        at = self.query_one(Choices).beside(by)
        if at is None:
            self.app.bell()
        else:
            self.move_to(at)

    def action_take(self) -> None:
        """Choose the line at the caret."""
        raise NotImplementedError

    def found(self) -> None:
        """Choose it."""
        self.move_to(self.query_one(Choices).at)
        self.action_take()

    def move_to(self, at: int) -> None:
        """Show the caret at a line."""
        choices = self.query_one(Choices)
        choices.move(at - choices.at)

    def quiet(self) -> None:
        """Say nothing any more: what was said was about another line."""
        for notice in self.query(Notice):
            notice.show("")
