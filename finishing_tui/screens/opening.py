"""Opening a garment: every way that can fail is a sentence on the screen below, never a traceback."""

from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import InUse
from finishing_tui.glance.coming_back import coming_back
from finishing_tui.screens.asking import Asking
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.saved import Saved
from finishing_tui.widgets.choices import Choice

if TYPE_CHECKING:
    from finishing_tui.screens.app import FinishingApp


def open_garment(app: "FinishingApp", folder: Path) -> None:
    """Open the garment in ``folder`` at the needles; in use elsewhere, offer to look only."""
    app.put_down()
    waiting: list[AtTheNeedles] = []

    def changed() -> None:  # called from the journal's own thread
        for screen in waiting:
            screen.post_message(Saved())

    try:
        hand = InHand.open(folder, clock=app.clock, on_change=changed)
    except InUse as error:
        question = Asking(str(error), (Choice("look only", ("Nothing can be changed here.",)), Choice("leave it")))
        app.push_screen(question, lambda chosen: _look(app, folder) if chosen == 0 else None)
        return
    except FinishingError as error:
        app.push_screen(Asking(str(error), (Choice("back to the shelf"),)))
        return
    back = coming_back(hand.state, _now(app)) if hand.state.sittings else None
    app.in_hand = hand
    hand.pick_up()
    screen = AtTheNeedles(hand, back)
    waiting.append(screen)
    app.push_screen(screen)


def _look(app: "FinishingApp", folder: Path) -> None:
    try:
        hand = InHand.open(folder, look=True, clock=app.clock)
    except FinishingError as error:
        app.push_screen(Asking(str(error), (Choice("back to the shelf"),)))
        return
    app.push_screen(AtTheNeedles(hand, None, look=True))


def _now(app: "FinishingApp") -> datetime:
    return app.clock.now().astimezone(UTC)
