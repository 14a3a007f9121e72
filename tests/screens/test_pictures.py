"""Every scene as a picture that was looked at, and what must hold in all of them at every size."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from finishing_tui.screens.app import FinishingApp
from finishing_tui.widgets.key_line import KeyLine
from finishing_tui.widgets.notice import Notice
from finishing_tui.widgets.rows import Rows
from finishing_tui.widgets.ways import Ways
from tests.screens.hands import pressing, settled, shown
from tests.screens.scenes import SCENES, SIZES

ELSEWHERE = (
    "item",
    "join",
    "graft",
    "seam-two-bars",
    "spot-loop",
    "spot-due",
    "bind-off",
    "check",
    "recount-will-pucker",
    "coming-back",
)
"""The scenes whose pictures are kept at the other sizes too; all are looked at there for what is cut off."""

LOOKS = ("light", "ascii", "terminal")

Compare = Callable[..., bool]


@pytest.mark.parametrize("name", SCENES)
def test_every_scene_looks_as_it_did(name: str, snap_compare: Compare, tmp_path: Path) -> None:
    """At 80 by 24 every screen in every state looks as it did when it was looked at."""
    scene = SCENES[name]
    assert snap_compare(scene.app(tmp_path), terminal_size=SIZES["80x24"], run_before=pressing(*scene.keys))


@pytest.mark.parametrize("size", ["100x30", "40x20"])
@pytest.mark.parametrize("name", ELSEWHERE)
def test_other_sizes_look_as_they_did(name: str, size: str, snap_compare: Compare, tmp_path: Path) -> None:
    """So do the most important ones in a larger and in the smallest terminal."""
    scene = SCENES[name]
    assert snap_compare(scene.app(tmp_path), terminal_size=SIZES[size], run_before=pressing(*scene.keys))


@pytest.mark.parametrize("looks", LOOKS)
def test_other_looks_look_as_they_did(looks: str, snap_compare: Compare, tmp_path: Path) -> None:
    """And at the needles in every look."""
    app = SCENES["spot-strayed"].app(tmp_path, looks)
    assert snap_compare(app, terminal_size=SIZES["80x24"], run_before=pressing())


@pytest.mark.parametrize("name", SCENES)
async def test_nothing_is_cut_off_and_every_key_shown_is_alive(name: str, tmp_path: Path) -> None:
    """At every size each widget lies whole on the screen and over no other; each key shown is bound; ASCII is ASCII."""
    scene = SCENES[name]
    app = scene.app(tmp_path, "ascii")
    async with app.run_test(size=SIZES["80x24"]) as pilot:
        await pilot.press(*scene.keys)
        await settled(pilot)
        _keys_are_alive(app)
        for size in SIZES.values():
            await pilot.resize_terminal(*size)
            await settled(pilot)
            _lies_whole(app)
            _all_ways_are_there(app)
            assert shown(app).isascii(), [line for line in shown(app).split("\n") if not line.isascii()]


def _keys_are_alive(app: FinishingApp) -> None:
    """Check that each key at the foot is bound there, and that no key of Textual's own is left."""
    active = set(app.screen.active_bindings)
    assert not active & {"ctrl+p", "f1"}
    for key, _ in app.screen.query_one(KeyLine).keys_shown:
        for word in ["1", "9"] if key == "digits" else key.split():
            assert {"?": "question_mark", "...": "1"}.get(word, word) in active, key


def _all_ways_are_there(app: FinishingApp) -> None:
    """Check that where there are ways to choose between, the label of each is on the screen."""
    for ways in app.screen.query(Ways):
        if ways.display and ways.view is not None:
            lines = shown(app).split("\n")
            for number, way in enumerate(ways.view.ways, 1):
                assert any(f"{number}  {way.label[:20]}" in line for line in lines), (number, way.label, lines)


def _lies_whole(app: FinishingApp) -> None:
    """Check that everything that is drawn has the lines it asks for, and that none lies over another."""
    taken: dict[int, Any] = {}
    for widget in app.screen.query(Rows):
        if not widget.display or not widget.size.height or isinstance(widget, Notice):
            continue
        region = widget.region
        inside = any(parent.id == "page" for parent in widget.ancestors)
        assert inside or app.screen.region.contains_region(region), (widget, region)
        if not inside:
            assert len(widget.rows(*widget.size)) <= widget.size.height, widget
        for line in range(region.y, region.bottom) if not inside else ():
            assert line not in taken, (widget, taken[line])
            taken[line] = widget
