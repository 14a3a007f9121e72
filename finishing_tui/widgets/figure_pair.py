"""The count and what it counts up to, and beside them what to do next: what is read from two metres."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from textual.content import Content

from finishing_tui.widgets.figures import LEAST, big, drawable, fitting, width_of
from finishing_tui.widgets.plain import plain, plain_rows, wrapped
from finishing_tui.widgets.rows import Rows

HIGHEST = 17
"""More lines than this are no better to read, from however far."""

WIDE = 64
"""From so many columns on the words stand beside the figures; below they stand under them."""


@dataclass(frozen=True, slots=True)
class Shown:
    """What is shown.

    ``count`` (empty: none) ``joiner`` ``of``, both in figures, and small words about them in ``aside``; the ``acts``,
    drawn large in ``style``, and in small what comes ``then``, which gives way to larger words unless ``keep_then``.
    """

    count: str = ""
    of: str = ""
    aside: tuple[str, ...] = ()
    acts: tuple[str, ...] = ()
    then: str = ""
    style: str = "$act"
    joiner: str = "of"
    keep_then: bool = False


class FigurePair(Rows):
    """Figures left, words right; one under the other where it is narrow. They grow with the room there is."""

    def __init__(self) -> None:
        super().__init__(id="figures")
        self._shown = Shown()
        self._chosen: dict[tuple[Shown, int, int], tuple[int, int]] = {}

    def show(self, shown: Shown) -> None:
        """Show other figures or words."""
        if shown != self._shown:
            self._shown = shown
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the figures and words as large as they fit; the size stays while the count only changes its digits."""
        shown, height = self._shown, height or 11
        if not shown.count:
            return _middle(self._words(shown, width, height), height)
        lines, left = self._sizes(width, height)
        if width >= WIDE:
            figures = self._figures(shown, width * 60 // 100, lines, beside=False)
            words = self._words(shown, width - left, height)
            return [
                one.pad_right(left - one.cell_length) + two
                for one, two in zip(_middle(figures, height), _middle(words, height), strict=True)
            ]
        figures = self._figures(shown, width, lines)
        words = self._words(shown, width, height - len(figures) - 1) if shown.acts else []
        return _middle([*figures, Content(), *words] if words else figures, height)

    def _sizes(self, width: int, height: int) -> tuple[int, int]:
        """Return the lines for the figures, and where the words begin beside them, in the widest digits."""
        shown = _in_noughts(self._shown)
        key = (shown, width, height)
        if key not in self._chosen:
            side = width >= WIDE
            best, chosen = -1, (5, 0)
            for lines in range(min(height, HIGHEST), 4, -1):
                figures = self._figures(shown, width * 60 // 100 if side else width, lines, beside=not side)
                left = max([row.cell_length for row in figures]) + (6 if width >= 76 else 4)
                room = (width - left, height) if side else (width, height - len(figures) - 1)
                high = _height_of(self._words(shown, *room)) if shown.acts else lines
                if min(lines, 1 + high) > best and len(figures) <= height:
                    best, chosen = min(lines, 1 + high), (lines, left)
            self._chosen[key] = chosen
        return self._chosen[key]

    def _figures(self, shown: Shown, width: int, height: int, *, beside: bool = True) -> list[Content]:
        """Return the count large, the target beside its foot, and small words under it, or beside it if they fit."""
        lines = _largest(shown, width, height)
        joined = width_of(shown.count, lines) + _joined(shown, min(lines, 5))
        beside = beside and sum(map(len, shown.aside)) + joined + 3 <= width
        under = 0 if beside else len(shown.aside)
        gap = 1 if under and height - under >= 9 else 0
        if under:
            lines = _largest(shown, width, height - under - gap)
        of_lines = min(lines, 5)
        while of_lines > LEAST and width_of(shown.count, lines) + _joined(shown, of_lines) > width:
            of_lines -= 1
        drawn = plain_rows(big(shown.count, lines, ascii_only=self.ascii), "bold $count")
        if shown.of:
            of = plain_rows(big(shown.of, of_lines, ascii_only=self.ascii), "$quiet")
            gaps = plain_rows([" " * (len(shown.joiner) + 2)] * (lines - 1) + [f" {shown.joiner} "], "$quiet")
            above = lines - of_lines
            for row in range(lines):
                drawn[row] += gaps[row] + of[row - above] if row >= above else gaps[row]
        if beside and shown.aside:
            drawn[-1] += plain(f"   {'  '.join(shown.aside)}", "$foreground")
            return drawn
        return [*drawn, *[Content()] * gap, *(plain(line, "$foreground") for line in shown.aside)]

    def _words(self, shown: Shown, width: int, height: int) -> list[Content]:
        """Return the words as large as they fit, and what follows in small where there is room for it."""
        then = wrapped(plain(shown.then, "$quiet"), width) if shown.then else []
        wanted = tuple(map(str.upper, shown.acts))
        for below in (then,) if shown.keep_then or not then else (then, []):
            acts, lines = _layout(wanted, width, height - len(below))
            if lines >= (4 if below and not shown.keep_then else LEAST):
                break
        else:
            # Not even small: the first word large, and the others in a sentence.
            acts, lines = _layout(wanted[:1], width, height - 1)
            rest = f"then {', then '.join(wanted[1:])}" if wanted[1:] else ""
            then = [plain(rest, f"bold {shown.style}")] if rest else then
            if not lines:
                return [*(plain(act, f"bold {shown.style}") for act in wanted), *then][:height]
        rows: list[Content] = []
        for index, act in enumerate(acts):
            rows += [Content()] if index else []
            rows += plain_rows(big(act, lines, ascii_only=self.ascii), f"bold {shown.style}")
        gap = [Content()] if then and len(rows) + len(then) < height else []
        return [*rows, *gap, *then][:height]


def _in_noughts(shown: Shown) -> Shown:
    """Return it with noughts for the digits that change at every press: none is wider."""
    return replace(shown, count="0" * len(shown.count), aside=tuple(re.sub(r"[0-9]", "0", one) for one in shown.aside))


_BLOCKS = frozenset('█▀▄#"')


def _height_of(words: list[Content]) -> int:
    """Return how high the words are drawn: the first lines of blocks."""
    drawn = 0
    for row in words:
        if _BLOCKS.isdisjoint(row.plain):
            break
        drawn += 1
    return drawn


def _layout(acts: tuple[str, ...], width: int, height: int) -> tuple[tuple[str, ...], int]:
    """Return the acts by lines, and the size at which they fit: side by side, stacked, or word by word."""
    if not all(map(drawable, acts)):
        return acts, 0
    by_word = tuple(" ".join(acts).split())
    ways: tuple[tuple[str, ...], ...] = (("  ".join(acts),), (" ".join(acts),), acts, by_word)
    best, found = -1, (ways[0], 0)
    for way in ways:
        lines = fitting(way, width, height, most=HIGHEST - 2)
        # Large words on one line are read from afar better than still larger ones in a pile.
        readable = lines + 5 if len(way) == 1 and lines >= 9 else lines
        if readable > best:
            best, found = readable, (way, lines)
    return found


def _joined(shown: Shown, of_lines: int) -> int:
    """Return how many columns the target takes, with what joins it to the count."""
    return len(shown.joiner) + 2 + width_of(shown.of, of_lines) if shown.of else 0


def _largest(shown: Shown, width: int, height: int) -> int:
    """Return the most lines at which the count fits: with its target at five lines too, or at fewer where it must."""
    left = width - _joined(shown, 5)
    for lines in range(min(height, HIGHEST), 4, -1):
        if width_of(shown.count, lines) <= left:
            return lines
    left = width - _joined(shown, LEAST)
    for lines in range(min(height, 5), LEAST, -1):
        if width_of(shown.count, lines) <= left:
            return lines
    return LEAST


def _middle(rows: list[Content], height: int) -> list[Content]:
    """Return ``rows`` in the middle of ``height`` lines."""
    above = max((height - len(rows)) // 2, 0)
    return [*[Content()] * above, *rows, *[Content()] * max(height - len(rows) - above, 0)][:height]
