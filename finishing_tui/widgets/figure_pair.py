"""The count and what it counts up to, and beside them what to do next: what is read from two metres."""

from collections.abc import Sequence
from dataclasses import dataclass

from textual.content import Content

from finishing_tui.widgets.figures import LEAST, big, drawable, fitting, width_of
from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows

WIDE = 64
"""From so many columns on the words stand beside the figures; below they stand under them."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What is shown: ``count`` (empty: none), ``of``, small words about it in ``aside``, the ``acts``, ``then``."""

    count: str = ""
    of: str = ""
    aside: tuple[str, ...] = ()
    acts: tuple[str, ...] = ()
    then: str = ""
    style: str = "$act"


class FigurePair(Rows):
    """Figures left, words right; one under the other where it is narrow. They grow with the room there is."""

    def __init__(self) -> None:
        super().__init__(id="figures")
        self._shown = Shown()

    def show(self, shown: Shown) -> None:
        """Show other figures or words."""
        if shown != self._shown:
            self._shown = shown
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the figures and words as large as they fit."""
        shown, height = self._shown, height or 11
        if not shown.count:
            return _middle(self._words(shown.acts, width, height), height)
        if width >= WIDE:
            figures = self._figures(width * 55 // 100 - 2, height)
            left = max((row.cell_length for row in figures), default=0) + (6 if width >= 76 else 4)
            words = self._words(shown.acts, width - left, height)
            return [
                one.pad_right(left - one.cell_length) + two
                for one, two in zip(_middle(figures, height), _middle(words, height), strict=True)
            ]
        least = 5 if height >= 10 else LEAST
        figures = self._figures(width, max(height - 1 - _least_words(shown, width), least))
        words = self._words(shown.acts, width, height - len(figures) - 1)
        gap = [Content()] if len(figures) + len(words) < height else []
        return [*figures, *gap, *words][:height]

    def _figures(self, width: int, height: int) -> list[Content]:
        """Return the count large, the target beside its foot, and the small words under it."""
        shown = self._shown
        under = len(shown.aside)
        gap = 1 if under and height - under >= 9 else 0
        room = height - under - gap
        lines = _largest(shown.count, shown.of, width, room)
        of_lines = min(lines, 5) if lines > 5 else lines
        while of_lines > LEAST and shown.of and _both(shown.count, shown.of, lines, of_lines) > width:
            of_lines -= 1
        drawn = [plain(row, "bold $count") for row in big(shown.count, lines, ascii_only=self.ascii)]
        if shown.of:
            of = big(shown.of, of_lines, ascii_only=self.ascii)
            for row in range(lines):
                at = row - (lines - of_lines)
                word = " of " if row == lines - 1 else "    "
                drawn[row] += plain(word, "$quiet") + plain(of[at] if at >= 0 else "", "$quiet")
        return [*drawn, *[Content()] * gap, *(plain(line, "$foreground") for line in shown.aside)]

    def _words(self, acts: tuple[str, ...], width: int, height: int) -> list[Content]:
        """Return the words, one under the other, as large as they fit, and what follows in small."""
        shown = self._shown
        then = wrapped(plain(shown.then, "$quiet"), width) if shown.then else []
        acts = tuple(act.upper() for act in acts)
        lines = (
            fitting(acts, width, height - len(then) - (1 if then else 0), most=11) if all(map(drawable, acts)) else 0
        )
        if not lines:
            split = tuple(word for act in acts for word in act.split())
            lines = fitting(split, width, height - len(then) - 1, most=11) if all(map(drawable, split)) else 0
            acts = split if lines else acts
        if not lines:
            return [*(plain(act, f"bold {shown.style}") for act in acts), *then]
        rows: list[Content] = []
        for index, act in enumerate(acts):
            rows += [Content()] if index else []
            rows += [plain(row, f"bold {shown.style}") for row in big(act, lines, ascii_only=self.ascii)]
        gap = [Content()] if then and len(rows) + len(then) < height else []
        return [*rows, *gap, *then]


def _least_words(shown: Shown, width: int) -> int:
    """Return the lines the words take at a size that can still be read well."""
    for lines in (5, 4, LEAST) if len(shown.acts) < 2 else (LEAST,):
        if all(width_of(act.upper(), lines) <= width for act in shown.acts):
            return len(shown.acts) * (lines + 1) - 1 + (1 if shown.then else 0)
    return len(shown.acts)


def _both(count: str, of: str, lines: int, of_lines: int) -> int:
    return width_of(count, lines) + (4 + width_of(of, of_lines) if of else 0)


def _largest(count: str, of: str, width: int, height: int) -> int:
    """Return the most lines at which the count fits with its target at five lines (or fewer, where it must)."""
    for lines in range(min(height, 13), LEAST - 1, -1):
        if _both(count, of, lines, min(lines, 5)) <= width:
            return lines if lines >= 5 else max(lines, min(5, height)) if width_of(count, 5) <= width else lines
    return LEAST


def _middle(rows: list[Content], height: int) -> list[Content]:
    """Return ``rows`` in the middle of ``height`` lines."""
    above = max((height - len(rows)) // 2, 0)
    return [*[Content()] * above, *rows, *[Content()] * max(height - len(rows) - above, 0)][:height]
