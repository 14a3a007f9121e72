"""The numbers of a garment, each with where it comes from; one of them is typed anew.

What a new number leads to is told and asked by whoever opens this (``Numbers``): before a garment is started it is only
taken, at the needles it is a changed plan.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

from textual import work
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.events import Paste
from textual.message import Message

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.glance.numbers import MOST_DIGITS, NumberLine, allowed, read_number
from finishing_tui.screens.finding import Finding
from finishing_tui.screens.keys import TYPED, bindings, digits, keys_of
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences


class Numbers(Protocol):
    """Whose numbers they are."""

    def lines(self) -> Sequence[NumberLine]:
        """Return the numbers as they are."""

    def take(self, screen: "NumbersScreen", line: NumberLine, value: int | None) -> None:
        """Take a new value; None: what it would be without the knitter's own. Raises ``FinishingError`` if not."""


class NumbersScreen(Finding[None]):
    """All numbers in a list; digits are the new value of the one at the caret."""

    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *digits("digit('{}')"),
        *bindings(
            "numbers",
            {
                **TYPED,
                "lists.find": "find",
                "lists.leave": "back",
                "lists.close": "leave",
                "numbers.as_printed": "as_printed",
            },
        ),
    ]

    @dataclass
    class Found(Message):
        """Something was found out."""

        then: Callable[[Any], None]
        found: Any

    def __init__(self, numbers: Numbers, about: str, at: str = "") -> None:
        """Show ``numbers``, with the caret ``at`` the one of that name; ``about`` stands under the title."""
        super().__init__()
        self._numbers = numbers
        self._about = about
        self._first = at
        self._typed = ""

    def compose(self) -> ComposeResult:
        """Lay out what the number at the caret is over the list."""
        with Vertical(classes="head"):
            yield Sentences(most={"low": 6, "middling": 8, "high": 10})
        yield Choices(spaced=False, numbered=False)
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show the numbers."""
        names = [line.name for line in self._numbers.lines()]
        self.draw(names.index(self._first) if self._first in names else 0)

    def action_digit(self, sign: str) -> None:
        """Take a digit of the new value."""
        self.say("")
        if not self._numbers.lines() or len(self._typed) >= MOST_DIGITS:
            self.app.bell()
            return
        self._typed += sign
        self.draw()

    def action_take_off(self) -> None:
        """Take the last digit back."""
        self.say("")
        if not self._typed:
            self.app.bell()
        self._typed = self._typed[:-1]
        self.draw()

    def action_move(self, by: int) -> None:
        """Move the caret; not away from a number that is half typed."""
        choices = self.query_one(Choices)
        if self._typed:
            self._refuse_to_leave()
        elif (at := choices.beside(by)) is not None:
            self.say("")
            self.draw(at)
        else:
            self.app.bell()

    async def action_find(self) -> None:
        """Find another number; not away from one that is half typed."""
        if self._typed:
            self._refuse_to_leave()
        else:
            self.say("")
            await super().action_find()

    def found(self) -> None:
        """Show the caret at what was found, to be typed."""
        self.draw()

    def action_take(self) -> None:
        """Take what was typed, or say why not and leave it as it was typed."""
        line = self._line
        if line is None:
            self.app.bell()
        elif not self._typed:
            self.refuse(f"type what you count, then {keys_of(self).shown('lists.take')}")
        else:
            self._try(line, lambda: read_number(line, self._typed))

    def action_as_printed(self) -> None:
        """Give a number of one's own up again."""
        line = self._line
        if line is None or not line.own:
            self.refuse("you haven't changed this one")
        else:
            self._try(line, lambda: None)

    def action_back(self) -> None:
        """Clear what was typed, or leave."""
        if self._typed:
            self._typed = ""
            self.say("")
            self.draw()
        else:
            self.dismiss()

    def action_leave(self) -> None:
        """Leave."""
        self.dismiss()

    def on_paste(self, event: Paste) -> None:
        """Take a pasted number; anything else is no number."""
        event.stop()
        text = event.text.strip()
        if text.isascii() and text.isdecimal() and len(self._typed + text) <= MOST_DIGITS:
            self._typed += text
            self.draw()
        else:
            self.refuse("what was pasted is not one whole number; nothing was taken")

    @work(thread=True, group="reading")
    def beside(self, find: Callable[[], Any], then: Callable[[Any], None]) -> None:
        """Find something out beside the keys; ``then`` gets what was found, or the error that says why it was not."""
        try:
            found = find()
        except FinishingError as error:
            found = error
        self.post_message(self.Found(then, found))

    def on_numbers_screen_found(self, message: Found) -> None:
        """Go on with what was found, if one still waits for it."""
        if self.is_current:
            message.then(message.found)

    def taken(self, said: str) -> None:
        """Show the numbers again after one was taken, and say so."""
        self._typed = ""
        self.draw()
        self.say(said)

    def say(self, text: str) -> None:
        """Say something, or nothing."""
        self.query_one(Notice).show(sentence(text) if text else "")

    def refuse(self, text: str) -> None:
        """Ring, and say why nothing was done."""
        self.app.bell()
        self.query_one(Notice).show(sentence(text), alarm=True)

    def draw(self, at: int | None = None) -> None:
        """Show the numbers as they are, with the caret ``at`` one of them, or where it was."""
        choices, lines = self.query_one(Choices), self._numbers.lines()
        at = choices.at if at is None else at
        shown = [
            Choice(line.text, (line.aside,) if line.aside else (), self._figure(line, here=index == at))
            for index, line in enumerate(lines)
        ]
        choices.show(shown, at)
        line = self._line
        told = "" if line is None else f"{line.how} {allowed(line.least, line.most)}".strip()
        self.query_one(Sentences).show(("Numbers", "bold $count"), (self._about, "$quiet"), (told, "$foreground"))
        key = keys_of(self).shown
        own = [(key("numbers.as_printed"), "use printed")] if line is not None and line.own else []
        leave = (key("lists.leave"), "clear" if self._typed else "back")
        keys = [(key("lists.take"), f"use {self._typed}")] if self._typed else [*self.finding(), *own, *self.moving()]
        self.query_one(KeyLine).show([("digits", "change it"), *keys, leave])

    @property
    def _line(self) -> NumberLine | None:
        lines = self._numbers.lines()
        return lines[self.query_one(Choices).at] if lines else None

    def _figure(self, line: NumberLine, *, here: bool) -> str:
        if here and self._typed:
            return f"{self._typed}?"
        return "?" if line.value is None else str(line.value)

    def _refuse_to_leave(self) -> None:
        key = keys_of(self).shown
        self.refuse(f"{key('lists.take')} uses {self._typed}, {key('lists.leave')} clears it")

    def _try(self, line: NumberLine, value: Callable[[], int | None]) -> None:
        try:
            self._numbers.take(self, line, value())
        except FinishingError as error:
            self.refuse(str(error))
