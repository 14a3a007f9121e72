"""What the keys do to a garment in hand, without any drawing: the conversation at the needles.

It holds what is not part of the garment: digits being typed, another step that is looked at, a question that is asked
twice. A key leads to a command, or to something that must be opened first; the screen opens it.
"""

from collections.abc import Callable
from typing import TYPE_CHECKING, Literal

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import (
    ChoosePace,
    Command,
    Count,
    Finish,
    LeaveOut,
    Measure,
    Other,
    Press,
    Refusal,
    TakeUp,
)
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.state import State
from finishing_tui.glance.actions import ACTIONS, ActionId
from finishing_tui.glance.counting import MOST_DIGITS, Countable, asks_for_value, countables, meaning
from finishing_tui.glance.offers import Offer, offers
from finishing_tui.glance.recounts import recount_view
from finishing_tui.glance.rings import Ring, ring

if TYPE_CHECKING:
    from finishing_tui.glance.following import Following

Opening = Literal[
    "recount", "rip back", "note", "technique", "help", "put down", "which needle: other", "which needle: count"
]
"""What must be opened before anything can be decided."""

LOOKING_ONLY = "Another window has this garment in hand; here it can only be looked at"


class AtHand:
    """A garment in hand and the keys pressed on it; ``said`` is the last sentence, ``alarm``: it is a refusal."""

    def __init__(self, hand: InHand, *, look: bool = False) -> None:
        self.hand = hand
        self.look = look
        self.typed = ""
        self.looking: int | None = None
        self.said = ""
        self.alarm = False
        self.rings: Ring | Literal["refused"] | None = None
        self.follows: Following | None = None
        self._again: tuple[str, State, Command | None] | None = None

    @property
    def state(self) -> State:
        """The garment's state right now."""
        return self.hand.state

    @property
    def shown_step(self) -> int | None:
        """The step in the middle of the screen, counted from 0; None when all are done."""
        return self.state.current if self.looking is None else self.looking

    def offers(self) -> tuple[Offer, ...]:
        """Return what may be done now."""
        return offers(self.state, self.looking)

    def meaning(self) -> str:
        """Return what the digits typed so far would mean."""
        return meaning(self.state)

    def countables(self) -> tuple[Countable, ...]:
        """Return what could be counted now."""
        return countables(self.state)

    def digit(self, sign: str) -> None:
        """Take a digit, or the point of a measure."""
        self._quiet()
        self.looking = None
        if self.look:
            self._refuse(LOOKING_ONLY)
        elif sign == "." and (not asks_for_value(self.state) or "." in self.typed):
            self._refuse("a count is a whole number")
        elif len(self.typed) < MOST_DIGITS:
            self.typed += sign
        else:
            self._refuse(f"a number has at most {MOST_DIGITS} digits here")

    def clear(self) -> None:
        """Forget digits, questions, and looking at another step."""
        self._quiet()
        self.typed = ""
        self.looking = None
        self._again = None

    def ask(self, action: ActionId) -> Opening | None:
        """Do what the key of ``action`` asks for; return what must be opened for it, if anything."""
        self._quiet()
        again, self._again = self._again, None
        if again is not None and again[0] == action and again[1] is self.state and not self.typed:
            if again[2] is None:
                self._done(self.hand.take_back(), action)
            else:
                self.do(again[2], action)
            return None
        if action in {"look_back", "look_on"}:
            self._turn(-1 if action == "look_back" else 1)
            return None
        if action == "technique":
            return self._technique()
        if action in {"help", "put_down"}:
            return "help" if action == "help" else "put down"
        if self.look:
            self._refuse(LOOKING_ONLY)
            return None
        return self._acts[action](self)

    def do(self, command: Command, action: ActionId | Literal[""] = "") -> bool:
        """Carry out ``command``; ``action``: the key that asked, so that the same key may answer a question."""
        self._quiet()
        before = self.state
        refusal = self.hand.do(command)
        self._done(refusal, action)
        if refusal is None:
            self.rings = ring(before, self.state)
            self.follows = self._follows(before) if isinstance(command, Count) else None
        return refusal is None

    def _follows(self, before: State) -> "Following | None":
        from finishing_tui.glance.following import following  # noqa: PLC0415  (the audit; only a count needs it)

        return following(before, self.state)

    def say(self, text: str) -> None:
        """Say something that is no refusal."""
        self.said, self.alarm = sentence(text), False

    def count(self, place: str) -> Opening | None:
        """Take the typed digits as the count of ``place`` (a section of an edge, or what is under way, when empty)."""
        counted, self.typed = int(self.typed), ""
        found = self.countables()
        if not place and found and found[0].section:
            return self._recount(counted)
        text = next((one.text for one in found if one.place == place), "")
        if self.do(Count(counted, place)):
            self.say(f"{counted} counted: {text}" if text else f"{counted} counted")
        return None

    def _recount(self, counted: int) -> Opening | None:
        try:
            view = recount_view(self.state, counted)
        except FinishingError as error:
            self._refuse(str(error))
            return None
        if not view.matches:
            self.typed = str(counted)
            return "recount"
        if self.do(Count(counted)):
            self.say(f"{counted} counted, as planned; {view.total} on the needle in all")
        return None

    def _press(self) -> None:
        self._return()
        self.do(Press(), "press")

    def _other(self) -> Opening | None:
        self._return()
        sides = next((offer.sides for offer in self.offers() if offer.action == "other"), ())
        if len(sides) > 1:
            return "which needle: other"
        self.do(Other(sides[0][0] if sides else ""), "other")
        return None

    def _take_back(self) -> None:
        if self.typed:
            self.typed = self.typed[:-1]
            return
        self._return()
        if self.state.top and self.state.top_label:
            self._again = ("take_back", self.state, None)
            self.say(f"backspace again takes back: {self.state.top_label}")
            return
        self._done(self.hand.take_back(), "take_back")

    def _finish(self) -> Opening | None:
        if self.typed:
            return self._typed()
        offer = next((offer for offer in self.offers() if offer.action == "finish"), None)
        if offer is not None and offer.command is not None:
            command = offer.command
        else:  # a step that is looked at is refused as such, and the one under the needles is left alone
            command = Finish() if self.looking is None else TakeUp(self.looking)
        if self.do(command, "finish"):
            self.looking = None
        return None

    def _typed(self) -> Opening | None:
        if asks_for_value(self.state):
            value, self.typed = self.typed, ""
            if self.do(Measure(value)):
                self.say(f"{value} written down")
            return None
        found = self.countables()
        if not found:
            self.typed = ""
            self._refuse("there is nothing to count here")
            return None
        return "which needle: count" if len(found) > 1 else self.count(found[0].place)

    def _start_recount(self) -> Opening | None:
        if self.typed:
            return self._typed()
        self._return()
        found = self.countables()
        if not found:
            self._refuse("there is nothing to count here")
            return None
        if found[0].section:
            return "recount"
        self.say(f"count {' or '.join(one.text for one in found)}, type the number, then enter")
        return None

    def _rip_back(self) -> Opening | None:
        if not self.state.order:
            self._refuse("nothing was worked yet that could be taken out")
            return None
        return "rip back"

    def _put_back(self) -> None:
        self._return()
        self._done(self.hand.put_back(), "put_back")

    def _pace(self) -> None:
        offer = next((offer for offer in self.offers() if offer.action == "pace"), None)
        if offer is None or not isinstance(offer.command, ChoosePace):
            self._refuse("a pace is chosen where loops are picked up along an edge")
        elif self.do(offer.command, "pace"):
            self.say(f"a press now stands for one {self.state.pace}")

    def _mirror(self) -> None:
        offer = next((offer for offer in self.offers() if offer.action == "mirror"), None)
        if offer is None or offer.command is None:
            self._refuse("there is no second side about to be begun that could go another way than planned")
        elif self.do(offer.command, "mirror"):
            self.say(f"now {offer.label}")

    def _technique(self) -> Opening | None:
        if self.shown_step is None:
            self._refuse("every step is done; look at one (left) for the techniques that help at it")
            return None
        return "technique"

    def _note(self) -> Opening:
        return "note"

    def _leave_out(self) -> None:
        step = self.shown_step
        if step is None:
            self._refuse("every step is done; nothing is left to leave out")
        elif self.do(LeaveOut(step), "leave_out"):
            self.looking = None

    _acts: dict[ActionId, Callable[["AtHand"], Opening | None]] = {  # noqa: RUF012  (never changed)
        "press": _press,
        "other": _other,
        "take_back": _take_back,
        "finish": _finish,
        "recount": _start_recount,
        "rip_back": _rip_back,
        "put_back": _put_back,
        "pace": _pace,
        "mirror": _mirror,
        "note": _note,
        "leave_out": _leave_out,
    }

    def _turn(self, by: int) -> None:
        steps, here = len(self.state.steps), self.shown_step
        at = (steps if here is None else here) + by
        if not 0 <= at < steps:
            self._refuse("that is the last step" if by > 0 else "that is the first step")
            return
        self.looking = None if at == self.state.current else at

    def _return(self) -> None:
        self.looking = None

    def _done(self, refusal: Refusal | None, action: ActionId | Literal[""]) -> None:
        if refusal is None:
            return
        self._refuse(refusal.sentence)
        if refusal.again is not None and action != "":
            self._again = (action, self.state, refusal.again)
            if "again" not in refusal.sentence.lower():
                self.said = f"{self.said} {ACTIONS[action].shown.capitalize()} again does it all the same."

    def _refuse(self, text: str) -> None:
        self.said, self.alarm, self.rings = sentence(text), True, "refused"

    def _quiet(self) -> None:
        self.said, self.alarm, self.rings = "", False, None
