"""Everything that can be done now: found by its words, and done by enter."""

from textual.app import ComposeResult
from textual.containers import Vertical

from finishing_tui.screens.keys import LISTS, bindings
from finishing_tui.screens.listed import Listed
from finishing_tui.screens.program import program
from finishing_tui.talk.acts import BY_ID
from finishing_tui.talk.asks import FindAction
from finishing_tui.talk.conversation import Talk
from finishing_tui.talk.offers import open_to
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.sentences import Sentences


class PaletteScreen(Listed[str | None]):
    """Returns the id of an action, or None; the words are typed at once."""

    BINDINGS = [*bindings("palette", {**LISTS, "lists.leave": "leave"})]  # noqa: RUF012  (Textual's way)

    def __init__(self, talk: Talk, ask: FindAction) -> None:
        """Show what may be done as ``talk`` stands."""
        super().__init__()
        self._question = ask.question
        self._offers = tuple(one for one in open_to(talk) if one.action != "palette")
        self._keys = talk.keys

    def compose(self) -> ComposeResult:
        """Lay out the list over the line."""
        with Vertical(classes="head"):
            yield Sentences()
        yield Choices(spaced=False, numbered=False)
        yield KeyLine()

    async def on_mount(self) -> None:
        """Show everything, and let words be typed."""
        program(self).speak(self._question)
        self.query_one(Sentences).show((self._question, "bold $count"))
        choices = [Choice(one.what, aside=self._aside(one.action, one.label)) for one in self._offers]
        self.query_one(Choices).show(choices)
        await self.find()

    def action_take(self) -> None:
        """Do what the caret is at."""
        self.dismiss(self._offers[self.query_one(Choices).at].action)

    def action_leave(self) -> None:
        """Do nothing."""
        self.dismiss(None)

    def on_find_line_left(self) -> None:
        """Leave with the line."""
        self.dismiss(None)

    @property
    def leaves(self) -> str:
        """What leaving the line does."""
        return "leave"

    def _aside(self, action: str, label: str) -> str:
        """Return the word that is typed for an action in a line, and its key."""
        key = self._keys.shown(f"needles.{action}")
        word = BY_ID[action].letter
        return f"{label} · {word} · {key}" if word else f"{label} · {key}"
