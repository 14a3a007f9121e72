"""At the needles: one glance drawn, every key handed to the conversation, and what it asks put over them."""

from typing import Any, Literal

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Container
from textual.events import Key

from finishing_tui.craft.words import sentence
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.coming_back import ComingBack
from finishing_tui.glance.glancing import look_at
from finishing_tui.glance.rings import Ring
from finishing_tui.glance.spoken import spoken
from finishing_tui.glance.values import Glance, ItemFace, MessageFace, RoundFace, ValueFace
from finishing_tui.screens.asks import put
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.coming_back import ComingBackScreen
from finishing_tui.screens.keys import bindings, digits, keys_of
from finishing_tui.screens.keys_shown import foot
from finishing_tui.screens.leaving import Leaving
from finishing_tui.screens.program import program
from finishing_tui.screens.saved import Saved
from finishing_tui.talk.acts import ACTS
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.counting import meaning
from finishing_tui.talk.dispatch import ask_for, begin
from finishing_tui.talk.held import Beat
from finishing_tui.talk.keys import USUAL
from finishing_tui.widgets.ahead import Ahead
from finishing_tui.widgets.choices import Choice
from finishing_tui.widgets.faces import VIEWS, FaceView
from finishing_tui.widgets.faces.base import Typed
from finishing_tui.widgets.holdings import Holdings
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.step_words import StepWords, ToLay
from finishing_tui.widgets.top import Top

FEW_ITEMS = 2
"""So many items of a checklist leave room below them."""


