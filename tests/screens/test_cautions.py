"""What is to be taken care of: read on the smallest screen too, where the hands need no room for anything else."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import Press
from tests.screens.hands import BLOCK, app_for, settled, shelf, shown, work_to
from tests.screens.scenes import SIZES


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
