"""What if: another target, other spots, another rhythm, other rounds; nothing changes until it is taken."""

from typing import Literal

from textual.app import ComposeResult
from textual.containers import Horizontal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import capital, sentence
from finishing_tui.garment.commands import WhatIf
from finishing_tui.glance.counting import MOST_DIGITS
from finishing_tui.glance.later import AFFECTS_LATER
from finishing_tui.glance.what_if import WhatIfView, rhythm_typed, unit_words
from finishing_tui.screens.keys import MOVE, TYPED, bindings, digits, keys_of
from finishing_tui.screens.leaving import Leaving
from finishing_tui.talk.asks import WeighPlans
from finishing_tui.talk.conversation import Talk
from finishing_tui.widgets.answer_table import AnswerTable
from finishing_tui.widgets.corner import Corner
from finishing_tui.widgets.figure_pair import FigurePair, Shown
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.plan_fields import Fields, PlanField
from finishing_tui.widgets.sentences import Sentences

Name = Literal["loops", "spots", "rhythm", "style", "rounds"]
"""What may be asked."""


class WhatIfScreen(Leaving[None]):
    """The plan there is over the plan that is asked for; digits change the field at the caret."""

    CSS_PATH = "what_if.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *digits("sign('{}')"),
        *bindings(
            "what if",
            {
                **TYPED,
                "lists.leave": "leave",
                "what_if.before": "move(-1)",
                "what_if.next": "move(1)",
                "what_if.of_every": "sign('/')",
                "what_if.spread": "turn",
            },
        ),
    ]

    def __init__(self, talk: Talk, ask: WeighPlans) -> None:
        """Ask about what is in hand."""
        super().__init__()
        self._talk = talk
        self._ask = ask
        self._asked, typed = ask.asked, ask.typed
        self._names: tuple[Name, ...] = ("loops", "spots", "rhythm", "style") if self._asked.section else ("rounds",)
        self._typed: dict[Name, str] = {self._names[0]: typed} if typed else {}
        self._style: Literal["easy", "even"] | None = None
        self._at = 0
        self._view: WhatIfView | None = None
        self._trouble = ""

    def compose(self) -> ComposeResult:
        """Lay out the figures, what may be asked, what that changes later, and the two plans."""
        with Horizontal(classes="head"):
            yield Sentences()
            yield Corner()
        yield FigurePair()
        yield Fields()
        yield Sentences(id="later", tells_more=True)
        yield AnswerTable(numbered=False)
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show the plan there is; of a section there is so much to tell that the figures give way on most screens."""
        self.set_class(self._asked.section, "-section")
        hint = "Nothing changes yet."
        self.query_one("#sentences", Sentences).show((self._ask.question, "bold"), (hint, "$quiet"))
        self._look()

    def action_sign(self, sign: str) -> None:
        """Take a digit of the field at the caret, or the stroke of a rhythm."""
        name, typed = self._here, self._typed.get(self._here, "")
        rhythm = name == "rhythm"
        longest = MOST_DIGITS * 2 + 1 if rhythm else MOST_DIGITS
        if name == "style" or len(typed) >= longest or (sign == "/" and (not rhythm or not typed or "/" in typed)):
            self.app.bell()
            return
        # A rhythm has its own number of loops, so of the two the one typed last holds.
        self._typed.pop("loops" if rhythm else "rhythm" if name == "loops" else name, None)
        self._typed[name] = typed + sign
        self._look()

    def action_move(self, by: int) -> None:
        """Move the caret."""
        self._at = (self._at + by) % len(self._names)
        self._look()

    def action_turn(self) -> None:
        """Spread it easily, or most evenly."""
        if "style" not in self._names:
            self.app.bell()
            return
        style = self._style or self._asked.style
        self._style = "even" if style == "easy" else "easy"
        self._at = self._names.index("style")
        self._look()

    def action_take_off(self) -> None:
        """Take back the last sign of the field at the caret."""
        typed = self._typed.get(self._here, "")
        if self._here == "style":
            self._style = None
        elif len(typed) > 1:
            self._typed[self._here] = typed[:-1]
        elif typed:
            del self._typed[self._here]
        else:
            self.app.bell()
        self._look()

    def action_take(self) -> None:
        """Take what is shown."""
        view = self._view
        if view is None or not view.changes:
            self.app.bell()
            self.query_one(Notice).show(self._trouble or "Type a number first.", alarm=True)
            return
        self._talk.answer(view)
        if self._talk.asked is self._ask:
            self.query_one(Notice).show(self._talk.said, alarm=True)
        else:
            self.dismiss()

    def action_leave(self) -> None:
        """Leave; nothing has changed."""
        self.dismiss()

    @property
    def _here(self) -> Name:
        return self._names[self._at]

    def _command(self) -> WhatIf:
        """Return what is asked for, by what was typed so far."""

        def number(name: Name) -> int | None:
            return int(self._typed[name]) if name in self._typed else None

        rhythm = rhythm_typed(self._typed.get("rhythm", ""))
        return WhatIf(
            target=number("loops"), spots=number("spots"), style=self._style, rhythm=rhythm, rounds=number("rounds")
        )

    def _look(self) -> None:
        """Look at what was asked for, and draw it."""
        try:
            self._view, self._trouble = self._ask.view(self._command()), ""
        except FinishingError as error:
            self._view, self._trouble = None, sentence(str(error))
        self.query_one(Notice).show("")
        self.query_one(Fields).show([self._field(name) for name in self._names], self._at)
        figures = self._figures()
        self.query_one(FigurePair).show(figures)
        self.query_one(Corner).show(figures.count, self._what)
        self._weigh()
        self.set_class(self._view is not None and self._view.changes, "-changes")
        key = keys_of(self).shown
        take = [(key("lists.take"), "change it")] if self._view is not None and self._view.changes else []
        spread = (key("what_if.spread"), "easy or even")
        first = ("digits", "another number") if self._here != "style" else spread
        more = [(key(*MOVE), "what else"), spread] if self._asked.section else []
        self.query_one(KeyLine).show([*take, *dict([first, *more]).items(), (key("lists.leave"), "leave")])

    def _field(self, name: Name) -> PlanField:
        typed = self._typed.get(name, "")
        view, asked = self._view, self._asked
        match name:
            case "loops":
                return PlanField("stitches", typed or str(view.figure if view else asked.figure), bool(typed))
            case "rhythm":
                return PlanField("rhythm", typed.replace("/", " of every ") or "-", bool(typed))
            case "style":
                return PlanField("spread", self._style or self._asked.style, self._style is not None)
            case _:
                planned = asked.spots if name == "spots" else asked.figure
                return PlanField(unit_words(asked), typed or str(planned or "-"), bool(typed))

    def _weigh(self) -> None:
        """Show both plans side by side, and what changes later, or why what was typed cannot be."""
        view, later = self._view, self.query_one("#later", Sentences)
        if view is None:
            self.query_one(AnswerTable).show(None)
            later.show((self._trouble, "$alarm"))
            return
        self.query_one(AnswerTable).show(view.answers, len(view.answers.rows) - 1)
        head = capital(AFFECTS_LATER if view.later else "nothing later changes") if view.changes else ""
        later.show((head, "bold $foreground"), *((f"· {sentence(line)}", "$foreground") for line in view.later))

    @property
    def _what(self) -> str:
        return "stitches" if self._asked.section else unit_words(self._asked)

    def _figures(self) -> Shown:
        view, asked = self._view, self._asked
        if view is None:
            return Shown(self._typed.get(self._here, ""))
        verb, what = view.answers.rows[-1].verb, self._what
        if not view.changes:
            return Shown(str(view.figure), aside=(f"{what}, as planned",), verb=verb)
        other = str(asked.figure) if asked.figure != view.figure else ""
        return Shown(str(view.figure), other, (what,), verb, style="$mark", joiner="not")
