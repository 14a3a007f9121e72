"""What is asked over the whole screen, to be read from afar: a number, one of a list, or a way to go on."""

from collections.abc import Callable, Sequence
from typing import cast

from textual.app import ComposeResult
from textual.containers import Horizontal

from finishing_tui.craft.words import sentence
from finishing_tui.glance.counting import MOST_DIGITS
from finishing_tui.glance.values import Glance, SpotFace
from finishing_tui.screens.finding import Finding
from finishing_tui.screens.keys import MOVE, TYPED, bindings, digits, keys_of, numbers
from finishing_tui.screens.program import program
from finishing_tui.talk.asks import Explain, HowMany, Pick, Weigh
from finishing_tui.talk.conversation import Talk
from finishing_tui.widgets.answer_table import AnswerTable
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.corner import Corner
from finishing_tui.widgets.edge_strip import EdgeStrip
from finishing_tui.widgets.figure_pair import FigurePair, Shown
from finishing_tui.widgets.holdings import Holdings
from finishing_tui.widgets.key_line import KeyLine, KeyPlace, ShownKey
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences

Question = HowMany | Explain | Pick | Weigh
"""What is drawn here."""


class LargeAsk(Finding[None]):
    """One question after the other, as long as they are of these shapes; digits are the number, or choose."""

    CSS_PATH = "asked_large.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *digits("digit('{}')"),
        *bindings("asked", {**TYPED, "lists.find": "find", "lists.leave": "leave"}),
    ]

    def __init__(self, talk: Talk, seen: Callable[[], Glance]) -> None:
        """Ask what is asked in ``talk``, one of these shapes; ``seen``: what there is to see at the needles."""
        super().__init__()
        self._talk = talk
        self._seen = seen
        self._ask = cast("Question", talk.asked)
        self._typed = ""

    def compose(self) -> ComposeResult:
        """Lay out the figures over what is asked."""
        with Horizontal(classes="head"):
            yield Sentences(most={"low": 6, "middling": 8, "high": 10}, tells_more=True)
            yield Corner()
        yield FigurePair()
        yield Choices(spaced=False)
        yield AnswerTable()
        yield EdgeStrip()
        yield Holdings()
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Ask the first thing, under why what was typed at the needles could not be taken."""
        self._begin()
        if self._talk.alarm:
            self.query_one(Notice).show(self._talk.said, alarm=True)

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
        elif isinstance(self._ask, Weigh):
            if 0 <= self._at + by < self._many:
                self.query_one(AnswerTable).show(self._ask.answers, self._at + by)
                self._draw()
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
        return self.query_one(AnswerTable).at if isinstance(self._ask, Weigh) else self.query_one(Choices).at

    @property
    def _many(self) -> int:
        ask = self._ask
        if isinstance(ask, HowMany):
            return 0
        return len(ask.answers.rows) if isinstance(ask, Weigh) else len(ask.options)

    def _choose(self, number: int) -> None:
        if not 0 <= number < self._many:
            self.app.bell()
            return
        self._talk.answer(number)
        self.follow()

    def _begin(self) -> None:
        """Show another question."""
        ask, choices, table = self._ask, self.query_one(Choices), self.query_one(AnswerTable)
        self.unasked = ask if ask.unasked else None
        program(self).speak(ask.spoken or ask.question)
        listed, weighed = isinstance(ask, Pick | Explain), isinstance(ask, Weigh)
        self._show_what_it_is_about()
        choices.display, table.display = listed, weighed
        self.set_class(weighed and bool(ask.told), "-told")
        self.set_class(weighed, "-weighed")
        self.set_class(isinstance(ask, Pick), "-listed")
        self.set_class(isinstance(ask, Explain), "-explained")
        self.set_class(isinstance(ask, HowMany), "-number")
        if isinstance(ask, Pick | Explain):
            choices.show([Choice(one.text) for one in ask.options])
        table.show(*(ask.answers, ask.answers.first) if isinstance(ask, Weigh) else (None,))
        style = "$foreground" if weighed else "$quiet"
        title = ask.title if isinstance(ask, Weigh) else ""
        told = ((sentence(line), style) for line in ask.told)
        self.query_one(Sentences).show((title, "$quiet"), (ask.question, "bold"), *told)
        self._draw()

    def _show_what_it_is_about(self) -> None:
        """Show with a number or a place that is asked for the edge it is of, and what every needle holds."""
        ask = self._ask
        held = isinstance(ask, HowMany | Pick)
        self.set_class(held, "-held")
        self.remove_class("-edge")
        on_edge = ask.on_edge if isinstance(ask, HowMany) else held
        if held:
            seen = self._seen()
            self.query_one(Holdings).show(seen)
            if isinstance(seen.face, SpotFace) and on_edge:
                self.add_class("-edge")
                self.query_one(EdgeStrip).show(seen.face.edge, seen.face.ahead)

    def _draw(self) -> None:
        """Show what is typed; what was refused was about another number."""
        self.query_one(Notice).show("")
        figures = self._figures()
        self.query_one(FigurePair).show(figures)
        self.query_one(Corner).show(figures.count)
        self.query_one(KeyLine).show(self._keys())

    def _figures(self) -> Shown:
        match self._ask:
            case HowMany(idle=idle, aside=aside):
                return Shown(self._typed or "?", verb=idle, then=aside)
            case Explain(counted=counted, expected=expected):
                return Shown(str(counted), str(expected), verb="LOOK", joiner="not")
            case Weigh(answers=answers):
                row, (there, planned) = answers.rows[self._at], answers.numbers or ("", "")
                other = str(planned) if planned != there else ""
                return Shown(str(there), other, verb=row.verb, joiner="not")
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
                wide = len(ask.takes.format(999))
                does = KeyPlace(take, ask.takes.format(number) if number is not None else "", wide, wide)
                first = (("digits", "type it"), does) if ask.same is None else (does, ("digits", "type it"))
                # All in their places, so that they have two lines where it is narrow.
                return (*first, KeyPlace(off, back, 5, 5), KeyPlace(leave, "leave", 5, 5))
            case Explain():
                return (*self.choosing(), (off, "back"), *self.moving(), leaves)
            case Weigh():
                look = ((shown(*MOVE), "look"),) if self._many > 1 else ()
                again = ((off, "back"),) if ask.back is not None else ()
                choose = (f"{take} {numbers(self._many)}", "choose") if look else (take, "choose it")
                return (choose, *look, *again, leaves)
            case _:
                return (*self.choosing(), *self.moving(), leaves)
