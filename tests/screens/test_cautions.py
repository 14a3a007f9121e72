"""What is to be taken care of: read on the smallest screen too, where the hands need no room for anything else."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import Press
from finishing_tui.screens.help import Page
from finishing_tui.widgets.step_words import StepWords
from tests.screens.hands import BIND_OFF, BLOCK, app_for, needles, settled, shelf, shown, work_to
from tests.screens.scenes import CREW, JACKET, SIZES

CREW_RIB, SAFE = 15, 20
"""Steps of the crew neck, counted from 0: with a caution of its own, and with a child's."""

JACKET_JOIN = 4
"""A step of the baby jacket with stitches, and a caution that is a child's."""

ITEMS = ("▸ There is no cord", "▸ Buttons or trims")
"""What is ticked off there, as the next one begins."""


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
@pytest.mark.parametrize("presses", [0, 1])
async def test_the_steam_is_warned_of_at_every_size(size: tuple[int, int], presses: int, tmp_path: Path) -> None:
    """Before the pieces are wetted and while they are measured, the caution of the step stands on the screen."""
    folder = shelf(tmp_path)
    work_to(folder, BLOCK, *[Press()] * presses)
    app = app_for(folder)
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        assert "take care: Mind the steam: it burns." in shown(app)


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
@pytest.mark.parametrize("presses", [0, 1, 3])
async def test_a_childs_caution_is_read_at_every_size(size: tuple[int, int], presses: int, tmp_path: Path) -> None:
    """While its list is ticked off and when it is looked over; beside it stands what is to be ticked off next.

    It is whole, to its last word; where the smallest screen has not the room, the head says which key shows it.
    """
    folder = shelf(tmp_path, **CREW)
    work_to(folder, SAFE, *[Press()] * presses)
    app = app_for(folder)
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        text = " ".join(shown(app).split())
        assert "take care: Cords at the necks of children's clothes can strangle and small parts can choke." in text
        assert ("if you are unsure." in text) is ("take care: press ?" not in text) is (size != SIZES["40x20"])
        assert presses == 3 or ITEMS[presses] in text


@pytest.mark.parametrize(("size", "presses"), [(size, many) for size in SIZES for many in (0, 3)])
async def test_a_childs_caution_is_in_reach_while_stitches_are_made(size: str, presses: int, tmp_path: Path) -> None:
    """It stands there in words; where the stitches need the room, a sign and the key, and behind that the words."""
    folder = shelf(tmp_path, **JACKET)
    work_to(folder, JACKET_JOIN, *[Press()] * presses)
    app = app_for(folder)
    async with app.run_test(size=SIZES[size]) as pilot:
        await settled(pilot)
        assert "take care: Keep it soft and loose" in shown(app) or (
            size == "40x20" and "take care: press ?" in shown(app)
        )
        await pilot.press("?")
        await settled(pilot)
        assert "Keep it soft and loose" in "\n".join(row.plain for row in app.screen.query_one(Page)._drawn)  # noqa: SLF001


@pytest.mark.parametrize("size", [size for name, size in SIZES.items() if name != "40x20"])
async def test_a_caution_behind_its_key_stays_where_its_lines_would_be_empty(
    size: tuple[int, int], tmp_path: Path
) -> None:
    """A bind-off that says nothing else says to the last stitch that it must go over the head."""
    folder = shelf(tmp_path)
    work_to(folder, BIND_OFF, *[Press()] * 5)
    app = app_for(folder)
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        assert "take care: Bind off loosely enough to go over" in shown(app)


@pytest.mark.parametrize("size", [size for name, size in SIZES.items() if name != "40x20"])
async def test_a_caution_goes_behind_its_key_and_nothing_moves(size: tuple[int, int], tmp_path: Path) -> None:
    """Shown before the first round, and after it in the help alone, but where nothing else needs its lines.

    All that stands above keeps its row.
    """
    folder = shelf(tmp_path, **CREW)
    work_to(folder, CREW_RIB)
    app = app_for(folder)
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        words = needles(app).query_one(StepWords)
        before = words.region
        assert "take care: A short circular crowds" in shown(app)
        await pilot.press("space")
        await settled(pilot)
        assert ("take care" in shown(app)) is (size == SIZES["160x50"])
        assert words.region == before
        await pilot.press("?")
        await settled(pilot)
        read = shown(app)
        for _ in range(8):
            await pilot.press("pagedown")
            await settled(pilot)
            read += shown(app)
        assert "A short circular crowds" in read
