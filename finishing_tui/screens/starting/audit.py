"""The audit with the knitter's own numbers, before the first stitch: nothing is started that was not looked at.

It runs beside the keys. Errors are mended or accepted one by one, warnings are understood; then the garment is written
to the shelf, whole.
"""

import time
import uuid
from dataclasses import dataclass, replace
from pathlib import Path

from textual import work
from textual.app import ComposeResult
from textual.containers import Vertical
from textual.events import Key
from textual.message import Message

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.words import listing, plural
from finishing_tui.garment.shelf import put_on_shelf
from finishing_tui.garment.starting import Draft, file_text, with_number
from finishing_tui.glance.audited import Audited, AuditPoint, PointLevel, audited
from finishing_tui.glance.numbers import NumberLine, number_lines
from finishing_tui.glance.starting import summary
from finishing_tui.screens.keys import LONG_LISTS, bindings, is_alive, keys_of
from finishing_tui.screens.listed import Listed
from finishing_tui.screens.numbers import NumbersScreen
from finishing_tui.widgets.choices import Choice, Choices
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.key_line import ShownKey as KeyShown
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.sentences import Sentences

_LEVELS: dict[PointLevel, str] = {
    "error": "won't work",
    "warning": "check this",
    "implied": "worked out",
    "differs": "differs from the recipe",
}

_NOUNS: dict[PointLevel, str] = {
    "error": "error",
    "warning": "warning",
    "implied": "number worked out",
    "differs": "count unlike the recipe",
}


