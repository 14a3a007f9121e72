"""Keys and pedals: press anything, and it says what that key is called and what it does at the needles."""

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.events import Key

from finishing_tui.screens.keys import keys_of
from finishing_tui.screens.leaving import Leaving
from finishing_tui.settings.writing import keys_text
from finishing_tui.talk.key_names import NoKey, key_named, shown, written
from finishing_tui.talk.rooms import KEYED, SCREENS
from finishing_tui.widgets.figure_pair import FigurePair, Shown
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.sentences import Sentences


class PedalsScreen(Leaving[None]):
    """Every key is only told of here, but for escape twice in a row, which leaves."""

    CSS_PATH = "pedals.tcss"
    BINDINGS = [Binding("escape", "escape", show=False, id="fixed.escape")]  # noqa: RUF012  (Textual's way)

    def __init__(self) -> None:
        super().__init__()
        self._escaped = False

    def compose(self) -> ComposeResult:
        """Lay out what the last key was."""
        with Vertical(classes="head"):
            yield Sentences(id="asked")
        yield FigurePair()
        with Vertical(id="told"):
            yield Sentences(id="is")
        yield KeyLine()

    def on_mount(self) -> None:
        """Ask for a key."""
        self.query_one("#asked", Sentences).show(
            ("Keys and pedals", "bold $count"),
            ("Press a key, pedal or remote button to see its name.", "$foreground"),
            ("Nothing else happens.", "$quiet"),
        )
        self.query_one(FigurePair).show(Shown(verb="PRESS"))
        self._say_keys()

    def on_key(self, event: Key) -> None:
        """Tell of any key but escape, which comes by its binding, and keep it from doing anything else."""
        if event.key != "escape":
            event.stop()
            event.prevent_default()
            self._escaped = False
            self._tell(event.key)

    def action_escape(self) -> None:
        """Tell of escape; the second in a row leaves."""
        if self._escaped:
            self.dismiss()
        else:
            self._escaped = True
            self._tell("escape")

    def _tell(self, key: str) -> None:
        self.query_one(FigurePair).show(Shown(verb=shown(key).upper() if len(key) > 1 else key, style="$count"))
        does, lines = self._does(key), list[tuple[str, str]]()
        try:
            lines.append((f"In a settings file it is {written(key_named(key))}.", "bold"))
        except NoKey as error:
            lines.append((f"You can't assign it: {error}.", "bold $mark"))
        else:
            if not does:
                keys = keys_text((*keys_of(self).of("needles.press"), key))
                lines.append((f"To count with it, write press = {keys} under [keys.needles].", "$quiet"))
        lines.insert(1, (does or "It does nothing at the needles yet.", "$foreground"))
        self.query_one("#is", Sentences).show(*lines)
        self._say_keys()

    def _does(self, key: str) -> str:
        """Say what ``key`` does at the needles; nothing where it does nothing."""
        if key.isdecimal() and len(key) == 1:
            return "At the needles it is a digit of a count."
        if key in SCREENS["needles"].taken:
            return f"At the needles it is {SCREENS['needles'].taken[key]}."
        action = keys_of(self).does("needles", key)
        return f"At the needles it is {KEYED[action].name}: {KEYED[action].help}." if action else ""

    def _say_keys(self) -> None:
        leave = "again to leave" if self._escaped else "twice to leave"
        self.query_one(KeyLine).show((("escape", leave),))
