"""The shelf: the garments in hand, and how far each of them is.

The journals are read beside the keys. What is known stands there at once, by name if by nothing else, and fills in.
"""

from dataclasses import dataclass
from pathlib import Path

from textual import work
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.message import Message

from finishing_tui.craft.errors import FinishingError
from finishing_tui.garment.shelf import FilesLook, OnShelf, Stands, folders_on, in_order, looks_like, seen, take_copy
from finishing_tui.glance.coming_back import ago
from finishing_tui.screens.demos import DemoScreen
from finishing_tui.screens.help import HelpScreen
from finishing_tui.screens.keys import LISTS, MOVE, NUMBERS, bindings, keys_of
from finishing_tui.screens.listed import Listed
from finishing_tui.screens.pedals import PedalsScreen
from finishing_tui.screens.program import program
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences

WORDS = {"lists.up": "to the garment above", "lists.down": "to the garment below", "lists.take": "pick the garment up"}
"""What the keys of every list do on the shelf."""

AT_A_TIME = 8
"""So many garments are read before they are shown together."""

_SIGNS: dict[Stands, str] = {"done": "■", "here": "◆", "under-way": "◆", "to-come": "□", "left-out": "×"}


class ShelfScreen(Listed[None]):
    """Garments in hand; the one touched last stands first."""

    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *NUMBERS,
        *bindings(
            "shelf",
            {
                **LISTS,
                "shelf.start": "start",
                "shelf.demos": "demos",
                "shelf.keys": "keys",
                "shelf.help": "help",
                "shelf.leave": "app.quit",
            },
        ),
    ]

    @dataclass
    class Read(Message):
        """Some garments were read; ``whole``: it was the last of them. ``look``: which look at the shelf it was."""

        look: int
        garments: tuple[OnShelf, ...]
        whole: bool

    def __init__(self, folder: Path, said: str = "") -> None:
        super().__init__()
        self._folder = folder
        self._said = said  # as it opens
        self._garments: tuple[OnShelf, ...] = ()
        self._looks: dict[Path, FilesLook] = {}
        self._known: dict[Path, tuple[FilesLook, OnShelf]] = {}  # what was read, and what the files looked like then
        self._look = 0
        self._reading = 0  # garments that are still to be read
        self._at: Path | None = None  # the garment the caret was put on

    def compose(self) -> ComposeResult:
        """Lay out the garments under a line about them."""
        with Vertical(classes="head"):
            yield Sentences()
        yield Choices()
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Say what there is to say first."""
        self.query_one(Notice).show(self._said)

    def on_screen_resume(self) -> None:
        """Look at the shelf again, each time this comes to the front: names at once, the rest beside the keys."""
        looks = self._looks = {folder: looks_like(folder) for folder in folders_on(self._folder)}
        self._known = {folder: known for folder, known in self._known.items() if folder in looks}
        unread = [
            folder for folder, look in looks.items() if folder not in self._known or self._known[folder][0] != look
        ]
        fresh = [OnShelf(folder, folder.name) for folder in unread if folder not in self._known]
        known = in_order([found for _, found in self._known.values()])
        self._garments = (*sorted(fresh, key=lambda one: looks[one.folder].latest, reverse=True), *known)
        self._look += 1
        self._reading = len(unread)
        self._draw()
        if unread:
            self._read(self._look, tuple(sorted(unread, key=lambda folder: looks[folder].latest, reverse=True)))

    def on_shelf_screen_read(self, message: Read) -> None:
        """Fill in what was read."""
        if message.look != self._look:
            return
        self._known.update((one.folder, (self._looks[one.folder], one)) for one in message.garments)
        self._reading = 0 if message.whole else self._reading - len(message.garments)
        read = {one.folder: one for one in message.garments}
        garments = tuple(read.get(one.folder, one) for one in self._garments)
        self._garments = in_order(garments) if message.whole else garments
        self._draw()

    def action_take(self, number: int | None = None) -> None:
        """Pick a garment up."""
        at = self.query_one(Choices).at if number is None else number
        self.query_one(Notice).show("")
        if at >= len(self._garments):
            self.app.bell()
        elif self._garments[at].trouble:
            self.app.bell()
            self.query_one(Notice).show(self._garments[at].trouble, alarm=True)
        else:
            self._open(self._garments[at].folder)

    def move_to(self, at: int) -> None:
        """Show the caret at a garment."""
        super().move_to(at)
        self._at = self._garments[at].folder

    def action_start(self) -> None:
        """Start a garment from nothing."""
        from finishing_tui.screens.starting.recipes import RecipesScreen  # noqa: PLC0415  (it reads recipes)

        try:
            screen = RecipesScreen(self._folder)
        except FinishingError as error:
            self._refuse(str(error))
            return
        self.app.push_screen(screen, lambda folder: self._open(folder) if folder is not None else None)

    def action_demos(self) -> None:
        """Choose a demo garment."""
        try:
            screen = DemoScreen()
        except FinishingError as error:
            self._refuse(str(error))
            return
        self.app.push_screen(screen, self._taken)

    def action_help(self) -> None:
        """Show the keys."""
        keys = [*keys_of(self).help("shelf", WORDS), ("1 to 9", "pick that garment up")]
        self.app.push_screen(HelpScreen("The shelf", (), keys))

    def action_keys(self) -> None:
        """Find out what a key or a pedal sends."""
        self.app.push_screen(PedalsScreen())

    def _taken(self, source: Path | None) -> None:
        if source is None:
            return
        try:
            self._open(take_copy(source, self._folder))
        except FinishingError as error:
            self._refuse(str(error))

    def _open(self, folder: Path) -> None:
        from finishing_tui.screens.opening import open_garment  # noqa: PLC0415  (the needles only when they are needed)

        self._at = folder  # so that the caret is on it when one comes back
        open_garment(program(self), folder)

    def _refuse(self, text: str) -> None:
        self.app.bell()
        self.query_one(Notice).show(text, alarm=True)

    @work(thread=True, group="reading")
    def _read(self, look: int, folders: tuple[Path, ...]) -> None:
        for first in range(0, len(folders), AT_A_TIME):
            if look != self._look:  # the shelf was looked at anew meanwhile
                return
            some = tuple(seen(folder) for folder in folders[first : first + AT_A_TIME])
            self.post_message(self.Read(look, some, first + AT_A_TIME >= len(folders)))

    def _draw(self) -> None:
        now = program(self).now
        unread = {one.folder for one in self._garments} - self._known.keys()
        choices = [
            Choice(one.title, ("…",))
            if one.folder in unread
            else Choice(
                f"{one.title} · size {one.size}" if one.size else one.title,
                _lines(one),
                ago(one.touched, now),
                alarm=bool(one.trouble),
            )
            for one in self._garments
        ]
        many = len(self._garments)
        told = f"{many} {'garment' if many == 1 else 'garments'} in hand" if many else "Nothing is on the shelf yet."
        if self._reading:
            told += f", {self._reading} still being read"
        key = keys_of(self).shown
        start, demos = key("shelf.start"), key("shelf.demos")
        hint = f"Press {start} to start a garment, or {demos} for a demo garment to try things on." if not many else ""
        self.query_one(Sentences).show(("The shelf", "bold $count"), (told, "$quiet"), (hint, "$foreground"))
        places = [one.folder for one in self._garments]
        self.query_one(Choices).show(choices, places.index(self._at) if self._at in places else 0)
        keys = [(key("lists.take"), "pick it up"), (start, "start a garment"), (key(*MOVE), "move")]
        keys = keys if many else [(start, "start a garment")]
        rest = ((key("shelf.leave"), "leave"), (key("shelf.keys"), "keys and pedals"), (key("shelf.help"), "help"))
        self.query_one(KeyLine).show([*keys, (demos, "demo garment"), *rest])


def _lines(one: OnShelf) -> tuple[str, ...]:
    """Return how far a garment is, and a sign for each of its steps."""
    if one.trouble:
        return (one.trouble,)
    if not one.steps:
        return (one.heading,)
    told = "finished: every step is done" if one.finished else f"step {one.step} of {one.steps}, {one.heading}"
    return told, "".join(_SIGNS[stands] for stands in one.track)
