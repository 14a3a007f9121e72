"""At the needles: one glance drawn, and every key handed to the conversation in ``at_hand``."""

from datetime import UTC, datetime
from typing import TYPE_CHECKING, Any, Literal, cast

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Container

from finishing_tui.craft.words import sentence
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.plan import Plan
from finishing_tui.glance.actions import ACTIONS, ActionId
from finishing_tui.glance.coming_back import ComingBack
from finishing_tui.glance.glancing import look_at
from finishing_tui.glance.rings import Ring
from finishing_tui.glance.spoken import spoken
from finishing_tui.glance.values import Face, Glance, ItemFace, MessageFace, ValueFace
from finishing_tui.screens.asked import ask
from finishing_tui.screens.asking import Asking
from finishing_tui.screens.at_hand import AtHand, Opening
from finishing_tui.screens.coming_back import ComingBackScreen
from finishing_tui.screens.keys import bindings, digits, keys_of
from finishing_tui.screens.keys_shown import foot
from finishing_tui.screens.leaving import Leaving
from finishing_tui.screens.openings import OPENINGS
from finishing_tui.screens.saved import Saved
from finishing_tui.widgets.choices import Choice
from finishing_tui.widgets.faces import VIEWS, FaceView
from finishing_tui.widgets.faces.base import Typed
from finishing_tui.widgets.holdings import Holdings
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.step_words import StepWords, ToLay
from finishing_tui.widgets.top import Top

if TYPE_CHECKING:
    from finishing_tui.screens.app import FinishingApp

FEW_ITEMS = 2
"""So many items of a checklist leave room below them."""


