"""A line to type on."""

from textual.events import Paste
from textual.widgets import Input

from finishing_tui.inert import inert


class EntryBox(Input):
    """One line; text of several lines that is pasted becomes one, so that nothing of it is lost unseen."""

    def __init__(self) -> None:
        super().__init__(select_on_focus=False)
        self.cursor_blink = False  # nothing on the screen moves by itself

    def ask(self, value: str, longest: int, *, mark: bool = True) -> None:
        """Let a line of at most ``longest`` characters be typed, with ``value`` on it to keep, type over or mend.

        ``mark``: the value is marked, so that the first key takes its place; else what is typed comes after it.
        """
        self.max_length = longest
        self.value = inert(value, lines=False)
        self.action_end()
        self.screen.set_focus(self)  # at once: ``focus`` waits, and letters typed meanwhile would be lost
        if mark:
            self.action_select_all()

    def on_paste(self, event: Paste) -> None:
        """Take pasted text as one line, without the signs that no key types."""
        event.stop()
        event.prevent_default()
        text = "".join(sign for sign in " ".join(event.text.split()) if sign.isprintable())
        start, end = sorted(self.selection)
        room = (self.max_length or 0) - len(self.value) + end - start
        if len(text) > room:
            self.app.bell()
        self.replace(text[: max(room, 0)], start, end)
