"""Every scene as a picture that was looked at, and what must hold in all of them at every size."""

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from rich.segment import Segment
from syrupy.assertion import SnapshotAssertion
from syrupy.extensions.single_file import SingleFileSnapshotExtension, WriteMode
from syrupy.location import PyTestLocation
from syrupy.types import SerializableData, SerializedData, SnapshotIndex
from textual.app import App, ComposeResult
from textual.pilot import Pilot
from textual.widget import Widget
from textual.widgets import Input, Static

from finishing_tui.screens.app import FinishingApp
from finishing_tui.screens.at_the_needles import AtTheNeedles
from finishing_tui.settings.looks import GROUNDS
from finishing_tui.talk.offers import offers
from finishing_tui.widgets.answer_table import AnswerTable
from finishing_tui.widgets.entry import EntryBox
from finishing_tui.widgets.figure_pair import FigurePair
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.rows import Rows
from tests.screens.hands import pressed, pressing, shown, still
from tests.screens.readable import faint, letters
from tests.screens.scenes import SCENES, SIZES
from tests.screens.test_grid import OFFSETS


@dataclass(frozen=True)
class Looks:
    """The looks that are asked for, and whether the terminal has color."""

    looks: str = ""
    colour: bool = True


FIRST = "80x24"
"""The size that every scene starts in; one start for all its pictures, and it is made smaller and larger then."""

ONCE: dict[str, Looks] = {
    "no-colour": Looks(colour=False),
    "ascii-no-colour": Looks("ascii", colour=False),
    "light": Looks("light"),
    "terminal": Looks("terminal"),
    "terminal-no-colour": Looks("terminal", colour=False),
}
"""What differs in its colors alone is pictured at a few scenes."""

TERMS: dict[str, str] = {"xterm-kitty": "truecolor", "xterm-256color": "", "linux": "", "dumb": ""}
"""Terminals of ever fewer colours, as TERM and COLORTERM say it."""


class Shown(SingleFileSnapshotExtension):
    """What a screen shows as text, in a file named for its scene and its terminal: what a reviewer reads first."""

    _file_extension = "txt"
    _write_mode = WriteMode.TEXT

    @classmethod
    def get_snapshot_name(cls, *, test_location: PyTestLocation, index: SnapshotIndex = 0) -> str:
        """Return the name of the file: the test's, and what the picture is called."""
        return f"{test_location.methodname}[{index}]"


class Picture(Shown):
    """The same as a picture, colors and all."""

    _file_extension = "svg"

    def serialize(self, data: SerializableData, **given: Any) -> SerializedData:
        """Return the picture without the number that Rich gives each one."""
        return re.sub(r"\bterminal-\d+-([\w-]+)", r"terminal-\1", str(super().serialize(data, **given)))


async def _opened(name: str, pilot: Pilot[None]) -> None:
    """Bring a scene on the screen."""
    await pressing(*SCENES[name].keys)(pilot)
    await still(pilot)


def _looks_as_it_did(app: FinishingApp, label: str, snapshot: SnapshotAssertion) -> None:
    pictures, texts = snapshot.use_extension(Picture), snapshot.use_extension(Shown)
    if isinstance(app.screen, AtTheNeedles):
        width, height = app.size
        assert app.screen.query_one(FigurePair).region.offset == OFFSETS[f"{width}x{height}"]
    assert letters(app)
    assert not faint(app)
    assert texts(name=label) == shown(app)
    assert pictures(name=label) == app.export_screenshot(title=app.title, simplify=True)


@pytest.mark.turns(of=12)
@pytest.mark.parametrize("name", SCENES)
async def test_every_scene_looks_as_it_did(name: str, snapshot: SnapshotAssertion, tmp_path: Path) -> None:
    """Every screen in every state looks as it did when it was looked at: at four sizes, and in ASCII.

    Whatever it looks like, what is written can be read; nothing is cut off at any size, and each key shown is alive.
    CI takes all of them in a run of its own.
    """
    app = SCENES[name].app(tmp_path)
    async with app.run_test(size=SIZES[FIRST]) as pilot:
        await _opened(name, pilot)
        _looks_as_it_did(app, f"{name}-{FIRST}", snapshot)
        _is_whole(app)
        _keys_are_alive(app)
        for size in (size for size in SIZES if size != FIRST):
            await pilot.resize_terminal(*SIZES[size])
            await still(pilot)
            _looks_as_it_did(app, f"{name}-{size}", snapshot)
            _is_whole(app)
        await pilot.resize_terminal(*SIZES[FIRST])
        await _in_ascii(app, pilot)
        _looks_as_it_did(app, f"{name}-{FIRST}-ascii", snapshot)


@pytest.mark.turns(of=32)
@pytest.mark.parametrize("name", SCENES)
async def test_every_scene_is_whole_in_ascii(name: str, tmp_path: Path) -> None:
    """At every size; a sign may have more letters there."""
    app = SCENES[name].app(tmp_path, "ascii")
    async with app.run_test(size=SIZES[FIRST]) as pilot:
        await _opened(name, pilot)
        for size in SIZES.values():
            await pilot.resize_terminal(*size)
            await still(pilot)
            _is_whole(app)
            assert shown(app).isascii(), [line for line in shown(app).split("\n") if not line.isascii()]


