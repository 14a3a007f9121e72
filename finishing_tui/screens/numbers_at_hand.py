"""The numbers of a garment under way: what a changed one changes later is shown before anything is taken."""

from collections.abc import Sequence

from finishing_tui.glance.numbers import NumberLine
from finishing_tui.screens.boxes import boxed
from finishing_tui.screens.numbers import NumbersScreen
from finishing_tui.talk.asks import SetNumber, WorkOut
from finishing_tui.talk.conversation import Talk


def numbers_of(talk: Talk, ask: SetNumber) -> NumbersScreen:
    """Return the numbers that are asked for."""
    return NumbersScreen(_OfGarment(talk, ask), " ".join(ask.told), ask.at)


class _OfGarment:
    """The numbers of a garment in hand; a changed one is a changed plan."""

    def __init__(self, talk: Talk, ask: SetNumber) -> None:
        self._talk = talk
        self._ask = ask

    def lines(self) -> Sequence[NumberLine]:
        """Return the numbers as they are."""
        return self._ask.lines

    def take(self, screen: NumbersScreen, line: NumberLine, value: int | None) -> None:
        """Work out beside the keys what the value changes, and ask whether to take it."""
        self._talk.answer(line, value)
        self._follow(screen)

    def _follow(self, screen: NumbersScreen) -> None:
        """Go on with what is asked now: over the numbers, or by them."""
        talk, ask = self._talk, self._talk.asked
        if isinstance(ask, WorkOut):
            screen.beside(ask.find, lambda found: self._found(screen, found))
        elif isinstance(ask, SetNumber):
            self._ask = ask
            if talk.alarm:
                screen.refuse(talk.said)
            elif talk.said:
                screen.taken(talk.said)
        elif ask is not None:
            boxed(screen, talk, ask, lambda: self._follow(screen))

    def _found(self, screen: NumbersScreen, found: object) -> None:
        self._talk.answer(found)
        self._follow(screen)
