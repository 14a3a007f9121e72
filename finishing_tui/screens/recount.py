"""The recount, as a conversation: how many there are, what a difference is put down to, and how to go on."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Literal, cast

from textual.app import ComposeResult
from textual.containers import Vertical

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.judging import Verdict
from finishing_tui.craft.words import sentence
from finishing_tui.garment.events import Answer
from finishing_tui.glance.counting import MOST_DIGITS
from finishing_tui.glance.keys import Keys
from finishing_tui.glance.recounts import ANSWERS, RecountView, recount_view
from finishing_tui.glance.spoken import spoken_difference, spoken_verdict
from finishing_tui.glance.stored_words import verdict_words
from finishing_tui.screens.at_hand import AtHand
from finishing_tui.screens.keys import MOVE, TYPED, bindings, digits, keys_of, numbers
from finishing_tui.screens.leaving import Leaving
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.figure_pair import FigurePair, Shown
from finishing_tui.widgets.key_line import Key, KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences
from finishing_tui.widgets.ways import Ways

if TYPE_CHECKING:
    from finishing_tui.screens.app import FinishingApp

Stage = Literal["count", "answer", "left", "ways"]
"""What is asked now."""

_SORTS = {Verdict.LIES_FLAT: "$good", Verdict.JUST_SHOWS: "$mark"}
"""The look of a verdict; all others are alarms. The verdict itself is in words."""


class RecountScreen(Leaving[None]):
    """A recount of the section under way, or the one walked last."""

    CSS_PATH = "recount.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *digits("digit('{}')"),
        *bindings("recount", {**TYPED, "lists.leave": "leave"}),
    ]

    def __init__(self, at_hand: AtHand, counted: int | None = None) -> None:
        """Recount what is in hand; ``counted``: what was typed already, when it differs from the presses."""
        super().__init__()
        self._at_hand = at_hand
        self._counted = counted
        self._answer: Answer | None = None
        self._left: int | None = None
        self._typed = ""
        self._stage: Stage = "count" if counted is None else "answer"
        self._spoken: Stage | None = None  # what was spoken of last
        self._view: RecountView | None = None

    def compose(self) -> ComposeResult:
        """Lay out the figures over what is asked."""
        with Vertical(classes="head"):
            yield Sentences(most={"low": 4, "middling": 4, "high": 8})
        yield FigurePair()
        yield Choices(spaced=False)
        yield Ways()
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Ask the first thing."""
        self._draw()

    def action_digit(self, sign: str) -> None:
        """Take a digit of a number, or a choice."""
        self._hush()
        if self._stage in {"count", "left"}:
            if len(self._typed) < MOST_DIGITS:
                self._typed += sign
            else:
                self.app.bell()
        else:
            self._choose(int(sign) - 1)
        self._draw()

    def action_take_off(self) -> None:
        """Take back the last digit, or the last answer."""
        self._hush()
        if self._typed:
            self._typed = self._typed[:-1]
        elif self._stage == "ways":
            self._stage, self._view = ("answer", None) if self._answer else ("count", None)
        elif self._stage == "left":
            self._stage = "answer"
        elif self._stage == "answer":
            self._stage = "count"
        else:
            self.app.bell()
        self._draw()

    def action_take(self) -> None:
        """Take the number typed, or what the caret is at; with nothing typed the count is what the presses say."""
        self._hush()
        if self._stage == "count":
            countable = self._at_hand.countables()[0]
            self._counted = int(self._typed) if self._typed else countable.expected
            self._typed, self._answer = "", None
            self._ask(None)
        elif self._stage == "left":
            if self._typed:
                self._left, self._typed = int(self._typed), ""
                self._ask("rows-left")
            else:
                self._say(f"Type how many {self._unit()}s are left first.")
        else:
            at = self.query_one(Choices).at if self._stage == "answer" else self.query_one(Ways).at
            self._choose(at)
        if self.is_current:
            self._draw()

    def action_move(self, by: int) -> None:
        """Move the caret."""
        choices, ways = self.query_one(Choices), self.query_one(Ways)
        if self._stage == "answer" and 0 <= choices.at + by < len(choices):
            choices.move(by)
        elif self._stage == "ways" and self._view is not None and 0 <= ways.at + by < len(self._view.ways):
            ways.show(self._view, ways.at + by)
        else:
            self.app.bell()

    def action_leave(self) -> None:
        """Leave; nothing has changed."""
        self.dismiss()

    def _choose(self, number: int) -> None:
        if self._stage == "answer" and 0 <= number < len(ANSWERS):
            answer = ANSWERS[number][0]
            if answer == "rows-left":
                self._answer, self._stage = answer, "left"
            else:
                self._ask(answer)
        elif self._stage == "ways" and self._view is not None and 0 <= number < len(self._view.ways):
            way = self._view.ways[number]
            if self._at_hand.do(way.command):
                self._at_hand.say(f"{self._view.counted} counted: {way.label}", aloud=True)
                self.dismiss()
            else:
                self._say(self._at_hand.said)
        else:
            self.app.bell()

    def _ask(self, answer: Answer | None) -> None:
        """Look at what the count leads to with this answer; where it is as planned, take it and go."""
        counted = self._counted or 0
        try:
            view = recount_view(self._at_hand.state, counted, answer, self._left)
        except FinishingError as error:
            self._say(sentence(str(error)))
            return
        if view.matches:
            if self._at_hand.do(view.ways[0].command):
                self._at_hand.say(f"{counted} counted, as planned; {view.total} on the needle in all", aloud=True)
            self.dismiss()
        elif answer is None:
            self._stage = "answer"
        else:
            self._answer, self._view, self._stage = answer, view, "ways"

    def _draw(self) -> None:
        found = self._at_hand.countables()
        if not found:
            return
        countable, view = found[0], self._view if self._stage == "ways" else None
        verdict = verdict_words(view.verdict) if view else ""
        asked = {
            "count": f"Count {countable.text}.",
            "answer": "The count and the presses differ. What is it?",
            "left": f"How many {self._unit()}s are left in this section?",
            "ways": f"{sentence(verdict)} How to go on?",
        }[self._stage]
        if self._stage != self._spoken:
            self._spoken = self._stage
            differs = self._stage == "answer"
            question = spoken_difference(self._counted or 0, countable.expected) if differs else asked
            self._speak(spoken_verdict(view) if view else question)
        told = [line for line in view.text.split("\n") if line] if view else []
        self.query_one(Sentences).show((asked, "bold"), *((line, "$foreground") for line in told))
        self.query_one(FigurePair).show(self._figures(countable.expected, view))
        choices, ways = self.query_one(Choices), self.query_one(Ways)
        choices.display, ways.display = self._stage == "answer", view is not None
        if self._stage == "answer":
            choices.show([Choice(text) for _, text in ANSWERS], choices.at)
        if view is not ways.view:
            ways.show(view)
        self.set_class(self._stage == "ways", "-ways")
        self.query_one(KeyLine).show(_keys(self._stage, keys_of(self), len(view.ways) if view else 0))

    def _figures(self, expected: int, view: RecountView | None) -> Shown:
        if self._stage in {"count", "left"}:
            typed = (f"{self._typed}?",) if self._typed else ("COUNT",) if self._stage == "count" else ("LEFT",)
            take = keys_of(self).shown("lists.take")
            then = f"{expected} by presses: {take} alone says it is that" if self._stage == "count" else ""
            return Shown(acts=typed, then=then, style="$mark" if self._typed else "$act")
        if view is None:
            aside = (f"counted, not {expected} as by presses",)
            return Shown(str(self._counted), str(expected), aside, joiner="not")
        style = _SORTS.get(view.verdict, "$alarm")
        then = f"{view.total} on the needle in all"
        return Shown(str(view.counted), acts=(verdict_words(view.verdict),), then=then, style=style)

    def _unit(self) -> str:
        try:
            return recount_view(self._at_hand.state, self._counted or 0).unit
        except FinishingError:
            return "row"

    def _say(self, sentence: str) -> None:
        self.app.bell()
        self.query_one(Notice).show(sentence, alarm=True)
        self._speak(sentence)

    def _speak(self, text: str) -> None:
        cast("FinishingApp", self.app).speak(text)

    def _hush(self) -> None:
        self.query_one(Notice).show("")


def _keys(stage: Stage, keys: Keys, ways: int) -> Sequence[Key]:
    """Return the keys of the foot; ``ways``: how many ways there are to go on."""
    take, off, leave = (keys.shown(f"lists.{name}") for name in ("take", "take_off", "leave"))
    match stage:
        case "count":
            return (("digits", "the count"), (take, "take it"), (off, "last digit"), (leave, "leave"))
        case "left":
            return (("digits", "how many"), (take, "take it"), (off, "back"), (leave, "leave"))
        case "answer":
            return ((numbers(len(ANSWERS)), "answer"), (off, "count anew"), (leave, "leave"))
        case "ways":
            look = ((keys.shown(*MOVE), "look"),) if ways > 1 else ()
            return ((numbers(ways), "do it"), *look, (off, "back"), (leave, "leave"))
