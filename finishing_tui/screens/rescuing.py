"""What could not be saved in an earlier sitting: asked about before its garment is picked up again."""

from collections.abc import Callable
from pathlib import Path

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.rescued import Fitting, take_in, throw_away
from finishing_tui.screens.choice_box import ChoiceBox
from finishing_tui.screens.program import Program
from finishing_tui.widgets.choices import Choice

CHOICES = (
    Choice("add it"),
    Choice("leave it for later", ("Until then you can only look.",)),
    Choice("throw it away", ("You lose what you counted then.",)),
)
"""What may become of the entries; the first is the safest for the count."""

SURE = "Throw away what you counted then?"
"""Asked once more, since there is no way back from it: no number that is typed does it."""

SURELY = (Choice("leave it for later"), Choice("throw it away"))


def ask_about(
    app: Program, folder: Path, fitting: Fitting, decided: Callable[[], None], left: Callable[[], None]
) -> None:
    """Ask what becomes of a rescue file of the garment in ``folder``.

    ``decided`` is called once it is taken in or thrown away, ``left`` where it is left for later. Whoever leaves the
    question stays where she was, and nothing is changed.
    """

    def chosen(at: int | None) -> None:
        if at == 1:
            left()
        elif at == 0:
            _done(app, folder, fitting, decided, take=True)
        elif at is not None:
            app.push_screen(ChoiceBox(SURE, SURELY, fitting.told[:1], numbered=False), sure)

    def sure(at: int | None) -> None:
        if at == 0:
            left()
        elif at is not None:
            _done(app, folder, fitting, decided, take=False)

    app.push_screen(ChoiceBox(fitting.question, CHOICES, fitting.told, unasked=True), chosen)


def _done(app: Program, folder: Path, fitting: Fitting, decided: Callable[[], None], *, take: bool) -> None:
    try:
        if take:
            take_in(folder, fitting)
        else:
            throw_away(fitting)
    except FinishingError as error:
        app.push_screen(ChoiceBox(str(error), (Choice("back to the shelf"),)))
        return
    decided()
