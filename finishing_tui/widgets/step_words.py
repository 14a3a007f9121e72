"""The words of a step, and beside them how the work lies as a small picture where there is room for it."""

from collections.abc import Sequence
from itertools import zip_longest

from textual.content import Content

from finishing_tui.glance.cautions import CARE
from finishing_tui.glance.lying import Picture
from finishing_tui.glance.values import WordLine
from finishing_tui.widgets.plain import cut_short, plain, wrapped
from finishing_tui.widgets.rows import Rows

PICTURED = 90
"""From so many columns on there is room for the picture, on a screen that is high enough."""

FREE = 3
"""Lines more for the words on a middling screen, where nothing is drawn below the figures."""

MOST_CAUTION = 3
"""Lines of a caution that is no child's; help shows all of it."""

BESIDE = 47
"""The columns that the picture and its words take; kept where there is nothing to draw, so that no word moves."""


def has_room(width: int, tallness: str) -> bool:
    """Return whether a screen of this size has room for the picture beside the words."""
    return width >= PICTURED and tallness in {"high", "tall"}


def is_pictured(picture: Picture, width: int, tallness: str) -> bool:
    """Return whether the picture is drawn on a screen of this size: then its words need not be said twice."""
    return bool(picture.lines) and has_room(width, tallness)


def is_cut(lines: Sequence[WordLine], width: int, *, roomy: bool) -> bool:
    """Return whether the lowest screen has not the room for a whole caution; ``roomy``: it has some."""
    return len(all_words([line for line in lines if is_caution(line)], width)) > (MOST_CAUTION if roomy else 0)


def is_caution(line: WordLine) -> bool:
    """Return whether a line is a caution that is to be shown."""
    return line.heading == CARE and not line.behind