async def _in_ascii(app: FinishingApp, pilot: Pilot[None]) -> None:
    """Draw everything anew in ASCII."""
    app.set_class(True, "-ascii")  # noqa: FBT003  (Textual's)
    for rows in (rows for screen in app.screen_stack for rows in screen.query(Rows)):
        rows.redraw()
        rows.refresh()
    await still(pilot)


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("looks", ONCE)
@pytest.mark.parametrize("name", ["spot-strayed", "recount-will-pucker", "shelf-full"])
async def test_other_looks_look_as_they_did(
    name: str, looks: str, snapshot: SnapshotAssertion, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And in every look."""
    if not ONCE[looks].colour:
        monkeypatch.setenv("NO_COLOR", "1")
    app = SCENES[name].app(tmp_path, ONCE[looks].looks)
    assert app.no_color is not ONCE[looks].colour
    async with app.run_test(size=SIZES[FIRST]) as pilot:
        await _opened(name, pilot)
        _looks_as_it_did(app, f"{name}-{looks}", snapshot)


@pytest.mark.turns(of=8)
@pytest.mark.parametrize(("term", "colour"), [*((term, True) for term in TERMS), ("xterm-256color", False)])
@pytest.mark.parametrize("looks", [f"{look} {more}".strip() for look in GROUNDS for more in ("", "ascii")])
@pytest.mark.parametrize("name", ["spot-strayed", "start-line"])
async def test_every_look_can_be_read(
    name: str,
    looks: str,
    term: str,
    colour: bool,  # noqa: FBT001  (parametrized)
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Every sign and the cursor, in every look, in colour or without, with as many colours as a terminal may have."""
    if not colour:
        monkeypatch.setenv("NO_COLOR", "1")
    monkeypatch.setenv("TERM", term)
    monkeypatch.setenv("COLORTERM", TERMS[term])
    app = SCENES[name].app(tmp_path, looks)
    async with app.run_test(size=SIZES["80x24"]) as pilot:
        await _opened(name, pilot)
        assert letters(app)
        assert not faint(app)
        for entry in app.screen.query(EntryBox):
            x, y, width, _ = entry.region
            line = app.screen._compositor.render_strips()[y].crop(x, x + width)  # noqa: SLF001
            assert len({_cell(segment) for segment in line}) > 1, "the cursor cannot be seen"


def _cell(segment: Segment) -> object:
    """Return how the cells of a piece of a line look with nothing written in them."""
    return segment.style and (segment.style.bgcolor, bool(segment.style.reverse))


async def test_what_is_hard_to_read_is_found() -> None:
    """Grey on grey is told of, with its contrast; black on white is not, nor is a thin line."""

    class Three(App[None]):
        CSS = """
            #one { background: #808080; color: #9a9a9a; }
            #two { background: white; color: black; }
            #three { background: #808080; color: #9a9a9a; }
        """

        def compose(self) -> ComposeResult:
            yield Static("faint", id="one")
            yield Static("clear", id="two")
            yield Static("───", id="three")

    app = Three()
    async with app.run_test(size=(5, 3)):
        ((text, ratio),) = faint(app)
        assert text == "faint"
        assert 1.3 < ratio < 1.5


def _keys_are_alive(app: FinishingApp) -> None:
    """Check that each key at the foot is bound there, and that no key of Textual's own is left.

    Whatever key is bound leads to an action that is there; what may be done at the needles has a key; and where a line
    is written, which takes every letter, no letter is shown as a key.
    """
    bindings = app.screen.active_bindings
    active = set(bindings)
    assert not active & {"f1"}
    assert "ctrl+p" not in bindings or str(bindings["ctrl+p"].binding.id).endswith(".palette")
    writing = isinstance(app.focused, Input)
    for key, _ in app.screen.query_one(KeyLine).keys_shown:
        for word in ["1", "9"] if key == "digits" else pressed(key):
            named = {"?": "question_mark", "/": "slash"}.get(word, word)
            assert named in active or (writing and key == "digits"), key
            assert not (writing and len(word) == 1 and key != "digits"), key
    for found in bindings.values():
        name = found.binding.action.split("(")[0]
        owner = app if name.startswith("app.") else app.screen if name.startswith("screen.") else found.node
        assert callable(getattr(owner, f"action_{name.rpartition('.')[2]}", None)), found.binding
    if isinstance(app.screen, AtTheNeedles) and not app.screen.talk.read_only:
        reached = {found.binding.action for found in bindings.values()}
        for offer in offers(app.screen.talk.state, app.screen.talk.looking):
            assert any(f"'{offer.action}'" in action for action in reached), offer.action


def _is_whole(app: FinishingApp) -> None:
    """Check that everything that is drawn lies whole, and over nothing else, and that every way to choose is there."""
    _lies_whole(app)
    _all_ways_are_there(app)


def _all_ways_are_there(app: FinishingApp) -> None:
    """Check that where there are ways to choose between, the label of each is on the screen."""
    for table in app.screen.query(AnswerTable):
        if table.display and table.answers is not None:
            lines = shown(app).split("\n")
            for way in table.answers.rows:
                assert any(way.text[:20] in line for line in lines), (way.text, lines)


def _lies_whole(app: FinishingApp) -> None:
    """Check that everything that is drawn has the lines it asks for, and that none lies over another."""
    taken: list[Rows] = []
    for widget in app.screen.query(Rows):
        if not widget.display or not widget.size.height or isinstance(widget, Notice):
            continue
        region = widget.region
        inside = any(parent.id == "page" for parent in widget.ancestors)
        around = [parent.region for parent in widget.ancestors if isinstance(parent, Widget)]
        assert inside or all(one.contains_region(region) for one in around), (widget, region)
        if not inside:
            assert len(widget.rows(*widget.size)) <= widget.size.height, widget
            assert not any(region.overlaps(other.region) for other in taken), (widget, taken)
            taken.append(widget)
