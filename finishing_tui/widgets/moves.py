"""The moves one pair of a graft is made of, in the order of the hands: nobody should have to know them by heart."""

from collections.abc import Sequence
from itertools import groupby

from textual.content import Content

from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows

NARROW = 60
"""Below so many columns the moves of one needle stand together, so that all of them have room."""


class MoveLines(Rows):
    """Every move on a line of its own, numbered; where it is narrow, those of a needle after one another."""

    def __init__(self) -> None:
        super().__init__(id="moves")
        self._moves: tuple[str, ...] = ()

    def show(self, moves: tuple[str, ...]) -> None:
        """Show ``moves``; none take no room."""
        self.display = bool(moves)
        if moves != self._moves:
            self._moves = moves
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the moves."""
        del height
        if width < NARROW:
            return [line for one in _by_needle(self._moves) for line in wrapped(plain(one, "$foreground"), width)]
        lines: list[Content] = []
        for number, move in enumerate(self._moves, 1):
            first, *more = wrapped(plain(move, "$foreground"), width - 3)
            lines += [plain(f"{number}  ", "bold $mark") + first, *(plain("   ") + line for line in more)]
        return lines


def _by_needle(moves: Sequence[str]) -> list[str]:
    """Return the moves of one needle that follow one another in one sentence."""
    found = []
    for needle, of in groupby((move.partition(": ") for move in moves), key=lambda parts: parts[0]):
        found.append(f"{needle}: {'; '.join(rest.removesuffix('.') for _, _, rest in of)}.")
    return found
