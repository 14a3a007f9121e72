"""A question for a number says what the number is for, and shows what it is about."""

from pathlib import Path

import pytest

from finishing_tui.screens.asked_large import LargeAsk
from finishing_tui.talk.asks import HowMany
from finishing_tui.widgets.edge_strip import EdgeStrip
from finishing_tui.widgets.holdings import Holdings
from tests.screens.hands import pressing, shown
from tests.screens.scenes import SCENES, SIZES

ASKED = [
    "recount-asked",
    "recount-again",
    "recount-left",
    "count-again",
    "edge-to-spare",
    "edge-ends-at",
    "edge-rows-left",
    "edge-ends-with-a-skip",
    "edge-ends-left-over",
    "rip-back-to",
    "rip-back-to-stitches",
]
"""Scenes that ask for a number over the whole screen."""


@pytest.mark.turns(of=6)
@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("name", ASKED)
async def test_a_number_is_asked_with_what_it_is_of(name: str, size: str, tmp_path: Path) -> None:
    """What it is for and what the needles hold at every size, and the edge that it is of where there is room."""
    app = SCENES[name].app(tmp_path)
    async with app.run_test(size=SIZES[size]) as pilot:
        await pressing(*SCENES[name].keys)(pilot)
        screen = app.screen
        assert isinstance(screen, LargeAsk)
        ask = screen._talk.asked  # noqa: SLF001
        assert isinstance(ask, HowMany)
        assert ask.told
        drawn = " ".join(shown(app).split())
        assert all(f"{told[:1].upper()}{told[1:]}" in drawn for told in ask.told)
        holdings, edge = screen.query_one(Holdings), screen.query_one(EdgeStrip)
        assert holdings.display
        assert screen.region.contains_region(holdings.region)
        assert edge.display == (ask.on_edge and size != "40x20")
        assert not edge.display or screen.region.contains_region(edge.region)


async def test_what_is_counted_on_coming_back_is_no_part_of_the_plan(tmp_path: Path) -> None:
    """While a count is typed it stands alone, and not before what the section is to have."""
    scene = SCENES["coming-back-typed"]
    app = scene.app(tmp_path)
    async with app.run_test(size=SIZES["80x24"]) as pilot:
        await pressing(*scene.keys[:-1])(pilot)
        assert " of " in shown(app).split("right side facing")[1].split("Any dropped")[0]
        await pressing(*scene.keys[-1:])(pilot)
        figures = shown(app).split("right side facing")[1].split("Any dropped")[0]
        assert " of " not in figures
        assert "you counted" in figures
