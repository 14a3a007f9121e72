"""A list to choose from: a number before each, a caret at the one that enter takes."""

from collections.abc import Sequence
from dataclasses import dataclass

from textual.content import Content

from finishing_tui.widgets.plain import plain, wrapped
from finishing_tui.widgets.rows import Rows

NARROW = 4
"""What stands at the right and takes no more than one of so many columns of a line has room made for it there."""


@dataclass(frozen=True, slots=True)
class Choice:
    """One thing to choose: its ``text``, more about it in ``lines``, and ``aside``, what stands at the right.

    ``also``: other words by which it is found.
    """

    text: str
    lines: tuple[str, ...] = ()
    aside: str = ""
    alarm: bool = False
    also: str = ""


class Choices(Rows):
    """The choices in order; the chosen one is always among those shown."""

    def __init__(self, *, spaced: bool = True, numbered: bool = True) -> None:
        """``numbered``: a number takes a choice, so each shows its own."""
        super().__init__(id="choices")
        self._choices: tuple[Choice, ...] = ()
        self._spaced = spaced
        self._numbered = numbered
        self._laid: dict[tuple[int, int, bool, bool], tuple[Choice, list[Content]]] = {}  # laid out before
        self._words: tuple[str, ...] = ()  # only choices with all of them are shown
        self._finding = False  # words are typed, so no digit chooses
        self.at = 0

    @property
    def choices(self) -> tuple[Choice, ...]:
        """All of them."""
        return self._choices

    def show(self, choices: Sequence[Choice], at: int = 0) -> None:
        """Show ``choices`` with the caret at ``at``."""
        self._choices = tuple(choices)
        self._put(min(max(at, 0), max(len(self._choices) - 1, 0)))

    def move(self, by: int) -> None:
        """Move the caret; it stops at either end."""
        self.show(self._choices, self.at + by)

    def narrow(self, text: str | None) -> None:
        """Show only the choices that have every word of ``text``, the caret at one of them; all where it has none.

        No digit chooses while words are typed; None: they are no longer.
        """
        self._finding = text is not None
        self._words = tuple((text or "").casefold().split())
        self._put(self.at)

    def beside(self, by: int) -> int | None:
        """Return which choice is so many below the caret of those shown; None where there is none."""
        shown = self._shown
        at = shown.index(self.at) + by if self.at in shown else -1
        return shown[at] if 0 <= at < len(shown) else None

    def _put(self, at: int) -> None:
        """Put the caret at a choice, or at the first that is shown where that one is not."""
        shown = self._shown
        self.at = shown[0] if shown and at not in shown else at
        self.redraw()

    @property
    def _shown(self) -> Sequence[int]:
        if not self._words:
            return range(len(self._choices))
        texts = (f"{one.text} {one.aside} {one.also}".casefold() for one in self._choices)
        return [at for at, text in enumerate(texts) if all(word in text for word in self._words)]

    def __len__(self) -> int:
        return len(self._choices)

    def __bool__(self) -> bool:
        """Return True: a list is there even when it is empty."""
        return True

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the lines around the caret."""
        lines: list[Content] = []
        first, last = 0, 0
        begins, ends = list[int](), list[int]()
        for index in self._shown:
            if lines and self._spaced:
                lines.append(Content())
            start = len(lines)
            begins.append(start)
            lines += self._choice(index, self._choices[index], width)
            ends.append(len(lines))
            if index == self.at:
                first, last = start, len(lines)
        if self._words and not lines:
            return [plain("  Nothing has these words.", "$quiet")]
        if height is None or len(lines) <= height:
            return lines
        top = min(max(last - height + 1, 0), first, len(lines) - height)
        # Every choice is whole or not there, but for one at the caret that has no room.
        start, stop = top, top + height
        if top:
            start = min(next((at for at in begins if at > top), first), max(first, top + 1))
        if stop < len(lines):
            stop = max([end for end in ends if end < stop] + [min(last, stop - 1)])
        above = [Content()] * (start - top - 1) + [plain("      ^ more above", "$quiet")] if top else []
        below = [plain("      v more below", "$quiet")] if top + height < len(lines) else []
        return [*above, *lines[start:stop], *below]

    def tallest(self, width: int) -> int:
        """Return how many rows the longest choice takes."""
        return max((len(self._choice(index, one, width)) for index, one in enumerate(self._choices)), default=0)

    def _choice(self, index: int, choice: Choice, width: int) -> list[Content]:
        """Return the lines of a choice; with hundreds of them only those that changed are laid out again."""
        key = (index, width, index == self.at, self._finding)
        if key not in self._laid or self._laid[key][0] != choice:
            self._laid[key] = (choice, self._lines_of(index, choice, width))
        return self._laid[key][1]

    def _lines_of(self, index: int, choice: Choice, width: int) -> list[Content]:
        here = index == self.at
        head = plain("▸ " if here else "  ", "bold $act")
        if self._numbered:
            head += plain(f"{index + 1 if index < 9 and not self._finding else ' '}  ", "bold $act")
        left = Content(" " * head.cell_length)
        style = "bold $count" if here else "bold $foreground"
        aside, words = plain(choice.aside, "$quiet"), plain(choice.text, style)
        text = wrapped(words, width - left.cell_length)
        if choice.aside and aside.cell_length <= width // NARROW:  # a key stands beside the words, never by itself
            text = wrapped(words, width - left.cell_length - aside.cell_length - 2)
        rows = [(head if not at else left) + line for at, line in enumerate(text)]
        if choice.aside:
            room = width - rows[0].cell_length - 2
            if aside.cell_length <= room:
                rows[0] = rows[0].pad_right(width - rows[0].cell_length - aside.cell_length) + aside
            else:
                rows += [left + line for line in wrapped(aside, width - left.cell_length)]
        for line in choice.lines:
            style = "$alarm" if choice.alarm else "$quiet"
            rows += [left + part for part in wrapped(plain(line, style), width - left.cell_length)]
        return rows
