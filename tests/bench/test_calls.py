"""A press costs no more than it did: counted in calls, for time says nothing on a busy machine."""

from pathlib import Path

import pytest

from tests.bench.calls import BEFORE, CEILING, calls_of_second_press


@pytest.mark.parametrize("garment", BEFORE)
async def test_a_press_takes_few_calls(garment: str, tmp_path: Path) -> None:
    """The second press on an edge, with all that is drawn for it, stays under the ceiling."""
    calls = await calls_of_second_press(garment, tmp_path)
    assert 100 < calls.total() < CEILING, calls.most_common(10)
