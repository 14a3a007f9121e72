"""What times of day say when the clock may have been set between them: something true, or nothing."""

from datetime import datetime, timedelta

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from finishing_tui.garment.commands import PickUpGarment, PutGarmentDown
from finishing_tui.glance import coming_back, glance, look_at
from finishing_tui.glance.coming_back import ago
from tests.garment.clocks import BACK, BEGAN, FORWARD
from tests.garment.edges import along
from tests.garment.paper import NOON

JUMPS = st.timedeltas(timedelta(days=-40_000), timedelta(days=40_000))
"""Also to the year in which clocks that were never set begin."""


@given(JUMPS)
@example(BACK)
@example(-FORWARD)
@example(timedelta(days=-1))
def test_nothing_lies_since_a_time_to_come(later: timedelta) -> None:
    """From two minutes before, a moment; earlier than that nothing; later, never more than twenty years."""
    said = ago(BEGAN.isoformat(), BEGAN + later)
    if timedelta(minutes=-2) <= later < timedelta(minutes=2):
        assert said == "a moment ago"
    elif timedelta() < later < timedelta(days=20 * 365):
        number, unit, _ = said.split(" ")
        one = {"minutes": timedelta(minutes=1), "hours": timedelta(hours=1), "days": timedelta(days=1)}[unit]
        assert later // one == int(number)
    else:
        assert said == ""


@given(JUMPS)
@example(BACK)
@example(FORWARD)
def test_no_sitting_lasts_less_than_nothing_or_more_than_a_day(ahead: timedelta) -> None:
    """By the times of day alone, whether it goes on or is over: a number of minutes within a day, or none."""
    paper = along(8, 6).did(PickUpGarment())
    minutes = glance(paper.state, datetime.fromisoformat(NOON) + ahead).minutes
    if timedelta() <= ahead < timedelta(days=1):
        assert minutes == ahead // timedelta(minutes=1)
    else:
        assert minutes is None or (minutes == 0 and timedelta(minutes=-1) <= ahead < timedelta())


@given(JUMPS, st.integers(0, 10**10))
def test_a_known_length_is_told_whatever_the_time_of_day(ahead: timedelta, lasted: int) -> None:
    """The clock that never jumps has the say as long as the sitting goes on."""
    paper = along(8, 6).did(PickUpGarment())
    now = datetime.fromisoformat(NOON) + ahead
    assert look_at(paper.state, 0, now, lasted=lasted).minutes == lasted // 60_000


@pytest.mark.parametrize("cut_off", [True, False])
def test_coming_back_says_nothing_of_a_time_to_come(*, cut_off: bool) -> None:
    """Put down or cut off by a clock that was ahead: how long ago is not known."""
    paper = along(8, 6).did(PickUpGarment()).press(2).did(*[] if cut_off else [PutGarmentDown("")])
    back = coming_back(paper.state, datetime.fromisoformat(NOON) + BACK)
    assert (back.away, back.cut_off) == ("", cut_off)
