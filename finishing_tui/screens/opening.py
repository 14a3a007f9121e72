"""Opening a garment: every way that can fail is a sentence on the screen below, never a traceback."""

from pathlib import Path
from shlex import quote

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.commands import ChoosePace
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import Damaged, InUse, OnlyToRead
from finishing_tui.garment.rescued import tidied
from finishing_tui.garment.shelf import seen
from finishing_tui.glance.coming_back import coming_back
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.looking import Looking
from finishing_tui.screens.program import Program
from finishing_tui.screens.rescuing import ask_about
from finishing_tui.screens.saved import Saved
from finishing_tui.widgets.choices import Choice

IN_USE = "this garment is open in another window; you can only look here"
ONLY_TO_READ = "this garment's folder is read-only; you can only look here"
RESCUED = "unsaved work from last time is waiting; until you decide you can only look"
"""Why a garment can only be looked at."""

FOLLOWS = "View only. This window follows the other."


def open_garment(app: Program, folder: Path) -> None:
    """Open the garment in ``folder`` at the needles, once it is settled what becomes of an earlier rescue file of it.

    In use elsewhere, offer to look only.
    """
    app.put_down()
    rescued = tidied(folder)
    if rescued.fits is not None:

        def open_again() -> None:
            open_garment(app, folder)

        ask_about(app, folder, rescued.fits, open_again, lambda: _look(app, folder, RESCUED))
    else:
        _pick_up(app, folder, " ".join(rescued.others))


def _pick_up(app: Program, folder: Path, said: str) -> None:
    waiting: list[AtTheNeedles] = []

    def changed() -> None:  # called from the journal's own thread
        for screen in waiting:
            screen.post_message(Saved())

    try:
        hand = InHand.open(folder, clock=app.clock, on_change=changed)
    except (InUse, OnlyToRead) as error:
        in_use = isinstance(error, InUse)
        why = IN_USE if in_use else ONLY_TO_READ
        look = Choice("look only", (FOLLOWS if in_use else "View only.",))
        said = f"{seen(folder).title} is open in another window. You can only look here." if in_use else str(error)
        question = ChoiceBox(said, (look, Choice("leave it")))
        app.push_screen(question, lambda chosen: _look(app, folder, why) if chosen == 0 else None)
        return
    except FinishingError as error:
        _sorry(app, folder, error)
        return
    back = coming_back(hand.state, app.now) if hand.state.sittings else None
    app.in_hand = hand
    hand.pick_up()
    if back is None:
        hand.do(ChoosePace(app.settings.pace))
    screen = AtTheNeedles(hand, back)
    if said:
        screen.talk.say(said)
    waiting.append(screen)
    app.push_screen(screen)


def _look(app: Program, folder: Path, why: str) -> None:
    try:
        hand = InHand.open(folder, look=True, clock=app.clock)
    except FinishingError as error:
        _sorry(app, folder, error)
        return
    take_over = (lambda: open_garment(app, folder)) if why == IN_USE else None
    app.push_screen(Looking(hand, why, take_over))


def _sorry(app: Program, folder: Path, error: FinishingError) -> None:
    """Say why a garment cannot be opened; a command that helps is told with its name, to be typed as it stands."""
    said = error.told(quote(folder.name)) if isinstance(error, Damaged) else str(error)
    app.push_screen(ChoiceBox(said, (Choice("back to the shelf"),)))
