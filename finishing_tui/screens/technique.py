"""Techniques: how the hands do what this step asks for, with a drawing; one at a time, those that help here first."""

from collections.abc import Iterator, Sequence
from types import MappingProxyType

from textual.app import ComposeResult
from textual.content import Content

from finishing_tui.recipe.techniques import Technique
from finishing_tui.screens.keys import bindings, keys_of
from finishing_tui.screens.page import PAGE, PageScreen
from finishing_tui.widgets.column import Column
from finishing_tui.widgets.key_line import ShownKey
from finishing_tui.widgets.plain import packed, plain, wrapped
from finishing_tui.widgets.rows import Rows

WIDEST = 90
"""Longer lines are hard to read."""

SIGNS = MappingProxyType({"∩": "stitch", "╷": "pick up", "╲╱": "knit", "∪": "bump", "~": "yarn", "<>": "chain"})
"""What the signs mean that no drawing says itself."""


class Explained(Rows):
    """One technique: its drawing, the moves in turn, how it looks when right, and what goes wrong."""

    def __init__(self) -> None:
        super().__init__()
        self._technique: Technique | None = None
        self._where = ""
        self._mirrored = False

    def show(self, technique: Technique, where: str, *, mirrored: bool) -> None:
        """Show a technique; ``where`` it stands among the others; ``mirrored``: her hands do it the other way round."""
        self._technique, self._where, self._mirrored = technique, where, mirrored
        self.redraw()

    def rows(self, width: int, height: int | None) -> Sequence[Content]:
        """Return the page, wrapped; the drawing stands as it is."""
        del height
        return () if self._technique is None else list(self._page(self._technique, min(width, WIDEST)))

    def _page(self, shown: Technique, width: int) -> Iterator[Content]:
        yield from wrapped(plain(shown.title, "bold $count"), width)
        yield from wrapped(plain(self._where, "$quiet"), width)
        yield from wrapped(plain(shown.about), width)
        if shown.lines:
            yield Content()
            yield from (plain(line, "bold") for line in shown.lines)
            yield from packed(
                (f"{sign} {what}" for sign, what in SIGNS.items() if sign in shown.drawing), width, "$quiet"
            )
            yield from wrapped(plain(shown.shows, "$quiet"), width)
            if self._mirrored:
                yield from wrapped(plain("Drawn for a right hand: yours is its mirror image.", "$quiet"), width)
        yield Content()
        yield plain("move by move", "bold $act")
        for number, move in enumerate(shown.moves, 1):
            first, *rest = wrapped(plain(move), width - 3)
            yield plain(f"{number}  ", "bold $count") + first
            yield from (Content("   ") + line for line in rest)
        for heading, text in (("right when", shown.look), ("if not", shown.mend), ("take care", shown.mind)):
            if text:
                yield Content()
                yield plain(heading, "bold $alarm" if heading == "take care" else "bold $act")
                yield from wrapped(plain(text), width)


class TechniqueScreen(PageScreen):
    """The techniques that help at a step, and after them all others; left and right turn the page."""

    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *bindings(
            "techniques",
            {**PAGE, "pages.left": "turn(-1)", "pages.right": "turn(1)", "needles.technique": "leave"},
        ),
    ]

    def __init__(self, helping: Sequence[Technique], others: Sequence[Technique], *, left_handed: bool = False) -> None:
        """Show those of ``helping`` and then ``others``; there must be one at least."""
        super().__init__()
        self._helping = len(helping)
        self._all = (*helping, *others)
        self._left_handed = left_handed
        self._at = 0

    def on_mount(self) -> None:
        """Show the first."""
        self._show()

    def text(self) -> ComposeResult:
        """Lay out one technique."""
        yield Explained()

    def other_keys(self) -> Sequence[ShownKey]:
        """Return the keys that turn the page."""
        return ((keys_of(self).shown("pages.left", "pages.right"), "see another"),)

    def action_turn(self, by: int) -> None:
        """Go to another technique, round and round."""
        self._at = (self._at + by) % len(self._all)
        self.query_one(Column).scroll_home(animate=False)
        self._show()

    def _show(self) -> None:
        helps = self._at < self._helping
        many = self._helping if helps else len(self._all) - self._helping
        number = self._at + 1 if helps else self._at - self._helping + 1
        where = f"{number} of {many} that help at this step" if helps else f"{number} of {many} others"
        self.query_one(Explained).show(self._all[self._at], where, mirrored=self._left_handed)
