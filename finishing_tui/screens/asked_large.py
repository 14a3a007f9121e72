"""What is asked over the whole screen, to be read from afar: a number, one of a list, or a way to go on."""

from collections.abc import Sequence
from typing import cast

from textual.app import ComposeResult
from textual.containers import Vertical

from finishing_tui.craft.words import sentence
from finishing_tui.glance.counting import MOST_DIGITS
from finishing_tui.glance.stored_words import verdict_words
from finishing_tui.screens.finding import Finding
from finishing_tui.screens.keys import MOVE, TYPED, bindings, digits, keys_of, numbers
from finishing_tui.screens.program import program
from finishing_tui.screens.verdict import look_of
from finishing_tui.talk.asks import Explain, HowMany, Pick, WeighWays
from finishing_tui.talk.conversation import Talk
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.figure_pair import FigurePair, Shown
from finishing_tui.widgets.key_line import KeyLine, KeyPlace, ShownKey
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences
from finishing_tui.widgets.ways import Ways

Question = HowMany | Explain | Pick | WeighWays
"""What is drawn here."""


class LargeAsk(Finding[None]):
    """One question after the other, as long as they are of these shapes; digits are the number, or choose."""

    CSS_PATH = "asked_large.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *digits("digit('{}')"),
        *bindings("asked", {**TYPED, "lists.find": "find", "lists.leave": "leave"}),
    ]

    def __init__(self, talk: Talk) -> None:
        """Ask what is asked in ``talk``, which is one of these shapes."""
        super().__init__()
        self._talk = talk
        self._ask = cast("Question", talk.asked)
        self._typed = ""

    def compose(self) -> ComposeResult:
        """Lay out the figures over what is asked."""
        with Vertical(classes="head"):
            yield Sentences(most={"low": 4, "middling": 5, "high": 8})
        yield FigurePair()
        yield Choices(spaced=False)
        yield Ways()
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Ask the first thing."""
        self._begin()

    def action_digit(self, sign: str) -> None:
        """Take a digit of a number, or a choice."""
        if not isinstance(self._ask, HowMany):
            self._choose(int(sign) - 1)
        elif len(self._typed) < MOST_DIGITS:
            self._typed += sign
            self._draw()
        else:
            self.app.bell()

    def action_take_off(self) -> None:
        """Take the last digit back, or go one question back."""
        if self._typed:
            self._typed = self._typed[:-1]
            self._draw()
        elif self._ask.back is not None:
            self._talk.back()
            self.follow()
        else:
            self.app.bell()

    def action_take(self) -> None:
        """Take the number typed, or what the caret is at."""
        ask = self._ask
        if not isinstance(ask, HowMany):
            self._choose(self._at)
            return
        number = int(self._typed) if self._typed else ask.same
        if number is None:
            self._refuse(ask.missing)
            return
        self._talk.answer(number)
        self.follow()

    def action_move(self, by: int) -> None:
        """Move the caret."""
        if isinstance(self._ask, HowMany):
            self.app.bell()
        elif isinstance(self._ask, WeighWays):
            if 0 <= self._at + by < self._many:
                self.query_one(Ways).show(self._ask.view, self._at + by)
            else:
                self.app.bell()
        elif (at := self.query_one(Choices).beside(by)) is not None:
            self.query_one(Choices).move(at - self._at)
        else:
            self.app.bell()

    def found(self) -> None:
        """Choose what was found."""
        self.action_take()

    def action_leave(self) -> None:
        """Leave; nothing has changed."""
        self._talk.leave()
        self.follow()

    def follow(self) -> None:
        """Go on with what is asked now, or leave where that is not drawn here."""
        talk, ask = self._talk, self._talk.asked
        if ask is self._ask:
            self._refuse(talk.said)
        elif isinstance(ask, Question):
            self._ask, self._typed = ask, ""
            self._begin()
            if talk.alarm:
                self._refuse(talk.said)
        else:
            self.dismiss()

    @property
    def _at(self) -> int:
        return self.query_one(Ways).at if isinstance(self._ask, WeighWays) else self.query_one(Choices).at

    @property
    def _many(self) -> int:
        ask = self._ask
        if isinstance(ask, HowMany):
            return 0
        return len(ask.view.ways) if isinstance(ask, WeighWays) else len(ask.options)

    def _choose(self, number: int) -> None:
        if not 0 <= number < self._many:
            self.app.bell()
            return
        self._talk.answer(number)
        self.follow()

    def _begin(self) -> None:
        """Show another question."""
        ask, choices, ways = self._ask, self.query_one(Choices), self.query_one(Ways)
        program(self).speak(ask.spoken or ask.question)
        listed, weighed = isinstance(ask, Pick | Explain), isinstance(ask, WeighWays)
        choices.display, ways.display = listed, weighed
        self.set_class(weighed, "-ways")
        self.set_class(isinstance(ask, Pick), "-listed")
        self.set_class(isinstance(ask, HowMany) and ask.most is not None, "-bounded")
        if isinstance(ask, Pick | Explain):
            choices.show([Choice(one.text) for one in ask.options])
        ways.show(ask.view if isinstance(ask, WeighWays) else None)
        style = "$foreground" if weighed else "$quiet"
        self.query_one(Sentences).show((ask.question, "bold"), *((line, style) for line in ask.told))
        self._draw()

    def _draw(self) -> None:
        """Show what is typed; what was refused was about another number."""
        self.query_one(Notice).show("")
        self.query_one(FigurePair).show(self._figures())
        self.query_one(KeyLine).show(self._keys())

    def _figures(self) -> Shown:
        match self._ask:
            case HowMany(idle=idle, aside=aside):
                style = "$mark" if self._typed or idle == "?" else "$act"
                return Shown(verb=f"{self._typed}?" if self._typed else idle, then=aside, style=style)
            case Explain(counted=counted, expected=expected, aside=aside):
                return Shown(str(counted), str(expected), (aside,), joiner="not")
            case WeighWays(view=view):
                then = f"{view.total} on the needle in all"
                return Shown(
                    str(view.counted), verb=verdict_words(view.verdict), then=then, style=look_of(view.verdict)
                )
            case _:
                return Shown()

    def _refuse(self, text: str) -> None:
        self.app.bell()
        if text:
            self.query_one(Notice).show(sentence(text), alarm=True)
            program(self).speak(text)

    def _keys(self) -> Sequence[ShownKey | KeyPlace]:
        """Return the keys of the foot."""
        ask, shown = self._ask, keys_of(self).shown
        take, off, leave = (shown(f"lists.{name}") for name in ("take", "take_off", "leave"))
        back = "erase" if self._typed else "back" if ask.back is not None else ""
        leaves = (leave, "leave")
        match ask:
            case HowMany():
                number = self._typed or ask.same
                does = KeyPlace(take, f"it's {number}" if number is not None else "", 8, 8)
                first = (("digits", "type it"), does) if ask.same is None else (does, ("digits", "type it"))
                return (*first, KeyPlace(off, back, 5, 5), leaves)
            case Explain():
                return (*self.choosing(), (off, "count again"), *self.moving(), leaves)
            case WeighWays():
                look = ((shown(*MOVE), "look"),) if self._many > 1 else ()
                return ((f"{take} {numbers(self._many)}", "choose"), (off, back), *look, leaves)
            case _:
                return (*self.choosing(), *self.moving(), leaves)
