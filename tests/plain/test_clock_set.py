"""Line by line, the time of a sitting in which the computer's clock was set."""

import shutil
import tempfile
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.garment.commands import Press
from finishing_tui.garment.hand import InHand
from finishing_tui.glance.wishes import Wishes
from finishing_tui.plain import telling
from finishing_tui.plain.seeing import Seeing
from finishing_tui.plain.words import TypedKeys
from finishing_tui.talk.conversation import Talk
from tests.garment.clocks import BACK, FORWARD, SetClock
from tests.plain.making import talked
from tests.screens.hands import PICK_UP, shelf, work_to
from tests.screens.scenes import LARGE

JUMPS = st.timedeltas(timedelta(days=-9000), timedelta(days=9000))
"""As far as a clock is ever set."""


@pytest.fixture(scope="module")
def at_the_edge() -> Iterator[Path]:
    """Return a garment with a long edge to pick up next, put down."""
    with tempfile.TemporaryDirectory() as at:
        folder = shelf(Path(at), **LARGE)
        work_to(folder, PICK_UP)
        yield folder


def times(folder: Path, stretches: list[tuple[int, timedelta]], end: timedelta) -> list[str]:
    """Return what a sitting says of the time after presses of so many seconds, with the clock set before each."""
    with tempfile.TemporaryDirectory() as at:
        shutil.copytree(folder.parent, Path(at) / "shelf")
        clock = SetClock()
        hand = InHand.open(Path(at) / "shelf" / folder.name, clock=clock.clock())
        hand.pick_up()
        for seconds, ahead in stretches:
            clock.seconds += seconds
            clock.ahead = ahead
            assert hand.do(Press()) is None
        clock.ahead = end
        said = telling.time(Seeing(Talk(hand, "", TypedKeys()), clock.clock(), Wishes()).under_way())
        assert hand.put_down()
    return said


@given(st.lists(st.tuples(st.integers(1, 90), JUMPS), max_size=20), JUMPS)
def test_no_setting_of_the_clock_changes_the_time_of_a_sitting(
    at_the_edge: Path, stretches: list[tuple[int, timedelta]], end: timedelta
) -> None:
    """Set at random before every press and at the end: minutes and time left are those of a clock that nobody sets."""
    said = times(at_the_edge, stretches, end)
    minutes = sum(seconds for seconds, _ in stretches) // 60
    lasts = f"minutes in this sitting: {minutes}." if minutes else "less than a minute in this sitting."
    assert said[0] == lasts
    assert said == times(at_the_edge, [(seconds, timedelta()) for seconds, _ in stretches], timedelta())


@pytest.mark.parametrize("ahead", [FORWARD, BACK])
def test_a_clock_set_right_in_mid_sitting(at_the_edge: Path, ahead: timedelta) -> None:
    """A year off or three hours: four minutes gone, and 56 loops more at 20 seconds each to come."""
    said = times(at_the_edge, [(20, timedelta() if at < 6 else ahead) for at in range(12)], ahead)
    assert said == ["minutes in this sitting: 4.", "about 20 min left here."]


@pytest.mark.parametrize("ahead", [BACK, -FORWARD])
def test_coming_back_before_it_was_put_down(ahead: timedelta, tmp_path: Path) -> None:
    """Put down at a time that is still to come: how long ago that was cannot be known, so nothing is said of it."""
    folder = shelf(tmp_path, **LARGE)
    work_to(folder, PICK_UP)
    talked(folder, "d", "q", "", clock=SetClock().clock())
    said = talked(folder, "time", "q", "", clock=SetClock(ahead=ahead).clock())
    assert "garment: Slate crew, size large." in said
    assert "less than a minute in this sitting." in said


@pytest.mark.parametrize("ahead", [FORWARD, BACK])
def test_a_sitting_elsewhere_in_which_the_clock_was_set(at_the_edge: Path, ahead: timedelta, tmp_path: Path) -> None:
    """Only looked at, its minutes are known by the time of day alone: when that was set, none are said."""
    shutil.copytree(at_the_edge.parent, tmp_path / "shelf")
    clock = SetClock()
    hand = InHand.open(tmp_path / "shelf" / at_the_edge.name, clock=clock.clock())
    hand.pick_up()
    assert hand.flush(30)
    looked = InHand.open(hand.folder, look=True, clock=clock.clock())
    seeing = Seeing(Talk(looked, "only looked at", TypedKeys()), clock.clock(), Wishes())
    clock.seconds += 240
    assert telling.time(seeing.under_way())[0] == "minutes in this sitting: 4."
    clock.ahead = ahead
    assert telling.time(seeing.under_way()) == ["the time left is not known yet."]
    looked.close()
    assert hand.put_down()
