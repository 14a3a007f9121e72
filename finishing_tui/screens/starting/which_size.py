"""The size that was never written down, found from the stitches that the pieces hold."""

from textual.app import ComposeResult
from textual.containers import Vertical

from finishing_tui.craft.words import listing
from finishing_tui.glance.numbers import MOST_DIGITS
from finishing_tui.glance.starting import held_by_size, held_places
from finishing_tui.recipe.model import Recipe
from finishing_tui.recipe.which_size import SizeFit, which_size
from finishing_tui.screens.keys import MOVE, TYPED, bindings, digits, keys_of
from finishing_tui.screens.listed import Listed
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.fits import Fits, SizeHeld
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences


class WhichSizeScreen(Listed[str | None]):
    """Type what is counted on any of the places; it returns the size that fits best, or None."""

    CSS_PATH = "starting.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *digits("digit('{}')"),
        *bindings("which size", {**TYPED, "lists.leave": "leave"}),
    ]

    def __init__(self, recipe: Recipe) -> None:
        super().__init__()
        self._recipe = recipe
        self._places = held_places(recipe)
        self._held = held_by_size(recipe)
        self._typed = dict.fromkeys(self._places, "")

    def compose(self) -> ComposeResult:
        """Lay out the answer over the places."""
        with Vertical(classes="head"):
            yield Sentences(most={"low": 6, "middling": 7, "high": 9})
        yield Choices(spaced=False, numbered=False)
        yield Fits()
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Show the places."""
        self._draw()

    @property
    def fits(self) -> tuple[SizeFit, ...]:
        """How every size fits what was typed so far, nearest first; none while nothing is typed."""
        held = {place: int(typed) for place, typed in self._typed.items() if typed}
        return which_size(self._recipe, held) if held else ()

    def action_digit(self, sign: str) -> None:
        """Take a digit of the count at the caret."""
        place = self._place
        if len(self._typed[place]) < MOST_DIGITS:
            self._typed[place] += sign
            self._draw()
        else:
            self.app.bell()

    @property
    def _next(self) -> int | None:
        """The next place that is not counted yet; None unless the one at the caret is, or where all are."""
        at, typed = self.query_one(Choices).at, list(self._typed.values())
        if not typed[at]:
            return None
        order = (*range(at + 1, len(typed)), *range(at))
        return next((one for one in order if not typed[one]), None)

    def action_take_off(self) -> None:
        """Take the last digit back."""
        if not self._typed[self._place]:
            self.app.bell()
        self._typed[self._place] = self._typed[self._place][:-1]
        self._draw()

    def move_to(self, at: int) -> None:
        """Show the caret at a place."""
        super().move_to(at)
        self._draw()

    def action_take(self) -> None:
        """Go on from a place that was counted to the next; on one that was not, take the size that fits best."""
        fits, onward = self.fits, self._next
        if onward is not None:
            self.action_move(onward - self.query_one(Choices).at)
        elif fits:
            self.dismiss(fits[0].size)
        else:
            self.app.bell()
            self.query_one(Notice).show("Type what you count on one of them first.", alarm=True)

    def action_leave(self) -> None:
        """Go back to the sizes."""
        self.dismiss(None)

    @property
    def _place(self) -> str:
        return tuple(self._places)[self.query_one(Choices).at]

    def _draw(self) -> None:
        told, style = self._told()
        self.query_one(Notice).show("")
        self.query_one(Sentences).show(
            ("Which size is it?", "bold $count"),
            ("Count what the pieces hold, at as many places as you like.", "$foreground"),
            (told, style),
        )
        choices = self.query_one(Choices)
        shown = [Choice(text, aside=self._typed[place] or "?") for place, text in self._places.items()]
        choices.show(shown, choices.at)
        self.query_one(Fits).show(self._sizes())
        key = keys_of(self).shown
        take = "next place" if self._next is not None else f"size {self.fits[0].size}" if self.fits else ""
        found = [(key("lists.take"), take)] if take else []
        keys = [("digits", "what you count"), (key(*MOVE), "move"), *found, (key("lists.leave"), "to the sizes")]
        self.query_one(KeyLine).show(keys)

    def _sizes(self) -> list[SizeHeld]:
        """Return what every size holds beside what was counted, nearest first; in the recipe's order before that."""
        counted = [int(typed) if typed else None for typed in self._typed.values()]
        held = {size: self._held[size] for size in [fit.size for fit in self.fits] or self._held}
        return [SizeHeld(size, tuple(zip(has, counted, strict=True))) for size, has in held.items()]

    def _told(self) -> tuple[str, str]:
        fits = self.fits
        if not fits:
            return "Nothing typed yet.", "$quiet"
        first = fits[0]
        near = [fit.size for fit in fits if fit.far == first.far]
        if not first.far:
            more = " Count another place to tell them apart." if near[1:] else ""
            return f"Size {listing(near, 'or')} fits exactly.{more}", "bold $good"
        off = ", ".join(
            f"{self._places[place]} {held}, size {first.size} has {wanted}"
            for place, (held, wanted) in first.off.items()
        )
        return f"No size fits exactly. The nearest is {listing(near, 'or')}: {off}.", "bold $mark"
