"""A clock whose time of day is set in mid sitting, as a computer sets its own."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from finishing_tui.garment.clock import Clock

BEGAN = datetime(2026, 3, 1, 12, tzinfo=UTC)
"""The time of day at which it starts."""

FORWARD, BACK = timedelta(days=400), timedelta(hours=-3)
"""The two ways in which a clock is most often wrong: never set at all, and set for another place."""


@dataclass
class SetClock:
    """A clock that goes on only when a test says so; ``ahead``: how far its time of day was set forward, or back."""

    seconds: int = 0
    ahead: timedelta = timedelta()

    def clock(self) -> Clock:
        """Return it as the program takes it; no setting reaches its ticks."""
        return Clock(self.now, lambda: 1000 * self.seconds)

    def now(self) -> datetime:
        """Return the time of day as it is set."""
        return BEGAN + timedelta(seconds=self.seconds) + self.ahead
