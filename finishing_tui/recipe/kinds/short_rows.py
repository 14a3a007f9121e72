"""The short rows of ``work``: rows that turn before the end, further from it each time; every stitch stays live.

They leave the slope that stepped bind-offs would, without binding off (``craft.shoulders``).
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from finishing_tui.craft.words import plural
from finishing_tui.recipe.counts import count_of
from finishing_tui.recipe.keys import Count, Written
from finishing_tui.recipe.kinds.base import CannotBegin, Here

MOST_TURNS = 500
"""Nobody turns more often than this on one side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShortRows(Written):
    """Rows that turn before the end, in turn on both sides; they come first in their step."""

    first: Count
    """Stitches left unworked at the first turn, on each side."""
    step: Count
    """How many more are left at each later turn."""
    times: Count
    """Turns on each side."""

    def said(self, here: Here, held: Callable[[int], int], many: int) -> Iterator[tuple[int, str]]:
        """Yield (row, words) for a step of ``many`` rows; ``held``: the stitches there are when a row begins.

        After the turns come two rows that pick them up, since each passes those of one side only. Raises
        ``CannotBegin`` when the stitches or the rows are too few.
        """
        first, step, times = (count_of(count, here.numbers, here.size) for count in (self.first, self.step, self.times))
        if first < 1 or not 1 <= times <= MOST_TURNS or (step < 1 < times):
            raise CannotBegin(
                f"short rows leave 1 stitch or more each time and turn 1 to {MOST_TURNS} times a side,"
                f" not {first}, then {step} more, {times} times"
            )
        turns, most = 2 * times, first + (times - 1) * step
        if many < turns + 2:
            raise CannotBegin(
                f"{plural(times, 'turn')} a side take {turns + 2} rows, two of them to pick the turns up,"
                f" and {many} are given",
                kind="short rows",
                expected=turns + 2,
                found=many,
            )
        near = far = 0
        for row in range(1, turns + 1):
            near, far = far, first + (row - 1) // 2 * step
            if held(row) <= near + far:
                raise CannotBegin(
                    f"row {row} leaves {far} unworked at one end and {near} at the other, and there are {held(row)};"
                    " 1 at least must be worked between them",
                    kind="short rows",
                    expected=near + far + 1,
                    found=held(row),
                )
            yield row, f"work {held(row) - near - far}, turn; unworked: {far} at this end, {near} at the other"
        yield turns + 1, f"work to the end and pick up the turns on the way; unworked: {most} at the other end"
        yield turns + 2, f"work all {held(turns + 2)} and pick up the turns that are left; every stitch is live"
