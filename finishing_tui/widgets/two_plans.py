"""What may be asked, with what was typed, and the two plans one above the other: as it is, and as it would be."""

from collections.abc import Sequence
from dataclasses import dataclass

from textual.content import Content

from finishing_tui.glance.values import Edge
from finishing_tui.glance.what_if import WhatIfView
from finishing_tui.widgets.edge_strip import edge_rows
from finishing_tui.widgets.plain import plain, wrapped
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


class TwoPlans(Rows):
    """Both plans, aligned spot by spot, with their words; then how far they stray, and what changes later."""

    def __init__(self) -> None:
        super().__init__(id="plans")
        self._view: WhatIfView | None = None
        self._trouble = ""
        self._brief = ("", "")

    def show(self, view: WhatIfView | None, trouble: str = "", brief: tuple[str, str] = ("", "")) -> None:
        """Show both plans, or the sentence that says why what was typed cannot be.

        ``brief``: the verdict in a sentence and its look, for where there is no room for it in large letters.
        """
        self._view, self._trouble, self._brief = view, trouble, brief
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return as much as there is room for: words and later numbers give way first, and are counted then."""
        room = height or 100
        if self._trouble:
            return wrapped(plain(self._trouble, "$alarm"), width)[:room]
        view = self._view
        if view is None:
            return ()
        low = self.tallness == "low"
        head, style = self._brief
        lines = wrapped(plain(head, f"bold {style}"), width, 2) if low and head else []
        lines += self._plan("now", view.was, view.before, width, "$quiet", words=1 if low and view.changes else 3)
        if view.changes:
            gap = [Content()] if room > 14 else []
            words = 2 if low else 3
            lines += [*gap, *self._plan("then", view.now, view.after, width, "$foreground", view.before, words=words)]
            later = self._later(view.later, width, room - len(lines))
            drift = [*gap, *wrapped(plain(view.drift, "$quiet"), width)] if view.drift else []
            if len(lines) + len(drift) + len(later) <= room:
                lines += drift
            lines += [*gap, *later] if len(lines) + len(gap) + len(later) <= room else later
        return lines[:room]

    def _plan(
        self, name: str, text: str, edge: Edge | None, width: int, style: str, beside: Edge | None = None, *, words: int
    ) -> list[Content]:
        head = plain(f"{name}  ", f"bold {style}") + plain(text, style)
        drawn = edge_rows(edge, width, ascii_only=self.ascii, beside=beside)[:2] if edge is not None else []
        return [*wrapped(head, width, words), *drawn]

    def _later(self, later: Sequence[str], width: int, room: int) -> list[Content]:
        """Return the later numbers that fit, the first in full, and how many more there are."""
        if not later:
            return wrapped(plain("Nothing later changes.", "$quiet"), width)[: max(room, 0)]
        lines = wrapped(plain("this changes what comes later", "bold $foreground"), width)
        for at, line in enumerate(later):
            more = wrapped(plain(f"· {line}", "$foreground"), width)
            left = len(later) - at
            if len(lines) + len(more) > (room if left == 1 else room - 1):
                lines.append(plain(f"· {'and ' if at else ''}{left} {'more' if at else 'numbers'}", "$foreground"))
                break
            lines += more
        return lines[: max(room, 0)]
