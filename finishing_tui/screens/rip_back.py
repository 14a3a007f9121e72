"""Ripping back: to where the work was taken out."""

from dataclasses import replace

from textual.app import ComposeResult
from textual.containers import Vertical

from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import RipBack
from finishing_tui.glance.counting import MOST_DIGITS
from finishing_tui.glance.ripping import RipPoint, rip_points
from finishing_tui.screens.at_hand import AtHand
from finishing_tui.screens.keys import MOVE, TYPED, bindings, digits, keys_of
from finishing_tui.screens.leaving import Leaving
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.figure_pair import FigurePair, Shown
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences


class RipBackScreen(Leaving[None]):
    """Choose where to, and to which row, pair or stitch of it."""

    CSS_PATH = "rip_back.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *digits("digit('{}')"),
        *bindings("rip back", {**TYPED, "lists.leave": "back_or_leave"}),
    ]

    def __init__(self, at_hand: AtHand) -> None:
        super().__init__()
        self._at_hand = at_hand
        self._points = rip_points(at_hand.state)
        self._point: RipPoint | None = None
        self._typed = ""
        self._asked: RipBack | None = None

    def compose(self) -> ComposeResult:
        """Lay out the places over the keys."""
        with Vertical(classes="head"):
            yield Sentences(most={"low": 4, "middling": 5, "high": 8})
        yield FigurePair()
        yield Choices(spaced=False)
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show the places, nearest first."""
        self.query_one(Choices).show([Choice(point.text) for point in self._points])
        self._draw()

    def action_digit(self, sign: str) -> None:
        """Take a digit of the row, or a place by its number."""
        self._quiet()
        if self._point is None:
            number = int(sign) - 1
            if 0 <= number < len(self._points):
                self.query_one(Choices).move(number - self.query_one(Choices).at)
                self.action_take()
            else:
                self.app.bell()
        elif len(self._typed) < MOST_DIGITS:
            self._typed += sign
            self._draw()

    def action_take(self, number: int | None = None) -> None:
        """Take the place, or the row typed, and rip back; what falls with it is named first."""
        del number
        point = self._point or self._points[self.query_one(Choices).at]
        if point.most and self._point is None:
            self._point = point
            self._draw()
            return
        if point.most and not self._typed:
            self.app.bell()
            return
        command = point.to(int(self._typed)) if point.most else point.command
        # The same again, after what falls with it was named, is meant.
        if self._at_hand.do(replace(command, sure=True) if command == self._asked else command):
            self._at_hand.say("taken out; it stays in the record")
            self.dismiss()
            return
        self._asked = command
        self.app.bell()
        self.query_one(Notice).show(self._at_hand.said, alarm=True)

    def action_move(self, by: int) -> None:
        """Move the caret."""
        if self._point is None:
            self._quiet()
            self.query_one(Choices).move(by)

    def action_take_off(self) -> None:
        """Take the last digit back, or the place."""
        self._quiet()
        if self._typed:
            self._typed = self._typed[:-1]
        else:
            self._point = None
        self._draw()

    def action_back_or_leave(self) -> None:
        """Go back to the places, or leave; nothing has changed."""
        if self._point is None:
            self.dismiss()
            return
        self._quiet()
        self._point, self._typed = None, ""
        self._draw()

    def _quiet(self) -> None:
        """Forget what was asked or refused: it was about another place, or another row."""
        self._asked = None
        self.query_one(Notice).show("")

    def _draw(self) -> None:
        asked = "I took it out to ..."
        if self._point is not None:
            asked = sentence(f"{self._point.text}. To which {self._point.unit}, 0 to {self._point.most}?")
        self.query_one(Sentences).show((asked, "bold"), ("What is taken out stays in the record.", "$quiet"))
        self.query_one(Choices).display = self._point is None
        figures = self.query_one(FigurePair)
        figures.display = self._point is not None
        figures.show(Shown(acts=(f"{self._typed}?" if self._typed else "?",), style="$mark"))
        key = keys_of(self).shown
        take, leave = key("lists.take"), key("lists.leave")
        if self._point is None:
            keys = [("1 2 ...", "choose"), (key(*MOVE), "move"), (take, "this one"), (leave, "leave")]
        else:
            keys = [("digits", self._point.unit), (take, "take it"), (leave, "back")]
        self.query_one(KeyLine).show(keys)
