"""Coming back to a garment: ten seconds to know everything, and a count that may wait."""

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.events import Resize

from finishing_tui.craft.words import sentence
from finishing_tui.glance.coming_back import ComingBack
from finishing_tui.glance.counting import MOST_DIGITS, coming_back_asks
from finishing_tui.glance.values import Face, PairFace, RoundFace, SpotFace, StitchFace
from finishing_tui.screens.keys import bindings, digits, keys_of
from finishing_tui.screens.leaving import Leaving
from finishing_tui.talk.conversation import Talk
from finishing_tui.widgets.figure_pair import FigurePair, Shown
from finishing_tui.widgets.grid import cells_for
from finishing_tui.widgets.holdings import Holdings
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.sentences import Sentences


class ComingBackScreen(Leaving[int | None]):
    """Where it was left and what comes next; returns the count, or None for not now."""

    CSS_PATH = "coming_back.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *digits("digit('{}')"),
        *bindings(
            "coming back",
            {
                "lists.take": "take",
                "lists.on": "take",
                "lists.take_off": "take_off",
                "lists.leave": "not_now",
                "lists.close": "not_now",
            },
        ),
    ]

    def __init__(self, back: ComingBack, talk: Talk) -> None:
        super().__init__()
        self._back = self.unasked = back
        self._talk = talk
        self._typed = ""

    def compose(self) -> ComposeResult:
        """Lay out where it was left, what comes next, and what should be there."""
        with Vertical(classes="head"):
            yield Sentences(id="left", most={"low": 8, "middling": 9, "high": 13})
        yield FigurePair()
        with Vertical(id="then"):
            yield Sentences(id="asked", most={"low": 3, "middling": 3, "high": 4})
        yield Holdings()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show everything at once."""
        back, now = self._back, self._back.now
        where = f"You wrote: {back.where}" if back.where else ""
        cut = "The program stopped last time. Nothing shown as saved was lost." if back.cut_off else ""
        lie = " · ".join(text for text in (now.posture, now.needles) if text)
        self.query_one("#left", Sentences).show(
            (f"{now.title} · size {now.size}", "bold $count"),
            (f"{'left' if back.cut_off else 'put down'} {back.away}" if back.away else "", "$quiet"),
            (cut, "$alarm"),
            (where, "bold $mark"),
            *((f"Note: {note}", "$mark") for note in back.notes),
            (sentence(f"You were at {back.last}"), "$foreground"),
            (sentence(back.next), "bold $act"),
            (lie, "$foreground"),
        )
        self.query_one(Holdings).show(now)
        self._draw()

    def on_resize(self, _: Resize) -> None:
        """Draw the word where there is room for it."""
        self._draw()

    def action_digit(self, sign: str) -> None:
        """Take a digit of the count."""
        if coming_back_asks(self._talk.state) and len(self._typed) < MOST_DIGITS:
            self._typed += sign
        else:
            self.app.bell()
        self._draw()

    def action_take_off(self) -> None:
        """Take the last digit back."""
        self._typed = self._typed[:-1]
        self._draw()

    def action_take(self) -> None:
        """Take the count; with none typed it is not now."""
        self.dismiss(int(self._typed) if self._typed else None)

    def action_not_now(self) -> None:
        """Go on without a count."""
        self.dismiss(None)

    def _draw(self) -> None:
        asked = coming_back_asks(self._talk.state)
        self.query_one("#asked", Sentences).show((asked, "$foreground"))
        face = self._back.now.face
        count, of = (self._typed, "") if self._typed else _figures(face)  # what was counted is no part of the plan's
        aside = ("you counted",) if self._typed else ()
        beside = cells_for(*self.app.size).beside  # else what comes next stands there in words
        flags = face.flags if beside and isinstance(face, SpotFace) else ("", "")
        shown = Shown(count, of, aside, face.act if beside else "", *flags)
        self.query_one(FigurePair).show(shown, self._back.now.digits)
        key = keys_of(self).shown
        if self._typed:
            keys = [
                (key("lists.take"), f"it's {self._typed}"),
                (key("lists.take_off"), "erase"),
                (key("lists.leave"), "not now"),
            ]
        else:
            # Leaving is knitting on too: the key for it has one word, and is shown once.
            keys = [*([("digits", "count")] if asked else []), (key("lists.take"), "knit on")]
        self.query_one(KeyLine).show(keys)


def _figures(face: Face) -> tuple[str, str]:
    """Return the figures of a face that has them."""
    match face:
        case SpotFace():
            return str(face.count), face.wanted
        case StitchFace() | PairFace() | RoundFace():
            return str(face.count), str(face.of)
        case _:
            return "", ""