class AuditScreen(Listed[Draft | Path]):
    """What the audit finds, point by point, and last of all the start; returns the draft, or the folder started."""

    CSS_PATH = "starting.tcss"
    BINDINGS = [  # noqa: RUF012  (Textual's way)
        *bindings(
            "audit",
            {
                **LONG_LISTS,
                "lists.on": "take",
                "lists.leave": "back",
                "audit.understood": "all_understood",
                "audit.accept": "accept",
                "audit.numbers": "numbers",
            },
        ),
    ]

    @dataclass
    class Found(Message):
        """The audit of ``draft`` is done."""

        draft: Draft
        found: Audited

    @dataclass
    class Started(Message):
        """The garment is on the shelf, or it is not, and ``trouble`` says why."""

        folder: Path | None
        trouble: str = ""

    def __init__(self, draft: Draft, shelf: Path) -> None:
        super().__init__()
        self.draft = draft
        self._shelf = shelf
        self._found: Audited | None = None
        self._settled: set[AuditPoint] = set()
        self._asked: AuditPoint | None = None  # an error that is accepted when x is pressed again
        self._began = 0.0
        self._starting = False

    def compose(self) -> ComposeResult:
        """Lay out what was found under a line about it."""
        with Vertical(classes="head"):
            yield Sentences(most={"low": 5})
        yield Choices(numbered=False)
        yield Sentences(id="counts")
        yield Notice()
        yield KeyLine()

    def on_mount(self) -> None:
        """Begin the audit."""
        self.set_interval(0.5, self._tick)
        self._begin()

    def on_audit_screen_found(self, message: Found) -> None:
        """Show what was found, unless a number was changed meanwhile."""
        if message.draft == self.draft:
            self._found = message.found
            self._draw(self._next(0))

    def on_audit_screen_started(self, message: Started) -> None:
        """Leave with the garment that was started, or say why it was not."""
        self._starting = False
        if message.folder is not None:
            self.dismiss(message.folder)
        else:
            self._refuse(message.trouble)
            self._keys()

    def on_key(self, event: Key) -> None:
        """Ring for a key that does nothing here."""
        if not is_alive(self, event.key):
            self.app.bell()

    def move_to(self, at: int) -> None:
        """Show the caret at a point of the audit."""
        super().move_to(at)
        self._keys()

    def action_take(self) -> None:
        """Mend the error, understand the warning, or start the garment: what the caret is at."""
        self.quiet()
        point = self._point
        if self._found is None or self._starting:
            self.app.bell()
        elif point is None:
            self._start()
        elif self._still(point):
            self.action_numbers()
        else:
            self._settled.add(point)
            self._draw(self._next(self.query_one(Choices).at + 1))

    def action_all_understood(self) -> None:
        """Understand every warning at once."""
        if self._found is None or not self._found.of("warning"):
            self._refuse("there is no warning")
            return
        self.quiet()
        self._settled.update(self._found.of("warning"))
        self._draw(self._next(0))

    def action_accept(self) -> None:
        """Accept an error as it is, where a garment can be begun with it; asked twice."""
        point, key = self._point, keys_of(self).shown
        if point is None or point.level != "error" or point in self._settled:
            self._refuse("there is no error at the caret to accept")
        elif point.missing:
            self._refuse(f"nothing can be begun without this number: {key('audit.numbers')}, and type it")
        elif self._asked is point:
            self.quiet()
            self._settled.add(point)
            self._draw(self._next(self.query_one(Choices).at + 1))
        else:
            self._refuse(f"this won't work as written. Press {key('audit.accept')} again to accept it")
            self._asked = point

    def action_numbers(self) -> None:
        """Change numbers, beginning with the one that the point at the caret is about."""
        self.quiet()
        point = self._point
        about = "A number of your own takes the place of what the recipe has."
        screen = NumbersScreen(_OfDraft(self), about, "" if point is None else point.number)
        before = self.draft
        self.app.push_screen(screen, lambda _: self._begin() if self.draft != before else None)

    def action_back(self) -> None:
        """Go back to the questions."""
        if self._starting:
            self.app.bell()
        else:
            self.dismiss(self.draft)

    def _begin(self) -> None:
        self._found, self._began = None, time.monotonic()
        self._draw(0)
        self._audit(self.draft)

    @work(thread=True, group="reading")
    def _audit(self, draft: Draft) -> None:
        try:
            found = audited(draft.inputs)
        except FinishingError as error:
            found = Audited((AuditPoint("error", str(error), missing=True),))
        self.post_message(self.Found(draft, found))

    def _start(self) -> None:
        at = self._next(0)
        if at < len(self.query_one(Choices)) - 1:
            self._draw(at)
            self._refuse("this comes first: it is not settled yet")
            return
        self._starting = True
        self._keys()
        self._write(self.draft)

    @work(thread=True, group="reading")
    def _write(self, draft: Draft) -> None:
        try:
            folder = put_on_shelf(self._shelf, draft.called, file_text(draft, str(uuid.uuid4())))
        except FinishingError as error:
            self.post_message(self.Started(None, str(error)))
        else:
            self.post_message(self.Started(folder))

    @property
    def _point(self) -> AuditPoint | None:
        points = () if self._found is None else self._found.points
        at = self.query_one(Choices).at
        return points[at] if at < len(points) else None

    def _next(self, first: int) -> int:
        """Return the first point from ``first`` on that is not settled; then any; then the start."""
        points = () if self._found is None else self._found.points
        still = [at for at, one in enumerate(points) if one.level in {"error", "warning"} and one not in self._settled]
        return next((at for at in still if at >= first), still[0] if still else len(points))

    def _tick(self) -> None:
        """Say how long it takes, once it takes long."""
        if self._found is None:
            seconds = int(time.monotonic() - self._began)
            self._head(f"Checking every step of the recipe ... {seconds} s" if seconds else "")

    def _draw(self, at: int) -> None:
        points = () if self._found is None else self._found.points
        shown = [Choice(one.text, (self._level(one),), alarm=self._still(one)) for one in points]
        if self._found is not None:
            shown.append(Choice(f"Start {self.draft.called}", summary(self.draft)))
        self.query_one(Choices).show(shown, at)
        counts = () if self._found is None or points else self._found.counts
        self.set_class(bool(counts), "-clean")
        lines = ((line, "$foreground") for line in counts)
        self.query_one("#counts", Sentences).show(("the stitches, step by step", "bold $act"), *lines)
        self._head(self._told())
        self._keys()

    def _still(self, point: AuditPoint) -> bool:
        """Return whether a point is an error that is neither mended nor accepted."""
        return point.level == "error" and point not in self._settled

    def _level(self, point: AuditPoint) -> str:
        if point not in self._settled:
            return _LEVELS[point.level]
        return {"error": "accepted", "warning": "understood"}.get(point.level, _LEVELS[point.level])

    def _head(self, told: str) -> None:
        self.query_one(".head Sentences", Sentences).show(
            ("The audit", "bold $count"),
            (told, "$foreground"),
            (f"{self.draft.recipe.title}, size {self.draft.size}: every step checked with your numbers.", "$quiet"),
        )

    def _told(self) -> str:
        if self._found is None:
            return ""
        many = {level: len(self._found.of(level)) for level in _LEVELS}
        parts = [f"{count} {_many(_NOUNS[level], count)}" for level, count in many.items() if count]
        return f"{listing(parts)}." if parts else "All counts agree."

    def _keys(self) -> None:
        point, found, key = self._point, self._found, keys_of(self).shown
        take, back = key("lists.take"), (key("lists.leave"), "back")
        if found is None or self._starting:
            self.query_one(KeyLine).show([back] if not self._starting else [])
            return
        keys: list[KeyShown] = []
        if point is None:
            keys.append((take, "start it"))
        elif self._still(point):
            keys += [(take, "mend it"), *([] if point.missing else [(key("audit.accept"), "accept")])]
        else:
            keys.append((take, "accept it"))
        keys[1:1] = self.finding()
        if found.of("warning"):
            keys.append((key("audit.understood"), "accept warnings"))
        keys += [(key("audit.numbers"), "edit numbers"), *self.moving(), back]
        self.query_one(KeyLine).show(keys)

    def _refuse(self, text: str) -> None:
        self._asked = None
        self.app.bell()
        self.query_one(Notice).show(f"{text[:1].upper()}{text[1:].removesuffix('.')}.", alarm=True)

    def quiet(self) -> None:
        """Forget what was asked or said: it was about another point."""
        self._asked = None
        self.query_one(Notice).show("")


@dataclass
class _OfDraft:
    """The numbers of a garment that is about to be started: a new one is taken as it is, and audited afterwards."""

    screen: AuditScreen

    def lines(self) -> tuple[NumberLine, ...]:
        """Return the numbers as they are."""
        draft = self.screen.draft
        return number_lines(draft.recipe, draft.size, draft.own)

    def take(self, screen: NumbersScreen, line: NumberLine, value: int | None) -> None:
        """Take a number."""
        draft = self.screen.draft
        own = with_number(draft.recipe, draft.size, draft.own, line.name, value)
        self.screen.draft = replace(draft, own=own)
        screen.taken(f"{line.text}: {value}" if value is not None else f"{line.text}: as the recipe has it")


def _many(noun: str, count: int) -> str:
    """Return a noun of several words in the number that ``count`` asks for."""
    first, _, rest = noun.partition(" ")
    return f"{plural(count, first).partition(' ')[2]} {rest}".strip()
