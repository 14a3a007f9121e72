"""The one place time comes from, so that tests can bring their own."""

import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime


def _now() -> datetime:
    return datetime.now(UTC)


def _ticks() -> int:
    return time.monotonic_ns() // 1_000_000


@dataclass(frozen=True, slots=True)
class Clock:
    """``now``: the time of day in UTC; ``ticks``: milliseconds that never run backwards."""

    now: Callable[[], datetime] = _now
    ticks: Callable[[], int] = _ticks
