"""At the needles: one glance drawn, and every key handed to the conversation in ``at_hand``."""

from datetime import UTC, datetime
from typing import TYPE_CHECKING, cast

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Container
from textual.screen import Screen

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import Other, Replan, WriteNote
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.actions import ACTIONS, ActionId
from finishing_tui.glance.coming_back import ComingBack
from finishing_tui.glance.glancing import look_at
from finishing_tui.glance.techniques import others, techniques_for
from finishing_tui.glance.values import Glance, Line, SpotFace
from finishing_tui.screens.asking import Asking
from finishing_tui.screens.at_hand import AtHand, Opening
from finishing_tui.screens.coming_back import ComingBackScreen
from finishing_tui.screens.help import HelpScreen
from finishing_tui.screens.one_line import OneLine
from finishing_tui.screens.recount import RecountScreen
from finishing_tui.screens.rip_back import RipBackScreen
from finishing_tui.screens.saved import Saved
from finishing_tui.screens.technique import TechniqueScreen
from finishing_tui.widgets.choices import Choice
from finishing_tui.widgets.faces import VIEWS, FaceView
from finishing_tui.widgets.faces.base import Typed
from finishing_tui.widgets.holdings import Holdings
from finishing_tui.widgets.key_line import Key, KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.step_words import StepWords
from finishing_tui.widgets.top import Top

if TYPE_CHECKING:
    from finishing_tui.screens.app import FinishingApp

TIMES = {"run": 1, "recount": 2, "target": 3, "refused": 1}
"""How often the bell rings."""

PATIENCE = 5.0
"""Seconds that putting it down waits for the disk, while nothing is known to be wrong."""

PATIENCE_IN_TROUBLE = 0.2
"""The same once saving has failed: then it is asked at once what to do."""


