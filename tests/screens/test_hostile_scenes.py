"""A recipe whose every text is hostile, on each of the screens: it stands there as text, and nothing breaks."""

import re
from pathlib import Path

import pytest

from finishing_tui.widgets.rows import Rows
from tests.screens import scenes
from tests.screens.hands import pressing, settled, sewn, shelf, shown
from tests.screens.scenes import SCENES

HOSTILE = "[@click=app.quit]x[/] [red]y [/ $error \\[b 漢字かな e\u0301\u0323 " + "w" * 90
"""Markup, brackets that do not match, wide signs, combining marks, and a word that fits on no line."""

TEXTS = re.compile(r'(?m)^(\s*(?:title|text|say|how|look|mend|mind|see|along|about) *= ").*"$')

SHOWN_IN = (
    "item",
    "join-which",
    "graft",
    "seam",
    "spot-strayed",
    "count",
    "round-shaped",
    "bind-off",
    "value-typed",
    "looked-at",
    "finished-anyway",
    "recount-will-pucker",
    "what-if",
    "ledger",
    "numbers",
    "rip-back-to",
    "changed-plan",
    "help",
    "shelf-full",
)
"""A scene of each screen, and of each face, that shows texts of a recipe."""


def hostile(folder: Path) -> Path:
    """Make every text of the recipes beside the garment in ``folder`` hostile; what names something else stays."""
    quoted = HOSTILE.replace("\\", "\\\\")
    for recipe in folder.parent.glob("*.toml"):
        text = recipe.read_text(encoding="utf-8")
        recipe.write_text(TEXTS.sub(lambda found: f'{found[1]}{quoted}"', text), encoding="utf-8")
    return folder


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("name", SHOWN_IN)
async def test_hostile_texts_stand_there_as_text(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """In the smallest terminal and in a usual one all widgets stay on the screen, and the program goes on."""
    monkeypatch.setattr(scenes, "shelf", lambda at, **changes: hostile(shelf(at, **changes)))
    monkeypatch.setattr(scenes, "sewn", lambda at: hostile(sewn(at)))
    scene = SCENES[name]
    app = scene.app(tmp_path)
    async with app.run_test(size=(80, 24)) as pilot:
        await pressing(*scene.keys)(pilot)
        for size in ((80, 24), (40, 20)):
            await pilot.resize_terminal(*size)
            await settled(pilot)
            for widget in app.screen.query(Rows):
                paged = any(parent.id == "page" for parent in widget.ancestors)
                assert paged or not widget.size.height or app.screen.region.contains_region(widget.region), widget
            assert app.is_running
            assert shown(app).strip()
