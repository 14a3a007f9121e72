"""The keys that may be pressed now, at the foot of every screen: as many as fit whole, the most important first."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from textual.content import Content

from finishing_tui.widgets.plain import plain
from finishing_tui.widgets.rows import Rows

NARROW = 60
"""Below so many columns the keys take two lines."""

GAP = Content("  ")
"""What lies between two keys."""

ShownKey = tuple[str, str]
"""A key as people read it, and what it will do, in a word or two."""


@dataclass(frozen=True, slots=True)
class KeyPlace:
    """A key that keeps its place on the line, whatever its label is just now; with none only the place is kept.

    ``wide``: so many cells the label takes at least, and ``narrow`` on a narrow screen; ``brief``: where there is no
    room for it, the key stands there without it; ``ends``: on a narrow screen the next one begins a line.
    """

    key: str
    label: str
    wide: int
    narrow: int = 0
    brief: bool = False
    ends: bool = False


class KeyLine(Rows):
    """Keys and what they do. The last one given is always shown, at the right end; of the others, those that fit."""

    def __init__(self, *, whole: bool = False) -> None:
        """``whole``: take as many lines as all the keys need."""
        super().__init__(id="keys")
        self._keys: tuple[ShownKey | KeyPlace, ...] = ()
        self._instead: tuple[ShownKey, ...] = ()
        self._whole = whole

    @property
    def keys_shown(self) -> tuple[ShownKey, ...]:
        """The keys, whether there is room for all of them or not."""
        pairs = [(one.key, one.label) if isinstance(one, KeyPlace) else one for one in self._instead or self._keys]
        return tuple(pair for pair in pairs if pair[1])

    def show(self, keys: Sequence[ShownKey | KeyPlace]) -> None:
        """Show ``keys``, the most important first and the one that is never left out last."""
        if self._keys != (keys := tuple(keys)):
            self._keys = keys
            self.redraw()

    def instead(self, keys: Sequence[ShownKey] = ()) -> None:
        """Show these for as long as something else takes the keys; none: those of the screen again."""
        self._instead = tuple(keys)
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the line, or two where it is narrow."""
        del height
        narrow = width < NARROW
        shown = self._instead or self._keys
        if not shown:
            return [Content()]
        *keys, last = [_drawn(_placed(one, narrow=narrow)) for one in shown]
        if self._whole:
            return _all([*keys, last], width)
        placed = isinstance(shown[-1], KeyPlace)
        if narrow:
            last = (*_bare(shown[-1]), last)[0]
        lines = [Content() for _ in range(2 if narrow and (placed or self.tallness != "low") else 1)]
        rooms = [width] * len(lines)
        rooms[-1] -= last.cell_length + GAP.cell_length
        at = 0
        for one, key in zip(keys, shown, strict=False):
            ends = isinstance(key, KeyPlace) and key.ends and at < len(lines) - 1
            if ends and one.plain.isspace():
                at += 1
                continue
            while at < len(lines) - 1 and _with(lines[at], one).cell_length > rooms[at]:
                at += 1
            fits = [form for form in (one, *_bare(key)) if _with(lines[at], form).cell_length <= rooms[at]]
            if not fits:
                break
            lines[at] = _with(lines[at], fits[0])
            at = min(at + ends, len(lines) - 1)
        lines[-1] = lines[-1].pad_right(max(width - lines[-1].cell_length - last.cell_length, 0)) + last
        return lines


def _placed(one: ShownKey | KeyPlace, *, narrow: bool) -> ShownKey:
    """Return a key with its label as wide as its place."""
    if not isinstance(one, KeyPlace):
        return one
    return (one.key if one.label else " " * len(one.key)), one.label.ljust(one.narrow if narrow else one.wide)


def _bare(one: ShownKey | KeyPlace) -> tuple[Content, ...]:
    """Return a key without its label, where it may stand so."""
    return (_drawn((one.key, "")),) if isinstance(one, KeyPlace) and one.brief else ()


@lru_cache(maxsize=256)
def _drawn(key: ShownKey) -> Content:
    return plain(key[0], "bold $act") + plain(f" {key[1]}" if key[1] else "", "$quiet")


def _all(keys: Sequence[Content], width: int) -> list[Content]:
    lines = [Content()]
    for key in keys:
        if lines[-1] and _with(lines[-1], key).cell_length > width:
            lines.append(Content())
        lines[-1] = _with(lines[-1], key)
    return lines


def _with(line: Content, one: Content) -> Content:
    return line + GAP + one if line else one
