"""Which totals a band can have, given what is fixed, the limits, the mirrors and the repeat; and why one cannot be met.

It finds totals only; who gets how many is the work of ``craft.apportion``. A refusal always names the
condition to give up and the nearest totals that can be met with the rest.
"""

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor, lcm

from finishing_tui.craft.errors import Impossible


class CannotShare(Impossible):
    """No counts fit: ``give_up`` names the condition to give up, ``nearest`` the totals that can be met without it.

    ``give_up`` is "total", "repeat", "mirrors", "limits" or "fixed".
    """

    def __init__(self, message: str, give_up: str, nearest: tuple[int, ...] = ()) -> None:
        super().__init__(message)
        self.give_up = give_up
        self.nearest = nearest


@dataclass(frozen=True, slots=True)
class Reach:
    """The totals least, least + step, ... most (``step`` is 2 where only mirrored pairs can move)."""

    least: int
    most: int
    step: int = 1

    def holds(self, total: int) -> bool:
        """Return whether ``total`` is one of them."""
        return self.least <= total <= self.most and (total - self.least) % self.step == 0


@dataclass(frozen=True, slots=True)
class Repeat:
    """Totals of the form ``of`` × m + ``plus`` with m from 0 up."""

    of: int
    plus: int

    def holds(self, total: int) -> bool:
        """Return whether ``total`` is of this form."""
        return total >= self.plus and (total - self.plus) % self.of == 0

    def __str__(self) -> str:
        return f"{self.of}m + {self.plus}" if self.plus else f"{self.of}m"


EVERY = Repeat(1, 0)
"""No repeat at all: any total will do."""


def reach(fixed: int, singles: tuple[int, int], pairs: tuple[int, int]) -> Reach:
    """Return the totals that can be met.

    ``fixed`` stitches are always there, single sections bring from ``singles[0]`` to ``singles[1]`` in all,
    and mirrored pairs from ``pairs[0]`` to ``pairs[1]`` a side.
    """
    least = fixed + singles[0] + 2 * pairs[0]
    most = fixed + singles[1] + 2 * pairs[1]
    return Reach(least, most, 1 if singles[0] < singles[1] or pairs[0] == pairs[1] else 2)


def nearest(wanted: Fraction | int, among: Reach, repeat: Repeat = EVERY) -> tuple[int, ...]:
    """Return the totals of at least 1, nearest to ``wanted`` from below and from above, in that order.

    One number where only one side has any, or where ``wanted`` itself can be met; none where no total can.
    """
    period = lcm(among.step, repeat.of)
    least, most = max(among.least, repeat.plus, 1), among.most
    start = min(floor(wanted), most)
    below = next((t for t in range(start, max(start - period, least - 1), -1) if _fits(t, among, repeat)), None)
    start = max(ceil(wanted), least)
    above = next((t for t in range(start, min(start + period, most + 1)) if _fits(t, among, repeat)), None)
    if below is not None and below == above:
        return (below,)
    return tuple(total for total in (below, above) if total is not None)


def _fits(total: int, among: Reach, repeat: Repeat) -> bool:
    return among.holds(total) and repeat.holds(total)


def choose(ideal: Fraction, among: Reach, repeat: Repeat = EVERY) -> int | None:
    """Return the total nearest to ``ideal`` that can be met (of two equally near, the lesser), or None."""
    return min(nearest(ideal, among, repeat), key=lambda total: (abs(total - ideal), total), default=None)