class AtTheNeedles(Leaving[None]):
    """The garment in hand; ``look``: why it can only be looked at."""

    CSS_PATH = "at_the_needles.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *bindings("needles", {**{f"needles.{one}": f"ask('{one}')" for one in ACTIONS}, "needles.clear": "clear"}),
        *digits("digit('{}')"),
        Binding("full_stop", "digit('.')", show=False, id="digit.point"),
    ]

    def __init__(self, hand: InHand, back: ComingBack | None, look: str = "") -> None:
        super().__init__()
        self.at_hand = AtHand(hand, look)
        self._back = back
        self._face: FaceView[Any] | None = None
        self._heard: Glance | None = None  # what there was to see when it was last spoken of

    def compose(self) -> ComposeResult:
        """Lay out the head, the face, what is held, the words and the keys."""
        yield Top()
        yield Container(id="face")
        yield ToLay()
        yield Holdings()
        yield StepWords()
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show the garment, and what a knitter coming back must know."""
        self.at_hand.keys = keys_of(self)
        self.draw()
        self.tell_trouble()
        self.set_interval(60, self.draw)  # the minutes of the sitting
        if not self.at_hand.look and (plan := self.at_hand.hand.changed_plan()) is not None:
            self._offer_change(plan)
        if self._back is not None:
            self.app.push_screen(ComingBackScreen(self._back, self.at_hand), self._came_back)
        else:
            self._speak(None)

    def seen(self) -> Glance:
        """Return all there is to see now."""
        wishes = cast("FinishingApp", self.app).wishes
        at_hand = self.at_hand
        return look_at(at_hand.state, at_hand.shown_step, self._now(), wishes, lasted=at_hand.hand.lasted)

    def draw(self) -> None:
        """Draw what there is to see now; every widget draws only what changed."""
        at_hand, seen = self.at_hand, self.seen()
        self.query_one(Top).show(seen, at_hand.hand.unsaved, look=bool(at_hand.look))
        typed = Typed(at_hand.typed, at_hand.meaning()) if at_hand.typed else None
        self._face_for(seen).show(seen.face, typed)
        self.query_one(Holdings).show(seen)
        self.query_one(ToLay).show(seen.lying)
        help_key = at_hand.keys.shown("needles.help")
        self.query_one(StepWords).show(seen.lines, seen.lying, roomy=_is_roomy(seen.face), help_key=help_key)
        self.query_one(KeyLine).show(foot(at_hand))
        self._say()

    def after(self) -> None:
        """Draw what a key led to, ring for it, and ask what is to be done about what it changes further on."""
        rings, self.at_hand.rings = self.at_hand.rings, None
        if rings is not None:
            cast("FinishingApp", self.app).ring_for(rings)
        self._speak(rings)
        self.draw()
        self._follow()

    def action_ask(self, action: ActionId) -> None:
        """Do what a key asks for."""
        self._open(ask(self.at_hand, action))

    def action_digit(self, sign: str) -> None:
        """Take a digit."""
        self.at_hand.digit(sign)
        self.after()

    def action_clear(self) -> None:
        """Forget what was typed or asked."""
        self.at_hand.clear()
        self.after()

    def on_saved(self, _: Saved) -> None:
        """Take the mark away from what is on the disk now, or say what keeps it off."""
        self.query_one(Top).mark(self.at_hand.hand.unsaved)
        self._say()

    def _open(self, opening: Opening | None) -> None:
        if opening is not None:
            OPENINGS[opening](self)
        self.after()

    def _say(self) -> None:
        at_hand = self.at_hand
        self.query_one(Notice).show(at_hand.said or at_hand.hand.trouble, alarm=at_hand.alarm or not at_hand.said)

    def tell_trouble(self) -> None:
        """Say why nothing is spoken, once."""
        app = cast("FinishingApp", self.app)
        trouble, app.speech_trouble = app.speech_trouble, ""
        if trouble:
            self.at_hand.say(f"{self.at_hand.said} {sentence(trouble)}".strip())
            self._say()

    def _speak(self, rings: Ring | Literal["refused"] | None) -> None:
        """Have spoken what a key led to, as far as the settings want it."""
        app, at_hand = cast("FinishingApp", self.app), self.at_hand
        if (how := app.settings.speech) != "off":
            now, was = self.seen(), self._heard
            said, refused, aloud = at_hand.said, at_hand.alarm, at_hand.aloud
            app.speak(spoken(was, now, how, ring=rings, said=said, refused=refused, aloud=aloud, back=at_hand.back))
            self._heard = now

    def _offer_change(self, plan: Plan) -> None:
        """Name what another recipe or garment file changes, and ask whether that is to be taken."""
        from finishing_tui.glance.plan_changes import plan_change  # noqa: PLC0415  (the audit: only after a change)

        change = plan_change(self.at_hand.state, plan)

        def chosen(at: int | None) -> None:
            if at == 1:
                self.at_hand.do(change.command)
            self.after()

        question = "The recipe or the garment's file was changed since it was taken."
        stay = Choice("go on by the plan there is", (change.refusal,) if change.refusal else ())
        take = Choice("take the change", ("For the steps that are not begun yet.",))
        self.app.push_screen(Asking(question, [stay] if change.refusal else [stay, take], change.lines), chosen)

    def _came_back(self, counted: int | None) -> None:
        if counted is not None:
            self.at_hand.typed = str(counted)
            self._open(ask(self.at_hand, "finish"))
        else:
            self.after()

    def _follow(self) -> None:
        follows, self.at_hand.follows = self.at_hand.follows, None
        if follows is None:
            return

        first = [Choice(follows.undo)] if follows.undo else []

        def chosen(at: int | None) -> None:
            if at is not None and at < len(first):
                self.at_hand.take_back()
            elif at is not None and self.at_hand.do(follows.ways[at - len(first)].command):
                self.at_hand.say(f"{self.at_hand.state.top_label}: noted")
            self.after()

        ways = [*first, *(Choice(way.text, (way.look,)) for way in follows.ways)]
        self.app.push_screen(Asking("This changes what comes later", ways, follows.lines), chosen)

    def _face_for(self, seen: Glance) -> FaceView[Any]:
        wanted = VIEWS[type(seen.face)]
        if not isinstance(self._face, wanted):
            if self._face is not None:
                self._face.remove()
            self._face = wanted()
            self.query_one("#face", Container).mount(self._face)
        return self._face

    def _now(self) -> datetime:
        return cast("FinishingApp", self.app).clock.now().astimezone(UTC)


def _is_roomy(face: Face) -> bool:
    """Return whether a face leaves room below it even on the lowest screen."""
    return isinstance(face, ValueFace | MessageFace) or (isinstance(face, ItemFace) and len(face.items) <= FEW_ITEMS)
