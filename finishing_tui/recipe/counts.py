"""Working a count out for one size: a whole number, a list by size, a number's name or a sum."""

from collections.abc import Mapping

from finishing_tui.craft.counts import span
from finishing_tui.craft.errors import FinishingError
from finishing_tui.recipe.keys import Count
from finishing_tui.recipe.sums import MOST, work_out


class NoNumber(FinishingError):
    """A count that cannot be worked out for this size."""


def count_of(count: Count, numbers: Mapping[str, int], size: int) -> int:
    """Return what ``count`` comes to for the size at index ``size``.

    Raises ``NoNumber`` when a list has no entry for it or the count is negative, ``BadSum`` for a faulty sum.
    """
    if isinstance(count, int):
        value = count
    elif isinstance(count, str):
        value = work_out(count, numbers)
    elif size < len(count):
        value = count[size]
    else:
        raise NoNumber(f"the list {list(count)} has no entry for size number {size + 1}")
    return in_range(value, str(count))


def in_range(value: int, what: str) -> int:
    """Return ``value`` if it can be a count; else raise ``NoNumber`` saying ``what`` came to it."""
    if not 0 <= value <= MOST:
        raise NoNumber(f"{what} comes to {value:,}; a count is {span(0, MOST, value)}")
    return value
