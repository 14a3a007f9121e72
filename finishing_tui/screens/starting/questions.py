"""The questions by which a garment is started, one after the other, and back again without losing an answer."""

from pathlib import Path
from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.events import Key

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.starting import Draft
from finishing_tui.glance.starting import (
    StartQuestion,
    chosen,
    held_places,
    progress,
    question,
    questions,
    summary,
    typed,
)
from finishing_tui.screens.keys import LONG_LISTS, NUMBERS, bindings, is_alive, keys_of
from finishing_tui.screens.listed import Listed
from finishing_tui.screens.program import program
from finishing_tui.screens.starting.audit import AuditScreen
from finishing_tui.screens.starting.which_size import WhichSizeScreen
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.column import Column
from finishing_tui.widgets.entry import EntryBox
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences

if TYPE_CHECKING:
    from collections.abc import Sequence


UNKNOWN = Choice("I'm not sure", ("Type your stitch counts to find it.",))
"""What may be answered where the size is asked."""

MANY = 4
"""From so many options on, only the one at the caret is told in full."""


class StartScreen(Listed[Draft | Path]):
    """The questions of one recipe; it returns the draft when it was left, or the folder of the garment started."""

    AUTO_FOCUS = ""
    CSS_PATH = "starting.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *NUMBERS,
        *bindings("start", {**LONG_LISTS, "lists.leave": "back"}),
        *bindings(
            "start line",
            {"lines.keep": "keep", "lines.leave": "back_off_line", "lines.up": "scroll(-1)", "lines.down": "scroll(1)"},
        ),
    ]

    def __init__(self, draft: Draft, shelf: Path) -> None:
        """Go on with ``draft``; the garment goes on ``shelf``."""
        super().__init__()
        self.draft = draft
        self.at = 0
        self._shelf = shelf
        self._lines: dict[str, str] = {}  # what stands on a line that was left unfinished

    def compose(self) -> ComposeResult:
        """Lay out the question over its options, or over the line it is answered on."""
        with Column():
            yield Sentences()
        with Vertical(id="line"):
            yield EntryBox()
            yield Sentences(id="range")
        yield Choices(spaced=False)
        yield Sentences(id="so-far")
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Ask the first."""
        self._ask()

    def on_column_moved(self) -> None:
        """See whether some of the question lies below."""
        self._say_keys()

    @property
    def asked(self) -> StartQuestion:
        """The question that is asked now."""
        units = program(self).wishes.units
        return question(self.draft, questions(self.draft)[self.at], units)

    def action_take(self, number: int | None = None) -> None:
        """Take an option, the one the caret is at or by its number."""
        choices = self.query_one(Choices)
        at = choices.at if number is None else number
        if not self.asked.options or at >= len(choices):
            self.app.bell()
        elif at == len(self.asked.options):
            self.app.push_screen(WhichSizeScreen(self.draft.recipe), self._found)
        else:
            self.draft = chosen(self.draft, self.asked.key, at)
            self._on()

    def move_to(self, at: int) -> None:
        """Show the caret at an answer."""
        self.query_one(Choices).show(self._options(self.asked, at), at)

    def action_scroll(self, by: int) -> None:
        """Scroll what is asked, over the line that is written."""
        self.query_one(Notice).show("")
        if not self.query_one(Column).scroll(by):
            self.app.bell()

    async def action_keep(self) -> None:
        """Take the line, with another key than the one that always does."""
        await self.query_one("#line EntryBox", EntryBox).action_submit()

    def action_back_off_line(self) -> None:
        """Go one question back from a line."""
        self.action_back()

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """Tell which keys are alive: those of a list among options, those of a line where one is written."""
        del parameters
        if action in {"move", "take", "back"}:
            return bool(self.asked.options)
        return not self.asked.options if action in {"scroll", "keep", "back_off_line"} else True

    def on_input_submitted(self, event: EntryBox.Submitted) -> None:
        """Take the line, or say what would be right and leave it as it was typed."""
        event.stop()
        try:
            self.draft = typed(self.draft, self.asked.key, event.value)
        except FinishingError as error:
            self.app.bell()
            self.query_one(Notice).show(sentence(str(error)), alarm=True)
            return
        self._lines.pop(self.asked.key, None)
        self._on()

    def on_input_changed(self, event: EntryBox.Changed) -> None:
        """Take the refusal away once something else is typed."""
        event.stop()
        self.query_one(Notice).show("")

    def on_key(self, event: Key) -> None:
        """Ring for a key that does nothing among the options."""
        if self.asked.options and not is_alive(self, event.key):
            self.app.bell()

    def action_back(self) -> None:
        """Go one question back; what stands on the line is kept for later."""
        self._keep_line()
        if self.at:
            self.at -= 1
            self._ask()
        else:
            self.dismiss(self.draft)

    def _on(self) -> None:
        self.query_one(Notice).show("")
        self.at += 1
        if self.at == len(questions(self.draft)):
            self._audit()
        else:
            self._ask()

    def _audit(self) -> None:
        self.at = len(questions(self.draft)) - 1
        self._ask()
        self.app.push_screen(AuditScreen(self.draft, self._shelf), self._audited)

    def _audited(self, came: Draft | Path | None) -> None:
        if isinstance(came, Path):
            self.dismiss(came)
        elif came is not None:
            self.draft = came
            self._ask()

    def _found(self, size: str | None) -> None:
        if size is not None:
            self.draft = chosen(self.draft, "size", self.draft.recipe.sizes.index(size))
            self._ask()
            self.query_one(Notice).show(f"Size {size}: {keys_of(self).shown('lists.take')} takes it.")

    def _keep_line(self) -> None:
        asked, line = self.asked, self.query_one("#line EntryBox", EntryBox).value
        if not asked.options and line != asked.value:
            self._lines[asked.key] = line
        else:
            self._lines.pop(asked.key, None)

    def _ask(self) -> None:
        asked, entry = self.asked, self.query_one("#line EntryBox", EntryBox)
        size = "" if asked.key == "size" else f" · size {self.draft.size}"  # it is being chosen
        about = f"{self.draft.recipe.title}{size} · {progress(self.draft, self.at)}"
        lines = ((line, "$foreground") for line in asked.lines)
        self.query_one("#sentences", Sentences).show((about, "$quiet"), (asked.text, "bold $count"), *lines)
        self.query_one(Column).scroll_home(animate=False)
        self.query_one(Column).set_class(bool(asked.options), "-options")
        self.query_one("#line").display = not asked.options
        choices = self.query_one(Choices)
        choices.display = bool(asked.options)
        entry.disabled = bool(asked.options)
        if asked.options:
            self.set_focus(None)
            choices.show(self._options(asked, asked.at), asked.at)
        else:
            self.query_one("#range", Sentences).show((asked.range, "$quiet"))
            entry.ask(self._lines.get(asked.key, asked.value), asked.longest)
        told = ((line, "$quiet") for line in summary(self.draft))
        self.query_one("#so-far", Sentences).show(("your answers", "bold $act"), *told)
        self._say_keys()

    def _options(self, asked: StartQuestion, at: int) -> "Sequence[Choice]":
        """Return what can be chosen; where there is much to choose from, only the one at the caret says all."""
        whole = len(asked.options) < MANY
        options = [
            Choice(option.text, option.lines if whole or index == at else (), option.aside)
            for index, option in enumerate(asked.options)
        ]
        return [*options, UNKNOWN] if asked.key == "size" and held_places(self.draft.recipe) else options

    def _say_keys(self) -> None:
        key = keys_of(self).shown
        if self.asked.options:
            keys = [*self.choosing(), *self.moving(), (key("lists.leave"), "back")]
        else:
            more = [(key("lines.up", "lines.down"), "more")] if self.query_one(Column).is_longer else []
            keys = [(key("lines.keep"), "next"), *more, (key("lines.leave"), "back")]
        self.query_one(KeyLine).show(keys)
