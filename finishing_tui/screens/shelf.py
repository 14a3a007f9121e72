"""The shelf: the garments in hand, and how far each of them is.

The journals are read beside the keys. What is known stands there at once, by name if by nothing else, and fills in.
"""

from dataclasses import dataclass
from functools import partial
from pathlib import Path

from textual import work
from textual.app import ComposeResult
from textual.containers import Container, Vertical
from textual.events import Resize
from textual.message import Message

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import sentence
from finishing_tui.garment.shelf import FilesLook, OnShelf, Stands, folders_on, in_order, looks_like, seen, take_copy
from finishing_tui.glance.coming_back import ago, what_next
from finishing_tui.screens.demos import DemoScreen
from finishing_tui.screens.help import HelpScreen
from finishing_tui.screens.keys import LONG_LISTS, NUMBERS, bindings, keys_of
from finishing_tui.screens.listed import Listed
from finishing_tui.screens.pedals import PedalsScreen
from finishing_tui.screens.program import program
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.name import Name
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.schematic import Schematic
from finishing_tui.widgets.sentences import Sentences

WORDS = {
    "lists.take": "open the garment at the caret",
    "lists.find": "find a garment by its name, where there are more than nine",
}
"""What the keys of every list do on the shelf."""

AT_A_TIME = 8
"""So many garments are read before they are shown together."""

WHAT = "Take your knitted pieces to a finished garment, and let this program keep the count."
"""What this program is, where there is nothing on the shelf."""

FIRST = (
    ("demos", "Practice on a demo garment", "You get a copy; you can't break anything."),
    ("start", "Start one of your own", "Choose a recipe and a size, then give your numbers."),
    ("help", "Keys", "Every key on one page."),
)
"""What to begin with: the action, what it is called, and a word about it."""

MORE_FROM = 23
"""From so many lines on there is room for that word."""

_SIGNS: dict[Stands, str] = {"done": "■", "here": "▸", "under-way": "◆", "to-come": "□", "left-out": "×"}


class ShelfScreen(Listed[None]):
    """Garments in hand; the one touched last stands first."""

    CSS_PATH = "shelf.tcss"
    CHOOSES = "open"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *NUMBERS,
        *bindings(
            "shelf",
            {
                **LONG_LISTS,
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
        with Container(id="empty"):
            yield Schematic()
            with Vertical(id="beside"):
                yield Name()
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

    def on_resize(self, _: Resize) -> None:
        """Say more of the first choices where there is room."""
        self._draw()

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
        """Pick a garment up; on an empty shelf do what was chosen."""
        at = self.query_one(Choices).at if number is None else number
        self.query_one(Notice).show("")
        if not self._garments and at < len(FIRST):
            (self.action_demos, self.action_start, self.action_help)[at]()
        elif at >= len(self._garments):
            self.app.bell()
        elif self._garments[at].trouble:
            self.app.bell()
            self.query_one(Notice).show(self._garments[at].trouble, alarm=True)
        else:
            self._open(self._garments[at].folder)

    def move_to(self, at: int) -> None:
        """Show the caret at a garment."""
        if self._garments:
            self._at = self._garments[at].folder
            self._draw_garments()
        else:
            super().move_to(at)

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
        here, digits = (WORDS, ("1-9", "open that garment")) if self._garments else ({}, ("1-3", "choose that"))
        keys = [*keys_of(self).help("shelf", here), digits]
        self.app.push_screen(HelpScreen("The shelf", (), [("right now", keys)]))

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
        next_of = partial(what_next, now=program(self).now)
        for first in range(0, len(folders), AT_A_TIME):
            if look != self._look:  # the shelf was looked at anew meanwhile
                return
            some = tuple(seen(folder, next_of) for folder in folders[first : first + AT_A_TIME])
            self.post_message(self.Read(look, some, first + AT_A_TIME >= len(folders)))

    def _draw(self) -> None:
        self.set_class(not self._garments, "-empty")
        if self._garments:
            self._draw_garments()
        else:
            self._draw_empty()

    def _draw_garments(self) -> None:
        now, places = program(self).now, [one.folder for one in self._garments]
        at = places.index(self._at) if self._at in places else 0
        unread = {one.folder for one in self._garments} - self._known.keys()
        choices = [
            Choice(one.title, ("…",))
            if one.folder in unread
            else Choice(
                f"{one.title} · size {one.size}" if one.size else one.title,
                _lines(one, here=index == at),
                ago(one.touched, now),
                alarm=bool(one.trouble),
            )
            for index, one in enumerate(self._garments)
        ]
        many = len(self._garments)
        told = f"{many} {'garment' if many == 1 else 'garments'} in progress"
        if self._reading:
            told += f", opening {self._reading}"
        self.query_one(Sentences).show(("The shelf", "bold $count"), (told, "$quiet"))
        self.query_one(Choices).show(choices, at)
        self._show_keys()

    def _draw_empty(self) -> None:
        """Say what this is, and what to begin with."""
        key, choices = keys_of(self).shown, self.query_one(Choices)
        roomy = self.app.size.height >= MORE_FROM
        first = [Choice(text, (more,) if roomy else (), key(f"shelf.{action}")) for action, text, more in FIRST]
        self.query_one(Sentences).show((WHAT, "$foreground"))
        choices.show(first, choices.at)
        self._show_keys()

    def _show_keys(self) -> None:
        key = keys_of(self).shown
        keys = [*self.choosing(), (key("shelf.start"), "start new"), (key("shelf.demos"), "practice")]
        rest = ((key("shelf.leave"), "leave"), (key("shelf.keys"), "test keys"), (key("shelf.help"), "help"))
        self.query_one(KeyLine).show([*keys, *self.moving(), *rest])


def _lines(one: OnShelf, *, here: bool) -> tuple[str, ...]:
    """Return how far a garment is, a sign for each of its steps, where it was put, and what comes next at the caret."""
    if one.trouble:
        return (one.trouble,)
    if not one.steps:
        return (one.heading,)
    told = "finished: every step is done" if one.finished else f"step {one.step} of {one.steps}, {one.heading}"
    where = (f"You wrote: {one.where}",) if one.where else ()
    onward = (sentence(one.next),) if here and one.next else ()
    return told, "".join(_SIGNS[stands] for stands in one.track), *where, *onward
