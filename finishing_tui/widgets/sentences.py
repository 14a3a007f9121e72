"""Sentences, each wrapped, one under the other."""

from collections.abc import Mapping, Sequence

from textual.content import Content

from finishing_tui.widgets.plain import cut_short, plain, wrapped
from finishing_tui.widgets.rows import Rows

SAYS_KEY = 60
"""From so many columns on there is room to say which key shows all."""


class Sentences(Rows):
    """Sentences in the order of what matters now."""

    def __init__(
        self,
        *,
        id: str | None = None,  # noqa: A002  (Textual's name)
        most: Mapping[str, int] | None = None,
        tells_more: bool = False,
    ) -> None:
        """Make room for ``most`` lines, by how high the screen is; without it for as many as there are.

        ``tells_more``: where they have not all room, the last line says how many more there are.
        """
        super().__init__(id=id or "sentences")
        self._most = most
        self._tells_more = tells_more
        self._help = ""
        self._sentences: tuple[tuple[str, str], ...] = ()

    def show(self, *sentences: tuple[str, str], help_key: str = "") -> None:
        """Show (sentence, style) pairs; empty sentences are left out.

        ``help_key``: the key that shows all of them, if one does; where they have not all room, the last line says so.
        """
        sentences = tuple(one for one in sentences if one[0])
        if (sentences, help_key) != (self._sentences, self._help):
            self._sentences, self._help = sentences, help_key
            self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the sentences, each wrapped."""
        lines: list[Content] = []
        limits = (height, None if self._most is None else self._most.get(self.tallness))
        most = min((one for one in limits if one is not None), default=None)
        of: list[int] = []  # which sentence each line is of
        for number, (text, style) in enumerate(self._sentences):
            room = None if most is None else most - len(lines)
            if room is not None and room < 1:
                break
            whole = wrapped(plain(text, style), width)
            if room is None or len(whole) <= room:
                lines += whole
            elif self._tells_more and number > 1:  # what is not the first to be told is told whole or not at all
                return [*lines, plain(f"… and {len(self._sentences) - number} more", "$quiet")]
            else:
                lines += cut_short(whole, width, room, self._help if width >= SAYS_KEY else "")
            of += [number] * (len(lines) - len(of))
        if self._tells_more and of and of[-1] < len(self._sentences) - 1:
            lines[-1] = plain(f"… and {len(self._sentences) - of[-1]} more", "$quiet")
        return lines
