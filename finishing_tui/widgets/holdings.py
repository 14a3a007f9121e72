"""What is on every needle and holder, and the tails, markers and holes that must not be forgotten."""

from collections.abc import Sequence
from dataclasses import replace
from operator import attrgetter

from textual.content import Content

from finishing_tui.glance.values import Glance, Holding
from finishing_tui.widgets.plain import between, fits_between, plain, told_apart, wrapped
from finishing_tui.widgets.rows import Rows

MOST = {"low": 1, "middling": 3, "high": 4, "tall": 8}
"""Lines of holdings there is room for; help shows all of them."""


class Holdings(Rows):
    """Needles and holders with their counts; what is worked on now is marked."""

    def __init__(self) -> None:
        super().__init__(id="holdings")
        self._holdings: tuple[Holding, ...] = ()
        self._rest: tuple[tuple[str, int], ...] = ()
        self._gives_way = False

    def show(self, seen: Glance) -> None:
        """Show what a glance says is held."""
        self._holdings = seen.holdings
        self._rest = (("tails", len(seen.tails)), ("markers", len(seen.markers)), ("holes", len(seen.holes)))
        self._gives_way = seen.lying.to_be
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the line of holdings, in as many lines as it takes; the rest at its end or below.

        On the lowest screen they give way to how the work is to be laid.
        """
        del height
        if self._gives_way and self.tallness == "low":
            return ()
        lines: list[Content] = []
        line = Content()
        for holding in sorted(self._holdings, key=attrgetter("here"), reverse=True):
            one = _held(holding)
            longer = line + Content("    ") + one if line else one
            if line and longer.cell_length > width:
                lines.append(line)
                longer = one
            line = longer
        lines = [part for one in (*lines, line) if one for part in wrapped(one, width, 2)]
        rest = Content("   ").join(
            [
                plain(f"{many} {name if many != 1 else name.removesuffix('s')}", "$quiet")
                for name, many in self._rest
                if many
            ]
        )
        together = len(lines) == 1 and (not rest or fits_between(lines[0], rest, width))
        if self.tallness == "low" and not together:
            return self._brief(rest, width)
        lines = lines[: MOST[self.tallness]]
        if not rest:
            return lines
        if lines and fits_between(lines[-1], rest, width):
            return [*lines[:-1], between(lines[-1], rest, width)]
        return [*lines, *wrapped(rest, width, 1)]

    def _brief(self, rest: Content, width: int) -> list[Content]:
        """Return one line: as much of what is worked on as has room, and the stitches elsewhere; help shows all."""
        working = [one for one in self._holdings if one.here]
        names = told_apart([one.name for one in working])
        held = [_held(replace(one, name=name)) for one, name in zip(working, names, strict=True)]
        elsewhere = sum(one.stitches for one in self._holdings if not one.here)
        here, more = Content("  ").join(held), plain(f"{elsewhere} elsewhere" if elsewhere else "", "$quiet")
        if not fits_between(here, more, width):
            held = [plain("▸", "$act") + one[2:] for one in held]  # set close, before one is left out
            here = Content(" ").join(held)
        while len(held) > 1 and not fits_between(here, more, width):
            held.pop()
            here = Content(" ").join(held)
        longer = more + Content("   ") + rest if more and rest else more or rest
        return [between(here, longer if fits_between(here, longer, width) else more, width)]


def _held(holding: Holding) -> Content:
    mark = plain("▸ ", "$act") if holding.here else Content()
    return mark + plain(f"{holding.name} ", "$quiet") + plain(str(holding.stitches), "bold $foreground")
