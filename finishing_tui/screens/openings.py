"""What can be opened over the needles, and what is done with what comes back: one small function an opening.

To add one: a function here that takes the screen, and its line in ``OPENINGS``. Whatever is opened ends by asking the
screen to draw what came of it (``after``).
"""

from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType
from typing import TYPE_CHECKING, cast

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import Other, WriteNote
from finishing_tui.glance.all_words import all_lines
from finishing_tui.glance.techniques import others, techniques_for
from finishing_tui.glance.values import SpotFace
from finishing_tui.screens.asking import Asking
from finishing_tui.screens.at_hand import Opening
from finishing_tui.screens.counted import count
from finishing_tui.screens.help import HelpScreen
from finishing_tui.screens.keys_shown import all_keys
from finishing_tui.screens.ledger import LedgerScreen
from finishing_tui.screens.one_line import OneLine
from finishing_tui.screens.recount import RecountScreen
from finishing_tui.screens.rip_back import RipBackScreen
from finishing_tui.screens.technique import TechniqueScreen
from finishing_tui.screens.what_if import WhatIfScreen
from finishing_tui.widgets.choices import Choice

if TYPE_CHECKING:
    from finishing_tui.screens.app import FinishingApp
    from finishing_tui.screens.at_the_needles import AtTheNeedles

PATIENCE = 5.0
"""Seconds that putting it down waits for the disk, while nothing is known to be wrong."""

PATIENCE_IN_TROUBLE = 0.2
"""The same once saving has failed: then it is asked at once what to do."""


def _help(needles: "AtTheNeedles") -> None:
    seen, shapes = needles.seen(), isinstance(needles.seen().face, SpotFace)
    keys = all_keys(needles.at_hand)
    needles.app.push_screen(HelpScreen(seen.heading, all_lines(seen), keys, shapes=shapes, picture=seen.lying))


def _technique(needles: "AtTheNeedles") -> None:
    """Open the techniques of the step in the middle, or say why they cannot be read."""
    state = needles.at_hand.state
    try:
        helping = techniques_for(state, needles.at_hand.shown_step)
        screen = TechniqueScreen(helping, others(helping), left_handed=state.plan.hand == "left")
    except FinishingError as error:
        needles.at_hand.say(str(error))
    else:
        needles.app.push_screen(screen)


def _ledger(needles: "AtTheNeedles") -> None:
    needles.app.push_screen(LedgerScreen(needles.at_hand.hand))


def _recount(needles: "AtTheNeedles") -> None:
    at_hand = needles.at_hand
    typed, at_hand.typed = at_hand.typed, ""
    needles.app.push_screen(RecountScreen(at_hand, int(typed) if typed else None), lambda _: needles.after())


def _what_if(needles: "AtTheNeedles") -> None:
    at_hand = needles.at_hand
    typed, at_hand.typed = at_hand.typed, ""
    needles.app.push_screen(WhatIfScreen(at_hand, typed), lambda _: needles.after())


def _rip_back(needles: "AtTheNeedles") -> None:
    needles.app.push_screen(RipBackScreen(needles.at_hand), lambda _: needles.after())


def _numbers(needles: "AtTheNeedles") -> None:
    from finishing_tui.screens.numbers_at_hand import numbers_of  # noqa: PLC0415  (the audit; seldom needed here)

    needles.app.push_screen(numbers_of(needles.at_hand), lambda _: needles.after())


def _note(needles: "AtTheNeedles") -> None:
    def written(text: str | None) -> None:
        if text and needles.at_hand.do(WriteNote(text)):
            needles.at_hand.say("the note is kept")
        needles.after()

    hint = "For whoever picks this up again."
    needles.app.push_screen(OneLine("A note at this step", hint, enter="keep it", escape="no note"), written)


def _other_on_which(needles: "AtTheNeedles") -> None:
    at_hand = needles.at_hand
    offer = at_hand.offer("other")
    _which(
        needles,
        "Two were worked together on which needle?",
        () if offer is None else offer.sides,
        lambda side: at_hand.do(Other(side), "other"),
    )


def _counted_on_which(needles: "AtTheNeedles") -> None:
    at_hand = needles.at_hand
    sides = [(one.place, f"{one.text}, which should hold {one.expected}") for one in at_hand.countables()]
    _which(needles, f"{at_hand.typed} counted on which needle?", sides, lambda side: count(at_hand, side))


def _which(
    needles: "AtTheNeedles", question: str, sides: Sequence[tuple[str, str]], then: Callable[[str], object]
) -> None:
    """Ask which of ``sides`` (keys of places with their words) is meant, and go on with it."""

    def chosen(at: int | None) -> None:
        if at is not None:
            then(sides[at][0])
        needles.after()

    needles.app.push_screen(Asking(question, [Choice(text) for _, text in sides]), chosen)


def _put_down(needles: "AtTheNeedles") -> None:
    if needles.at_hand.look:
        needles.at_hand.hand.close()
        needles.dismiss()
        return
    line = OneLine(
        "Where did you leave it?",
        "One line for coming back, if you like: the bag, the row, what to watch.",
        enter="put it down",
        escape="go on",
    )

    def down(where: str | None) -> None:
        if where is None:
            needles.after()
            return
        hand = needles.at_hand.hand
        if hand.flush(PATIENCE_IN_TROUBLE if hand.trouble else PATIENCE):
            _leave(needles, where)
            return
        question = f"{hand.unsaved} not saved yet. {hand.trouble}".rstrip()
        leave = Choice("leave it unsaved", ("It goes into a rescue file, if there is room for one.",))
        answers = (Choice("stay", ("It is saved by itself as soon as it can be.",)), leave)
        needles.app.push_screen(
            Asking(question, answers), lambda at: _leave(needles, where) if at == 1 else needles.after()
        )

    needles.app.push_screen(line, down)


def _leave(needles: "AtTheNeedles", where: str) -> None:
    """Put the garment down; what cannot be saved even now is said at once, and again when the program ends."""
    app = cast("FinishingApp", needles.app)
    hand = needles.at_hand.hand
    app.put_down(where)
    needles.dismiss()
    if hand.given_up is not None:
        app.push_screen(Asking(str(hand.given_up), (Choice("back to the shelf"),)))


OPENINGS: Mapping[Opening, Callable[["AtTheNeedles"], None]] = MappingProxyType(
    {
        "help": _help,
        "technique": _technique,
        "ledger": _ledger,
        "recount": _recount,
        "what_if": _what_if,
        "rip_back": _rip_back,
        "numbers": _numbers,
        "note": _note,
        "put_down": _put_down,
        "other: which needle": _other_on_which,
        "count: which needle": _counted_on_which,
    }
)
"""How each thing that can be opened is opened."""
