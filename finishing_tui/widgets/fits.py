"""The sizes with what their pieces hold, the nearest to what was counted first."""

from collections.abc import Sequence
from dataclasses import dataclass

from textual.content import Content

from finishing_tui.widgets.plain import plain
from finishing_tui.widgets.rows import Rows


@dataclass(frozen=True, slots=True)
class SizeHeld:
    """A size and the stitches it has at each place, each with what was counted there, None where nothing was."""

    size: str
    held: tuple[tuple[int, int | None], ...]


class Fits(Rows):
    """A line a size, as many as there is room for: what agrees and what differs are told apart by shape."""

    def __init__(self) -> None:
        super().__init__(id="fits")
        self._sizes: tuple[SizeHeld, ...] = ()

    def show(self, sizes: Sequence[SizeHeld]) -> None:
        """Show ``sizes``, the nearest first."""
        self._sizes = tuple(sizes)
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the lines under a heading; its figures stand in the order of the places above."""
        wide = max((plain(one.size).cell_length for one in self._sizes), default=0)
        counted = any(held is not None for one in self._sizes for _, held in one.held)
        title = "the nearest sizes: = as you counted, ≠ not" if counted else "what each size holds, in the order above"
        lines = [plain(title, "bold $act")]
        for one in self._sizes:
            line = plain(one.size.ljust(wide), "bold $foreground")
            for has, held in one.held:
                sign, style = ("=", "bold $good") if has == held else (" " if held is None else "≠", "$foreground")
                line += plain(f"{has:>8}{sign}", style)
            lines.append(line.truncate(width, ellipsis=True))
        return lines[:height]
