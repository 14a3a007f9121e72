"""A journal, a file or a name that holds what steers a terminal: no screen lets it through."""

import ast
from pathlib import Path

import pytest
from textual.events import Paste

from finishing_tui.screens import app as program
from finishing_tui.screens.app import FinishingApp
from finishing_tui.widgets import plain as gate
from finishing_tui.widgets.entry import EntryBox
from tests.poisoned import marked, poison
from tests.screens import scenes
from tests.screens.hands import app_for, pressing, settled, shelf, shown
from tests.screens.scenes import SCENES
from tests.steering import IN_UTF_8, ON_DISK, POISON, steering

SHOWN_IN = (
    "item",
    "join-which",
    "join-uneven",
    "spot-strayed",
    "held",
    "count",
    "round-shaped",
    "bind-off",
    "check",
    "weave-in",
    "value-typed",
    "at-its-end",
    "finished",
    "looked-at",
    "refused",
    "take-back-named",
    "recount-asked",
    "recount-will-pucker",
    "coming-back",
    "cut-off",
    "help",
    "what-if",
    "what-if-rounds",
    "ledger",
    "ledger-below",
    "finished-anyway",
    "left-out-anyway",
    "numbers",
    "numbers-asked",
    "rip-back",
    "rip-back-to",
    "looking-only",
    "note",
    "put-down",
    "changed-plan",
    "damaged",
    "shelf-full",
    "shelf-trouble",
    "start-line",
)
"""A scene of every screen and of every face that shows texts of a garment or of a file."""


@pytest.mark.turns(of=12)
@pytest.mark.parametrize("name", SHOWN_IN)
async def test_no_screen_lets_anything_steer(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every text of the journal is poison, and so is the shelf's name: all that is drawn, at two sizes, is inert."""

    def on_poisoned_shelf(at: Path, **changes: str) -> Path:
        (at / ON_DISK).mkdir()
        return marked(shelf(at / ON_DISK, **changes))

    def opened(folder: Path, *, looks: str = "") -> FinishingApp:
        return app_for(_poison_if_whole(folder, name), looks=looks)

    def on_shelf(shelf: Path, **more: str) -> FinishingApp:
        _poison_if_whole(shelf / "every-face", name)
        return FinishingApp(shelf, **more)  # type: ignore[arg-type]

    monkeypatch.setattr(scenes, "shelf", on_poisoned_shelf)
    monkeypatch.setattr(scenes, "app_for", opened)
    monkeypatch.setattr(scenes, "FinishingApp", on_shelf)
    scene = SCENES[name]
    app = scene.app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        assert not steering(shown(app))
        await pressing(*scene.keys)(pilot)
        for size in ((80, 24), (40, 20)):
            await pilot.resize_terminal(*size)
            await settled(pilot)
            assert not steering(shown(app)), name


def _poison_if_whole(folder: Path, name: str) -> Path:
    return folder if name in {"damaged", "shelf-trouble"} else poison(folder, IN_UTF_8)


def test_there_is_one_gate() -> None:
    """Whatever a screen or a widget draws is made by ``plain``; besides it only signs of our own become content."""
    package = Path(program.__file__).parents[1]
    for path in [*package.glob("screens/**/*.py"), *package.glob("widgets/**/*.py")]:
        if path == Path(gate.__file__):
            continue
        for call in (node for node in ast.walk(ast.parse(path.read_text())) if isinstance(node, ast.Call)):
            name = ast.unparse(call.func)
            if name == "Content":
                assert all(_our_own(word) for word in call.args), (path, ast.unparse(call))
            elif name == "Static":
                assert all(ast.unparse(word).startswith("plain(") for word in call.args), (path, ast.unparse(call))
            elif name.startswith("Content.") or name in {"Text", "Label", "Text.from_markup"}:
                assert ast.unparse(call) == "Content.assemble(*pieces)", (path, ast.unparse(call))  # the edge's


def _our_own(word: ast.expr) -> bool:
    """Return whether it is a text that stands in the program itself, or so many of it."""
    return isinstance(word, ast.Constant) or (isinstance(word, ast.BinOp) and isinstance(word.left, ast.Constant))


async def test_what_is_typed_and_pasted_steers_nothing(tmp_path: Path) -> None:
    """A line that holds poison before a key is pressed, and one that is pasted."""
    app = SCENES["note"].app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await pressing(*SCENES["note"].keys)(pilot)
        entry = app.screen.query_one(EntryBox)
        entry.ask(POISON, 200)
        await settled(pilot)
        assert not steering(shown(app))
        assert not steering(entry.value)
        entry.post_message(Paste(POISON))
        await settled(pilot)
        assert not steering(shown(app))
        assert not steering(entry.value)
