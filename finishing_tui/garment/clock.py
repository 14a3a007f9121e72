"""The one place time comes from, so that tests can bring their own."""

import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime


def _now() -> datetime:
    return datetime.now(UTC)


def _ticks() -> int:
    return time.monotonic_ns() // 1_000_000


def _as_stamped(stamp: float) -> float:
    return stamp


@dataclass(frozen=True, slots=True)
class Clock:
    """``now``: the time of day in UTC; ``ticks``: milliseconds that never run backwards.

    ``came``: when a key came, in seconds that never run backwards, from the stamp that it was read with.
    """

    now: Callable[[], datetime] = _now
    ticks: Callable[[], int] = _ticks
    came: Callable[[float], float] = _as_stamped
