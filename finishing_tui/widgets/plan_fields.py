"""What may be asked of a plan, with what was typed."""

from collections.abc import Sequence
from dataclasses import dataclass

from textual.content import Content

from finishing_tui.widgets.plain import plain
from finishing_tui.widgets.rows import Rows


@dataclass(frozen=True, slots=True)
class PlanField:
    """Something that may be another way: its ``name``, its ``value`` now, and whether that was ``typed``."""

    name: str
    value: str
    typed: bool = False


class Fields(Rows):
    """What may be asked, the caret at one of them; as many on a line as fit."""

    def __init__(self) -> None:
        super().__init__(id="fields")
        self._fields: tuple[PlanField, ...] = ()
        self._at = 0

    def show(self, fields: Sequence[PlanField], at: int) -> None:
        """Show the fields with the caret at one."""
        self._fields, self._at = tuple(fields), at
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the fields, in as few lines as they take."""
        del height
        lines = [Content()]
        for index, one in enumerate(self._fields):
            here = index == self._at
            drawn = (
                plain("▸ " if here else "  ", "bold $act")
                + plain(f"{one.name} ", "bold $foreground" if here else "$quiet")
                + plain(one.value, "bold $mark" if one.typed else "bold $count" if here else "$foreground")
            )
            longer = lines[-1] + Content("   ") + drawn if lines[-1] else drawn
            if lines[-1] and longer.cell_length > width:
                lines.append(drawn)
            else:
                lines[-1] = longer
        return lines
