"""The record of a sitting in which the computer's clock was set."""

from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal.rows import LARGEST
from finishing_tui.record import Record, as_text, record_of
from finishing_tui.record.values import Sat
from tests.garment.clocks import BACK, BEGAN, FORWARD, SetClock
from tests.garment.edges import along
from tests.garment.folders import garment_in
from tests.garment.recipes import EDGE


@pytest.mark.parametrize(
    ("ahead", "told"),
    [
        (timedelta(), "2026-03-01 12:00 to 2026-03-01 12:04, 12 acts"),
        (FORWARD, "2026-03-01 12:00 for 4 min, 12 acts"),
        (BACK, "2026-03-01 12:00 for 4 min, 12 acts"),
    ],
)
def test_a_sitting_neither_ends_before_it_began_nor_lasts_a_year(ahead: timedelta, told: str, tmp_path: Path) -> None:
    """Where the times of day cannot both be right, the record says how long it lasted by the clock that never jumps."""
    clock = SetClock()
    hand = InHand.open(garment_in(tmp_path / "gray", EDGE), clock=clock.clock())
    hand.pick_up()
    for _ in range(12):
        clock.seconds += 20
        assert hand.do(Press()) is None
    clock.ahead = ahead
    assert hand.put_down()
    looked = InHand.open(hand.folder, look=True)
    record = record_of(looked.lately(looked.known))
    looked.close()
    assert told in as_text(record)


@given(st.integers(-LARGEST, LARGEST), st.timedeltas(timedelta(days=-9000), timedelta(days=9000)))
@example(LARGEST, timedelta())
@example(-1, FORWARD)
@example(4 * 60_000, BACK)
def test_an_end_that_is_told_fits_the_length_that_was_measured(lasted_ms: int, by_day: timedelta) -> None:
    """However far the clock was set, and whatever a stranger wrote: a fitting end, a length that can be, or neither."""
    ended = BEGAN + by_day
    sat = Sat(1, BEGAN.isoformat(), ended.isoformat(), "", 3, lasted_ms)
    line = as_text(Record(along(8, 6).state, sittings=(sat,), events=1)).splitlines()[-1]
    if -120_000 <= by_day // timedelta(milliseconds=1) - lasted_ms <= 30 * 86_400_000:
        assert line == f"  1  2026-03-01 12:00 to {ended:%Y-%m-%d %H:%M}, 3 acts"
    elif 0 <= lasted_ms <= 30 * 86_400_000:
        minutes = f"{lasted_ms // 60_000} min" if lasted_ms >= 60_000 else "less than a minute"
        assert line == f"  1  2026-03-01 12:00 for {minutes}, 3 acts"
    else:
        assert line == "  1  2026-03-01 12:00 and put down at an unknown time, 3 acts"


@given(st.integers(0, 10**9), st.integers(0, 30 * 86_400))
def test_a_clock_that_nobody_sets_tells_the_end(lasted_ms: int, asleep: int) -> None:
    """The end stands in the record also where the computer slept in between."""
    ended = BEGAN + timedelta(milliseconds=lasted_ms, seconds=asleep)
    sat = Sat(1, BEGAN.isoformat(), ended.isoformat(), "", 3, lasted_ms)
    text = as_text(Record(along(8, 6).state, sittings=(sat,), events=1))
    assert f"to {ended:%Y-%m-%d %H:%M}, 3 acts" in text