class AtTheNeedles(Leaving[None]):
    """The garment in hand; ``look``: why it can only be looked at."""

    CSS_PATH = "at_the_needles.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *bindings("needles", {**{f"needles.{one.id}": f"ask('{one.id}')" for one in ACTS}, "needles.clear": "clear"}),
        *digits("digit('{}')"),
        Binding("full_stop", "digit('.')", show=False, id="digit.point"),
    ]

    def __init__(self, hand: InHand, back: ComingBack | None, look: str = "") -> None:
        super().__init__()
        self.talk = Talk(hand, look, USUAL)
        self._back = back
        self._face: FaceView[Any] | None = None
        self._beat = Beat()
        self._held: tuple[int, int] | None = None  # by the key that is being taken
        self._told = ""  # what the notice says
        self._heard: Glance | None = None  # what there was to see when it was last spoken of

    def compose(self) -> ComposeResult:
        """Lay out the head, the face, what is held, the words and the keys."""
        yield Top()
        yield Container(id="face")
        yield ToLay()
        yield Ahead()
        yield Holdings()
        yield StepWords()
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show the garment, and what a knitter coming back must know."""
        self.talk.keys = keys_of(self)
        self.draw()
        self.tell_trouble()
        self.set_interval(60, self.draw)  # the minutes of the sitting
        begin(self.talk)
        if self._back is not None:
            self.app.push_screen(ComingBackScreen(self._back, self.talk), self._came_back)
        else:
            self._speak(None)
            self.talk.asks(None)
            self._put()

    def seen(self) -> Glance:
        """Return all there is to see now."""
        talk = self.talk
        return look_at(talk.state, talk.shown_step, program(self).now, program(self).wishes, lasted=talk.hand.lasted)

    def draw(self) -> None:
        """Draw what there is to see now; every widget draws only what changed."""
        talk, seen = self.talk, self.seen()
        roomy, help_key = _is_roomy(seen), talk.keys.shown("needles.help")
        free = roomy or isinstance(seen.face, RoundFace)
        self.query_one(Top).show(seen, talk.hand.unsaved, look=bool(talk.read_only), care=help_key, roomy=roomy)
        typed = Typed(talk.typed, meaning(talk.state, talk.keys)) if talk.typed else None
        self._face_for(seen).show(seen.face, typed, seen.digits, help_key)
        self.query_one(Holdings).show(seen)
        self.query_one(ToLay).show(seen.lying)
        self.query_one(Ahead).show(seen.list)
        self.query_one(StepWords).show(seen.lines, seen.lying, roomy=roomy, free=free, help_key=help_key)
        self.query_one(KeyLine).show(foot(talk))
        self._say()

    def after(self) -> None:
        """Draw what a key or an answer led to, ring for it, and put over the needles what is asked next."""
        rings, self.talk.rings = self.talk.rings, None
        if rings is not None:
            program(self).ring_for(rings)
        self._speak(rings)
        self.draw()
        if self.talk.ends:
            self._leave()
        else:
            self._put()

    def on_key(self, event: Key) -> None:
        """Hear when a key came, before what it is bound to is done: a key held down is not knitting."""
        self._held = self._beat.came(event.key, program(self).clock.came(event.time), self.talk.hand.known)

    def action_ask(self, action: str) -> None:
        """Do what a key asks for; one that is held on where it was stopped says and rings nothing more."""
        stopped = self.talk.held
        if self._held is None or stopped is None or not stopped.stopped or stopped.since != self._held[0]:
            ask_for(self.talk, action, self._held)
            self.after()

    def action_digit(self, sign: str) -> None:
        """Take a digit."""
        self.talk.digit(sign)
        self.after()

    def action_clear(self) -> None:
        """Forget what was typed or asked."""
        self.talk.clear()
        self.after()

    def on_saved(self, _: Saved) -> None:
        """Take the mark away from what is on the disk now, or say what keeps it off."""
        self.query_one(Top).mark(self.talk.hand.unsaved)
        self._say()

    def _put(self) -> None:
        if self.talk.asked is not None:
            put(self, self.talk, self.talk.asked, self.seen, self.after)

    def _leave(self) -> None:
        """Put the garment down; what cannot be saved even now is said at once, and again when the program ends."""
        hand = self.talk.hand
        if self.talk.read_only:
            hand.close()
        else:
            program(self).put_down(self.talk.where)
        self.dismiss()
        if hand.given_up is not None:
            self.app.push_screen(ChoiceBox(str(hand.given_up), (Choice("back to the shelf"),)))

    def _say(self) -> None:
        talk = self.talk
        notice, told = self.query_one(Notice), talk.said or talk.hand.trouble
        notice.show(told, alarm=talk.alarm or not talk.said)
        if told != self._told:
            self._told = told
            self.query_one(StepWords).lie_under(notice.tall(self.app.size.width))

    def tell_trouble(self) -> None:
        """Say once what waits to be said, such as why nothing is spoken."""
        app = program(self)
        trouble, app.to_say = app.to_say, ""
        if trouble:
            self.talk.say(f"{self.talk.said} {sentence(trouble)}".strip())
            self._say()

    def _speak(self, rings: Ring | Literal["refused"] | None) -> None:
        """Have spoken what a key led to, as far as the settings want it."""
        app, talk = program(self), self.talk
        if (how := app.settings.speech) != "off":
            now, was = self.seen(), self._heard
            said, refused, aloud = talk.said, talk.alarm, talk.aloud
            app.speak(spoken(was, now, how, ring=rings, said=said, refused=refused, aloud=aloud, back=talk.took_back))
            self._heard = now

    def _came_back(self, counted: int | None) -> None:
        if counted is not None:
            self.talk.typed, self.talk.returned = str(counted), True
            ask_for(self.talk, "finish")
        else:
            self.talk.asks(None)
        self.after()

    def _face_for(self, seen: Glance) -> FaceView[Any]:
        wanted = VIEWS[type(seen.face)]
        if not isinstance(self._face, wanted):
            if self._face is not None:
                self._face.remove()
            self._face = wanted()
            self.query_one("#face", Container).mount(self._face)
        return self._face


def _is_roomy(seen: Glance) -> bool:
    """Return whether even the lowest screen has room below the face; a list makes room for a child's caution."""
    if isinstance(seen.face, ItemFace):
        return len(seen.face.items) <= FEW_ITEMS or any(line.always for line in seen.lines)
    return isinstance(seen.face, ValueFace | MessageFace)
