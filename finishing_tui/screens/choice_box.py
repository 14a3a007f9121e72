"""A question with a few answers, each with its key."""

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.events import Key, Resize

from finishing_tui.craft.words import plural
from finishing_tui.glance.spoken import spoken_question
from finishing_tui.screens.box import Box
from finishing_tui.screens.keys import LISTS, MOVE, NUMBERS, bindings, is_alive, keys_of, numbers
from finishing_tui.screens.program import program
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.sentences import Sentences

MARKS = 2
"""Rows that say that there are more answers above and below the ones shown."""


class ChoiceBox(Box[int | None]):
    """A question; it returns which answer was taken, counted from 0, or None when it was left.

    A digit chooses its answer at once, unless they are not ``numbered``: then what is chosen could not be had back.
    """

    BINDINGS = [*NUMBERS, *bindings("question", {**LISTS, "lists.leave": "leave"})]  # noqa: RUF012  (Textual's way)

    def __init__(
        self,
        question: str,
        answers: Sequence[Choice],
        lines: Sequence[str] = (),
        *,
        unasked: bool = False,
        numbered: bool = True,
    ) -> None:
        """``lines``: what the question is about, one thing each; ``unasked``: it comes by itself."""
        super().__init__()
        self.unasked = self if unasked else None
        self._numbered = numbered
        self._question = question
        self._lines = lines
        self._answers = answers

    def compose(self) -> ComposeResult:
        """Lay out the question over its answers."""
        with Vertical(classes="box"):
            yield Sentences()
            yield Choices(spaced=False, numbered=self._numbered)
            yield KeyLine(whole=True)

    def on_mount(self) -> None:
        """Show the answers, and have them spoken."""
        program(self).speak(spoken_question(self._question, [one.text for one in self._answers]))
        self._tell(len(self._lines))
        self.query_one(Choices).show(self._answers)
        key = keys_of(self).shown
        take, move = key("lists.take"), [] if self._numbered else [(key(*MOVE), "move")]
        if len(self._answers) == 1:
            choose = (take, "choose it")
        else:
            choose = (f"{take} {numbers(len(self._answers))}" if self._numbered else take, "choose")
        self.query_one(KeyLine).show([choose, *move, (key("lists.leave"), "leave")])

    def on_resize(self, _: Resize) -> None:
        """Fit the box to the screen, once it is known how wide it is."""
        self.call_after_refresh(self._fit)

    def on_key(self, event: Key) -> None:
        """Ring for a key that does nothing here; those that do something come by here too."""
        if not is_alive(self, event.key):
            self.app.bell()

    def action_take(self, number: int | None = None) -> None:
        """Choose an answer, the one the caret is at or by its digit."""
        at = self.query_one(Choices).at if number is None else number
        if at >= len(self._answers) or (number is not None and not self._numbered):
            self.app.bell()
        else:
            self.dismiss(at)

    def action_move(self, by: int) -> None:
        """Move the caret."""
        choices = self.query_one(Choices)
        if 0 <= choices.at + by < len(self._answers):
            choices.move(by)
        else:
            self.app.bell()

    def action_leave(self) -> None:
        """Leave without an answer."""
        self.dismiss(None)

    def _fit(self) -> None:
        """Share the rows of the screen out: the keys whole, the answer at the caret whole, then what it is about."""
        box, choices = self.query_one(".box", Vertical), self.query_one(Choices)
        keys, told = self.query_one(KeyLine), self.query_one(Sentences)
        width = box.content_size.width
        room = self.size.height - box.gutter.height - choices.gutter.height
        room -= len(keys.rows(width, None)) + keys.gutter.height
        wanted = len(choices.rows(width, None))
        fewest = _tall(self._told(min(len(self._lines), 1)), width)
        high = max(min(wanted, room - fewest), min(wanted, choices.tallest(width) + MARKS))
        many = len(self._lines)
        while many and _tall(self._told(many), width) > room - high:
            many -= 1
        choices.styles.max_height = high + choices.gutter.height
        told.styles.max_height = max(room - high, 1)
        self._tell(many)

    def _tell(self, many: int) -> None:
        question, *lines = self._told(many)
        self.query_one(Sentences).show((question, "bold"), *((line, "$foreground") for line in lines))

    def _told(self, many: int) -> list[str]:
        """Return the question and so many of the lines, and how many are left away."""
        more = len(self._lines) - many
        left = [f"  ... and {plural(more, 'line')} more"] if more else []
        return [self._question, *(f"· {line}" for line in self._lines[:many]), *left]


def _tall(texts: Sequence[str], width: int) -> int:
    return sum(len(wrapped(plain(text), width)) for text in texts)
