"""The time of this sitting and the time left stand on the screen at every size, and are said line by line."""

import io
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.pace import FEWEST
from finishing_tui.garment.clock import Clock
from finishing_tui.garment.commands import ChoosePace, Press
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.journal import moment
from finishing_tui.garment.state import Sitting
from finishing_tui.glance import coming_back, glance, look_at
from finishing_tui.plain.running import work
from finishing_tui.screens.app import FinishingApp
from tests.garment.paper import Paper, plan_for
from tests.garment.recipes import NECKBAND
from tests.plain.making import talked
from tests.screens.hands import PICK_UP, settled, shelf, shown, work_to
from tests.screens.scenes import LARGE, SIZES


@dataclass
class Steady:
    """A clock by which every press takes twenty seconds, or one that goes on only when it is told to."""

    seconds: int = 0
    each: int = 20

    def clock(self) -> Clock:
        """Return it as the program takes it."""
        return Clock(self._now, self._ticks)

    def _now(self) -> datetime:
        return datetime(2026, 3, 1, 12, tzinfo=UTC) + timedelta(seconds=self.seconds)

    def _ticks(self) -> int:
        self.seconds += self.each
        return 1000 * self.seconds


@pytest.mark.turns(of=2)
@pytest.mark.parametrize("size", SIZES.values(), ids=SIZES)
async def test_time_gone_and_time_left_are_shown_at_every_size(size: tuple[int, int], tmp_path: Path) -> None:
    """Twelve presses of twenty seconds: four minutes gone, and 56 loops more at that pace are nearly twenty.

    In its first minute nothing is known of a sitting that is worth its place.
    """
    folder = shelf(tmp_path, **LARGE)
    work_to(folder, PICK_UP)
    steady = Steady(each=0)  # drawing asks for the time too
    app = FinishingApp(folder.parent, garment=folder, clock=steady.clock())
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        assert " min" not in shown(app).split("\n")[0]
        for _ in range(12):
            steady.seconds += 20
            await pilot.press("space")
        await settled(pilot)
        assert "4 min" in shown(app)
        assert "about 20 min left" in shown(app)


JUMPS = {
    "forward": timedelta(days=400),
    "forward some hours": timedelta(hours=5),
    "back": timedelta(days=-20_000),
    "back some hours": timedelta(hours=-5),
}
"""By how much a clock is set right in the middle of a sitting."""


@dataclass
class SetRight:
    """A clock that is set to another time of day; what never jumps goes on."""

    minutes: int = 0
    jump: timedelta = timedelta()

    def clock(self) -> Clock:
        """Return it as the program takes it."""
        return Clock(self._now, lambda: self.minutes * 60_000)

    def _now(self) -> datetime:
        return datetime(2026, 3, 1, 12, tzinfo=UTC) + timedelta(minutes=self.minutes) + self.jump


@pytest.mark.parametrize("jump", JUMPS.values(), ids=JUMPS)
async def test_a_clock_that_is_set_right_changes_no_minutes(jump: timedelta, tmp_path: Path) -> None:
    """The minutes of this sitting go on as before, on the screen, when the computer's clock is set to another time."""
    folder = shelf(tmp_path, **LARGE)
    work_to(folder, PICK_UP)
    hours = SetRight()
    app = FinishingApp(folder.parent, garment=folder, clock=hours.clock())
    async with app.run_test(size=(160, 50)) as pilot:
        await settled(pilot)
        hours.minutes = 7
        hours.jump = jump
        await pilot.press("space")
        await settled(pilot)
        assert " 7 min" in shown(app)


@pytest.mark.parametrize("jump", JUMPS.values(), ids=JUMPS)
def test_line_by_line_a_clock_that_is_set_right_changes_no_minutes(jump: timedelta, tmp_path: Path) -> None:
    """The same, asked line by line; how long ago the last press was, and all else of the time, makes sense after it."""
    folder = shelf(tmp_path, **LARGE)
    work_to(folder, PICK_UP)
    hours = SetRight()

    def typed() -> Iterator[bytes]:
        yield b"d\n"
        hours.minutes, hours.jump = 7, jump
        yield from (b"time\n", b"q\n", b"\n")

    class Lines(io.BytesIO):
        def readline(self, _size: int | None = -1, /) -> bytes:
            return next(lines, b"")

    lines, sink = typed(), io.BytesIO()
    work(folder, Lines(), sink, clock=hours.clock())
    assert "minutes in this sitting: 7." in sink.getvalue().decode().splitlines()