class AtTheNeedles(Screen[None]):
    """The garment in hand; with ``look`` it can only be looked at."""

    CSS_PATH = "at_the_needles.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *(Binding(action.key, f"ask('{action.id}')", action.help, id=action.id) for action in ACTIONS.values()),
        *(Binding(digit, f"digit('{digit}')", show=False, id=f"digit.{digit}") for digit in "0123456789"),
        Binding("full_stop", "digit('.')", show=False, id="digit.point"),
        Binding("escape", "clear", "forget what was typed or asked", id="clear"),
    ]

    def __init__(self, hand: InHand, back: ComingBack | None, *, look: bool = False) -> None:
        super().__init__()
        self.at_hand = AtHand(hand, look=look)
        self._back = back
        self._face: FaceView | None = None

    def compose(self) -> ComposeResult:
        """Lay out the head, the face, what is held, the words and the keys."""
        yield Top()
        yield Container(id="face")
        yield Holdings()
        yield StepWords()
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show the garment, and what a knitter coming back must know."""
        self.draw()
        self.set_interval(60, self.draw)  # the minutes of the sitting
        if not self.at_hand.look and (plan := self.at_hand.hand.changed_plan()) is not None:
            question = (
                "The recipe or the garment's file was changed since it was taken. "
                "Take the change for the steps that are not begun yet?"
            )
            answers = (Choice("take it"), Choice("go on by the plan there is"))
            change = Replan(plan, "the files were changed")
            self.app.push_screen(Asking(question, answers), lambda taken: self._do(change) if taken == 0 else None)
        if self._back is not None:
            self.app.push_screen(ComingBackScreen(self._back, self.at_hand), self._came_back)

    def draw(self) -> None:
        """Draw what there is to see now; every widget draws only what changed."""
        at_hand = self.at_hand
        seen = look_at(at_hand.state, at_hand.shown_step, self._now())
        self.query_one(Top).show(seen, at_hand.hand.unsaved, look=at_hand.look)
        typed = Typed(at_hand.typed, at_hand.meaning()) if at_hand.typed else None
        self._face_for(seen).show(seen.face, typed)
        self.query_one(Holdings).show(seen)
        self.query_one(StepWords).show(seen.lines)
        self.query_one(KeyLine).show(self._keys())
        self._say()

    def _say(self) -> None:
        at_hand = self.at_hand
        self.query_one(Notice).show(at_hand.said or at_hand.hand.trouble, alarm=at_hand.alarm or not at_hand.said)

    def action_ask(self, action: ActionId) -> None:
        """Do what a key asks for."""
        self._open(self.at_hand.ask(action))

    def action_digit(self, sign: str) -> None:
        """Take a digit."""
        self.at_hand.digit(sign)
        self._after()

    def action_clear(self) -> None:
        """Forget what was typed or asked."""
        self.at_hand.clear()
        self._after()

    def on_saved(self, _: Saved) -> None:
        """Take the mark away from what is on the disk now, or say what keeps it off."""
        self.query_one(Top).mark(self.at_hand.hand.unsaved)
        self._say()

    def _open(self, opening: Opening | None) -> None:
        at_hand, app = self.at_hand, self.app
        match opening:
            case None:
                pass
            case "help":
                seen = look_at(at_hand.state, at_hand.shown_step, self._now())
                app.push_screen(
                    HelpScreen(seen.heading, _all_lines(seen), self._all_keys(), shapes=isinstance(seen.face, SpotFace))
                )
            case "technique":
                self._technique()
            case "recount":
                typed, at_hand.typed = at_hand.typed, ""
                app.push_screen(RecountScreen(at_hand, int(typed) if typed else None), lambda _: self._after())
            case "rip back":
                app.push_screen(RipBackScreen(at_hand), lambda _: self._after())
            case "note":
                line = OneLine(
                    "A note at this step", "For whoever picks this up again.", enter="keep it", escape="no note"
                )
                app.push_screen(line, self._note)
            case "put down":
                self._put_down()
            case "which needle: other" | "which needle: count":
                self._which(counting=opening.endswith("count"))
        self._after()

    def _technique(self) -> None:
        """Open the techniques of the step in the middle, or say why they cannot be read."""
        state = self.at_hand.state
        try:
            helping = techniques_for(state, self.at_hand.shown_step)
            screen = TechniqueScreen(helping, others(helping), left_handed=state.plan.hand == "left")
        except FinishingError as error:
            self.at_hand.say(str(error))
        else:
            self.app.push_screen(screen)

    def _which(self, *, counting: bool) -> None:
        at_hand = self.at_hand
        if counting:
            sides = [(one.place, f"{one.text}, which should hold {one.expected}") for one in at_hand.countables()]
            question = f"{at_hand.typed} counted on which needle?"
        else:
            offer = next(offer for offer in at_hand.offers() if offer.action == "other")
            sides = list(offer.sides)
            question = "Two were worked together on which needle?"

        def chosen(at: int | None) -> None:
            if at is not None:
                if counting:
                    at_hand.count(sides[at][0])
                else:
                    at_hand.do(Other(sides[at][0]), "other")
            self._after()

        self.app.push_screen(Asking(question, [Choice(text) for _, text in sides]), chosen)

    def _note(self, text: str | None) -> None:
        if text and self.at_hand.do(WriteNote(text)):
            self.at_hand.say("the note is kept")
        self._after()

    def _do(self, command: Replan) -> None:
        self.at_hand.do(command)
        self._after()

    def _came_back(self, counted: int | None) -> None:
        if counted is not None:
            self.at_hand.typed = str(counted)
            self._open(self.at_hand.ask("finish"))
        else:
            self._after()

    def _put_down(self) -> None:
        if self.at_hand.look:
            self.at_hand.hand.close()
            self.dismiss()
            return
        line = OneLine(
            "Where did you leave it?",
            "One line for coming back, if you like: the bag, the row, what to watch.",
            enter="put it down",
            escape="go on",
        )

        def down(where: str | None) -> None:
            if where is None:
                self._after()
                return
            hand = self.at_hand.hand
            if hand.flush(PATIENCE_IN_TROUBLE if hand.trouble else PATIENCE):
                self._leave(where)
                return
            question = f"{hand.unsaved} not saved yet. {hand.trouble}".rstrip()
            answers = (Choice("stay", ("It is saved by itself as soon as it can be.",)), Choice("leave it unsaved"))
            self.app.push_screen(Asking(question, answers), lambda at: self._leave(where) if at == 1 else self._after())

        self.app.push_screen(line, down)

    def _leave(self, where: str) -> None:
        """Put the garment down; what cannot be saved even now is told of when the program ends."""
        cast("FinishingApp", self.app).put_down(where)
        self.dismiss()

    def _after(self) -> None:
        """Draw what a key led to, and ring for it."""
        rings, self.at_hand.rings = self.at_hand.rings, None
        if rings is not None:
            cast("FinishingApp", self.app).bell_pattern(TIMES[rings])
        self.draw()
        self._follow()

    def _follow(self) -> None:
        """Ask what is to be done about what a count changes further on."""
        follows, self.at_hand.follows = self.at_hand.follows, None
        if follows is None:
            return

        def chosen(at: int | None) -> None:
            if at is not None and self.at_hand.do(follows.ways[at].command):
                self.at_hand.say(f"{self.at_hand.state.top_label}: noted")
            self._after()

        ways = [Choice(way.text, (way.look,)) for way in follows.ways]
        self.app.push_screen(Asking("This changes what comes later", ways, follows.lines), chosen)

    def _face_for(self, seen: Glance) -> FaceView:
        wanted = VIEWS[type(seen.face)]
        if not isinstance(self._face, wanted):
            if self._face is not None:
                self._face.remove()
            self._face = wanted()
            self.query_one("#face", Container).mount(self._face)
        return self._face

    def _keys(self) -> list[Key]:
        if self.at_hand.look:
            return [("left right", "look at other steps"), ("q", "back"), ("?", "help")]
        if self.at_hand.typed:
            return [("enter", "take it"), ("backspace", "last digit"), ("escape", "clear"), ("?", "help")]
        found = {offer.action: offer for offer in self.at_hand.offers()}
        return [(action.shown, found[action.id].label) for action in ACTIONS.values() if action.id in found]

    def _all_keys(self) -> list[Key]:
        offered = {offer.action: offer.what for offer in self.at_hand.offers()}
        keys = [
            (action.shown, action.help + (f" (now: {offered[action.id]})" if action.id in offered else ""))
            for action in ACTIONS.values()
        ]
        return [
            *keys,
            ("digits, enter", "the count is that; where a measure is asked for, it measures that"),
            ("escape", "forget what was typed or asked"),
        ]

    def _now(self) -> datetime:
        return cast("FinishingApp", self.app).clock.now().astimezone(UTC)


def _all_lines(seen: Glance) -> tuple[Line, ...]:
    """Return all the words there are: of the step, of what is done just now, and of where everything is."""
    now = (getattr(seen.face, "words", ""), getattr(seen.face, "rhythm", ""), getattr(seen.face, "halfway", ""))
    held = ", ".join(f"{one.name} {one.stitches}" for one in seen.holdings)
    found = (
        ("now", ". ".join(text.removesuffix(".") for text in now if text)),
        ("how it lies", " · ".join(text for text in (seen.posture, seen.needles) if text)),
        ("on needles and holders", held),
        ("tails", ", ".join(seen.tails)),
        ("markers", ", ".join(seen.markers)),
        ("holes", ", ".join(seen.holes)),
    )
    return (*seen.lines, *(Line(heading, text) for heading, text in found if text))
