"""The numbers of a garment under way: what a changed one changes later is shown before anything is taken."""

from functools import partial

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.commands import Replan
from finishing_tui.glance.numbers import NumberLine, Renumbering, number_lines, of_step, renumbering
from finishing_tui.screens.asking import Asking
from finishing_tui.screens.at_hand import AtHand
from finishing_tui.screens.numbers import NumbersScreen
from finishing_tui.screens.one_line import OneLine
from finishing_tui.widgets.choices import Choice

ABOUT = "A change is for steps of which nothing is done yet, and can be taken back."
"""What stands under the title."""


def numbers_of(at_hand: AtHand) -> NumbersScreen:
    """Return the numbers of a garment in hand, with the caret at the first that the step in the middle rests on."""
    return NumbersScreen(OfGarment(at_hand), ABOUT, of_step(at_hand.state, at_hand.shown_step))


class OfGarment:
    """The numbers of a garment in hand; a changed one is a changed plan."""

    def __init__(self, at_hand: AtHand) -> None:
        self._at_hand = at_hand

    def lines(self) -> tuple[NumberLine, ...]:
        """Return the numbers as they are."""
        plan = self._at_hand.state.plan
        return number_lines(plan.recipe, plan.size, plan.own)

    def take(self, screen: NumbersScreen, line: NumberLine, value: int | None) -> None:
        """Work out beside the keys what the value changes, and ask whether to take it."""
        screen.beside(partial(renumbering, self._at_hand.state, line, value), partial(self._asked, screen))

    def _asked(self, screen: NumbersScreen, found: Renumbering | FinishingError) -> None:
        if isinstance(found, FinishingError):
            screen.refuse(str(found))
            return
        lines = found.lines or ("no count that comes later differs",)
        answers = (
            Choice("take it"),
            Choice("take it, and write why"),
            Choice("leave it as it was"),
        )

        def answered(at: int | None) -> None:
            if at == 0:
                self._take(screen, found.command)
            elif at == 1:
                line = OneLine("Why?", "It stands in the record.", enter="take it", escape="leave it as it was")
                screen.app.push_screen(line, because)

        def because(why: str | None) -> None:
            if why is not None:
                self._take(screen, found.because(why))

        screen.app.push_screen(Asking(sentence(found.said), answers, lines), answered)

    def _take(self, screen: NumbersScreen, command: Replan) -> None:
        if self._at_hand.do(command):
            screen.taken(command.why)
            self._at_hand.say(command.why)
        else:
            screen.refuse(self._at_hand.said)