@pytest.mark.parametrize("look", [True, False])
@given(
    began=st.datetimes(datetime(1900, 1, 1), datetime(9900, 1, 1), timezones=st.just(UTC)),  # noqa: DTZ001
    later=st.timedeltas(timedelta(days=-30_000), timedelta(days=30_000)),
    ticks=st.integers(0, 10**9),
)
def test_whatever_the_clocks_say_it_makes_sense(*, look: bool, began: datetime, later: timedelta, ticks: int) -> None:
    """Minutes are those of the clock that never jumps, or from 0 to a day, or are not said; so is how long it lay."""
    at = moment(began)
    state = replace(Paper(plan_for(NECKBAND)).state, sittings=(Sitting(1, at),), last_act=at)
    now = min(max(began + later, datetime(1900, 1, 1, tzinfo=UTC)), datetime(9998, 1, 1, tzinfo=UTC))
    seen = look_at(state, 0, now, lasted=None if look else ticks)
    if not look:
        assert seen.minutes == ticks // 60_000
    elif timedelta() <= now - began < timedelta(days=1):
        assert seen.minutes is not None
    assert seen.minutes is None or 0 <= seen.minutes < (24 * 60 if look else 10**9)
    away = coming_back(state, now).away
    assert not away or timedelta(minutes=-3) < now - began < timedelta(days=21 * 365)


def test_line_by_line_it_is_said(tmp_path: Path) -> None:
    """Asked for the time, both are said; before enough was worked, that it is not known yet."""
    folder = shelf(tmp_path, **LARGE)
    work_to(folder, PICK_UP)
    said = talked(folder, "time", *["d"] * 12, "time", "q", "", clock=Steady().clock())
    assert "the time left is not known yet." in said
    assert any(line.startswith("about ") and line.endswith(" min left here.") for line in said)


def test_a_sitting_that_is_over_lasts_no_longer(tmp_path: Path) -> None:
    """Whoever looks at it a day later is told how long it was, not how long ago."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    steady = Steady()
    hand = InHand.open(folder, clock=steady.clock())
    hand.pick_up()
    for _ in range(4):
        assert hand.do(Press()) is None
    assert hand.put_down()
    looked = InHand.open(folder, look=True)
    a_day_later = datetime(2026, 3, 2, 12, tzinfo=UTC)
    assert glance(looked.state, a_day_later).minutes == 1


def test_a_change_of_pace_begins_the_reckoning_anew(tmp_path: Path) -> None:
    """Presses that stood for single loops say nothing of how long spots take: silence until there are new ones."""
    folder = shelf(tmp_path, **LARGE)
    work_to(folder, PICK_UP)
    hand = InHand.open(folder, clock=(steady := Steady()).clock())
    hand.pick_up()
    for _ in range(12):
        assert hand.do(Press()) is None
    assert glance(hand.state, steady.clock().now()).time_left
    assert hand.do(ChoosePace("spot")) is None
    assert not glance(hand.state, steady.clock().now()).time_left
    for _ in range(8):
        assert hand.do(Press()) is None
    assert glance(hand.state, steady.clock().now()).time_left
    assert hand.put_down()


def test_stitches_are_not_reckoned_by_the_loops_of_an_edge(tmp_path: Path) -> None:
    """Where a section of held stitches follows an edge, its time is not said from presses that picked loops up."""
    folder = shelf(tmp_path)
    work_to(folder, PICK_UP)
    hand = InHand.open(folder, clock=(steady := Steady()).clock())
    hand.pick_up()
    since, was, silent = 0, "", set()
    while (standing := hand.state.standing) is not None and standing.work is not None and not standing.work.complete:
        unit = standing.work.stages[standing.work.at].unit
        since, was = (since + 1 if unit == was else 0), unit
        if since < FEWEST:
            assert not glance(hand.state, steady.clock().now()).time_left
            silent.add(unit)
        assert hand.do(Press()) is None
    assert silent == {"spot", "stitch", "item"}
    assert hand.put_down()