class StepWords(Rows):
    """As much of the words as there is room for; where that is not all, the last line says how to see the rest."""

    def __init__(self) -> None:
        super().__init__(id="words")
        self._lines: tuple[WordLine, ...] = ()
        self._picture = Picture()
        self._roomy = self._free = False
        self._help = "?"
        self._under = 0
        self._was_drawn = False

    def lie_under(self, lines: int) -> None:
        """Keep the words out of so many of the last lines: a notice lies over them."""
        if lines != self._under:
            self._under = lines
            self.redraw()

    def show(
        self, lines: tuple[WordLine, ...], picture: Picture, *, roomy: bool, free: bool = False, help_key: str = "?"
    ) -> None:
        """Show the words of a step, and how the work lies.

        ``roomy``: even a low screen makes room for a caution; ``free``: nothing is drawn below the figures, so a
        middling one has more lines; ``help_key``: the key that shows all the words.
        """
        shown = (lines, picture, roomy, free, help_key)
        if shown != (self._lines, self._picture, self._roomy, self._free, self._help):
            same = [line.text for line in lines] == [line.text for line in self._lines]
            self._was_drawn = bool(picture.lines) or (same and self._was_drawn)  # else a word would move
            self._lines, self._picture, self._roomy, self._free, self._help = shown
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the words in lines, those of care first among what follows the first, and the picture at the right."""
        del height
        if self.tallness == "low":
            care = self._cut(all_words(self._care(), width), width, MOST_CAUTION) if self._roomy else []
            return self._clear_of_the_notice(care, width)
        if not has_room(width, self.tallness):
            wide = min(width, 96)
            most = _MOST[self.tallness] + FREE * (self._free and self.tallness == "middling")
            words = self._words(wide, most) or [Content()]  # a notice lies over the last line
            return self._clear_of_the_notice(words, wide)
        large = self._picture.large  # then it is drawn elsewhere, and the words have all the room
        drawn = [] if large else picture_rows(self._picture, BESIDE)
        least = max(_MOST["high"], self._picture.most, len(drawn))
        beside = width - BESIDE - 4
        large = large or (
            not self._was_drawn and len(all_words(self._lines, beside)) > max(_MOST[self.tallness], least)
        )
        wide = min(width if large else beside, 96)
        words = self._words(wide, max(_MOST[self.tallness], least))
        words = self._clear_of_the_notice([*words, *[Content()] * (least - len(words))], wide)
        left = width - BESIDE
        return [
            one.pad_right(left - one.cell_length) + two for one, two in zip_longest(words, drawn, fillvalue=Content())
        ]

    def _care(self) -> list[WordLine]:
        """Return the caution, where it is shown."""
        return [line for line in self._lines if is_caution(line)]

    def _words(self, width: int, most: int) -> list[Content]:
        """Return as many lines as fit, a caution among them; as many as before it went behind its key.

        One that is behind it stands there still where nothing else needs its lines; a child's is never cut.
        """
        others = [line for line in self._lines if line.heading != CARE]
        kept = max(min(most, len(all_words(self._lines, width))), 1)  # a notice lies there, and not over what is held
        care = self._care() or ([] if len(all_words(self._lines, width)) > most else list(self._lines[len(others) :]))
        lines = all_words([*others[:1], *care, *others[1:]], width)
        if len(lines) > most and care:
            told = all_words(care, width)
            told = told if care[0].always else self._cut(told, width, min(most - 1, MOST_CAUTION))
            most = max(most, len(told))
            lines = [*self._cut(all_words(others, width), width, most - len(told)), *told]
        lines = self._cut(lines, width, most)
        return [*lines, *[Content()] * (kept - len(lines))]

    def _cut(self, lines: list[Content], width: int, most: int) -> list[Content]:
        return cut_short(lines, width, most, self._help)

    def _clear_of_the_notice(self, lines: list[Content], width: int) -> list[Content]:
        """Return as many lines, with none of the words in those that a notice lies over."""
        if not self._under:
            return lines
        there = max((at for at, line in enumerate(lines, 1) if line), default=0)
        seen = max(len(lines) - self._under, 0)
        if there <= seen:
            return lines
        seen_of_them = self._cut(lines[:there], width, seen)
        return [*seen_of_them, *[Content()] * (len(lines) - len(seen_of_them))]


_MOST = {"tall": 10, "high": 4, "middling": 2, "low": 0}
"""How many lines of words there is room for, by the height of the screen."""


class ToLay(Rows):
    """How the work is to be laid, in a step that lays it, where the words have no room beside them for it."""

    def __init__(self) -> None:
        super().__init__(id="to-lay")
        self._picture = Picture()

    def show(self, picture: Picture) -> None:
        """Show the picture, where the step in the middle lays the work."""
        if picture != self._picture:
            self._picture = picture
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the picture, where it does not stand beside the words; of a large one the words alone."""
        del height
        if self._picture.large:
            return [Content(), *wrapped(plain(self._picture.words, "$quiet"), width)]
        if not self._picture.to_be or is_pictured(self._picture, width, self.tallness):
            return ()
        above = [Content()] if self.tallness in {"high", "tall"} else []
        return [*above, *picture_rows(self._picture, width, 1 if self.tallness == "low" else 0)]


def picture_rows(picture: Picture, width: int, most: int = 0) -> list[Content]:
    """Return the picture with its words beside it, or under it, in ``most`` lines, where they would tear it apart."""
    wide = max((len(line.drawn.rstrip()) for line in picture.lines), default=0)  # what it leaves is the words'
    drawn = [plain(line.drawn[:wide], "$foreground") for line in picture.lines]
    said = [wrapped(plain(line.words, "$quiet"), width - wide - 2) for line in picture.lines]
    if any(len(words) > 1 for words in said[:-1]):
        return [*drawn, *wrapped(plain(picture.words, "$quiet"), width, most)]
    found = [line + Content("  ") + (words[0] if words else Content()) for line, words in zip(drawn, said, strict=True)]
    return [*found, *(Content("  ").pad_left(wide) + more for more in (said or [[]])[-1][1:])]


def all_words(lines: Sequence[WordLine], width: int) -> list[Content]:
    """Return the words of a step, wrapped, each with its heading; a caution stands out by its heading."""
    found: list[Content] = []
    for line in lines:
        style = "bold $alarm" if line.heading == CARE else "bold $quiet"
        head = plain(f"{line.heading}: ", style) if line.heading else Content()
        found += wrapped(head + plain(line.text, "$foreground"), width)
    return found
