"""The keys that may be pressed now, at the foot of every screen: as many as fit whole, the most important first."""

from collections.abc import Sequence
from functools import lru_cache

from textual.content import Content

from finishing_tui.widgets.plain import plain
from finishing_tui.widgets.rows import Rows

NARROW = 60
"""Below so many columns the keys take two lines."""

ShownKey = tuple[str, str]
"""A key as people read it, and what it does, in a word or two."""


class KeyLine(Rows):
    """Keys and what they do. The last one given is always shown; of the others, those that fit."""

    def __init__(self, *, whole: bool = False) -> None:
        """``whole``: take as many lines as all the keys need."""
        super().__init__(id="keys")
        self._keys: tuple[ShownKey, ...] = ()
        self._whole = whole
        self._blank = False

    @property
    def keys_shown(self) -> tuple[ShownKey, ...]:
        """The keys, whether there is room for all of them or not."""
        return self._keys

    def show(self, keys: Sequence[ShownKey]) -> None:
        """Show ``keys``, the most important first and the one that is never left out last."""
        if self._keys != (keys := tuple(keys)):
            self._keys = keys
            self.redraw()

    def blank(self, *, blank: bool) -> None:
        """Show none of the keys, or all of them again; their lines stay."""
        self._blank = blank
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the line, or two where it is narrow."""
        del height
        if not self._keys:
            return [Content()]
        if self._whole:
            return _all([_drawn(key) for key in self._keys], width)
        last = _drawn(self._keys[-1])
        lines = [Content() for _ in range(2 if width < NARROW and self.tallness != "low" else 1)]
        if self._blank:
            return lines
        rooms = [width] * len(lines)
        rooms[-1] -= last.cell_length + 3
        at = 0
        for one in map(_drawn, self._keys[:-1]):
            while at < len(lines) and _with(lines[at], one).cell_length > rooms[at]:
                at += 1
            if at == len(lines):
                break
            lines[at] = _with(lines[at], one)
        lines[-1] = _with(lines[-1], last)
        return lines


@lru_cache(maxsize=256)
def _drawn(key: ShownKey) -> Content:
    return plain(key[0], "bold $act") + plain(f" {key[1]}", "$quiet")


def _all(keys: Sequence[Content], width: int) -> list[Content]:
    lines = [Content()]
    for key in keys:
        if lines[-1] and _with(lines[-1], key).cell_length > width:
            lines.append(Content())
        lines[-1] = _with(lines[-1], key)
    return lines


def _with(line: Content, one: Content) -> Content:
    return line + Content("   ") + one if line else one
