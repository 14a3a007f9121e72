"""A rhythm as the formula of a straight line, the most even there is, asked in constant time.

Built of nothing but whole numbers, so that it can be written into a journal and read back for ever. It never
holds a list of its spots. Which line is the right one is for ``craft.spacing`` to say.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import ClassVar

from finishing_tui.craft.runs import Run, joined


@dataclass(frozen=True, slots=True)
class Line:
    """After ``i`` of its ``spots`` there are ``floor((i * numerator + offset) / denominator)`` loops.

    This is the digital straight line of Bresenham (IBM Systems Journal 4, 1965) with any slope up to two loops a
    spot and any offset from 0 to ``denominator - 1``. A piece cut off it and its mirror image are such lines too.
    """

    numerator: int
    denominator: int
    offset: int
    spots: int
    skips_first: ClassVar[bool] = False
    """Said as runs, a line has the picks of a run first, like every rhythm that is not a mirror image of runs."""

    def __post_init__(self) -> None:
        if not (
            1 <= self.numerator <= 2 * self.denominator and 0 <= self.offset < self.denominator and self.spots >= 0
        ):
            raise ValueError(
                f"no such line: ({self.numerator} i + {self.offset}) / {self.denominator}, {self.spots} spots"
            )

    @property
    def stitches(self) -> int:
        """Loops made over the whole rhythm."""
        return (self.spots * self.numerator + self.offset) // self.denominator

    def at(self, spot: int) -> int:
        """Loops made at ``spot`` (1 is the first): 0, 1 or 2. IndexError beyond the rhythm."""
        if spot < 1:
            raise IndexError(f"spots are numbered from 1, so there is no spot {spot}")
        return self.up_to(spot) - self.up_to(spot - 1)

    def between(self, after: int, last: int) -> list[int]:
        """Return the loops made at each spot after ``after`` up to ``last``. IndexError beyond the rhythm."""
        if not 0 <= after <= last <= self.spots:
            raise IndexError(f"spots {after + 1} to {last} are not all among the {self.spots} of this rhythm")
        made = [(spot * self.numerator + self.offset) // self.denominator for spot in range(after, last + 1)]
        return [here - before for before, here in pairwise(made)]

    def up_to(self, spot: int) -> int:
        """Loops made in the first ``spot`` spots (0 before the first). IndexError beyond the rhythm."""
        if not 0 <= spot <= self.spots:
            raise IndexError(f"spot {spot} is not among the {self.spots} of this rhythm")
        return (spot * self.numerator + self.offset) // self.denominator

    def spot_of(self, loop: int) -> int:
        """Return the spot where the ``loop``-th loop is made (1 is the first). IndexError if there is none."""
        if not 1 <= loop <= self.stitches:
            raise IndexError(f"loop {loop} is not among the {self.stitches} of this rhythm")
        return -((self.offset - loop * self.denominator) // self.numerator)

    def rest(self, after: int) -> "Line":
        """Return what is left after the first ``after`` spots, exactly. IndexError beyond the rhythm."""
        if not 0 <= after <= self.spots:
            raise IndexError(f"spot {after} is not among the {self.spots} of this rhythm")
        offset = (after * self.numerator + self.offset) % self.denominator
        return Line(self.numerator, self.denominator, offset, self.spots - after)

    def mirrored(self) -> "Line":
        """Return the same rhythm walked from its other end.

        ``stitches - floor((A - i p) / q)`` with ``A = spots p + offset`` is ``floor((i p - A + q - 1) / q)`` plus a
        constant, so only the offset changes.
        """
        end = self.spots * self.numerator + self.offset
        offset = (self.denominator - 1 - end) % self.denominator
        return Line(self.numerator, self.denominator, offset, self.spots)

    def as_runs(self) -> tuple[Run, ...]:
        """Return it as runs in walking order, equal neighbours joined; the first may be a cut one (0 of 1)."""
        return joined(self._single_runs())

    def run_end(self, after: int) -> int:
        """Return the spot where the run that holds spot ``after + 1`` ends. IndexError beyond the rhythm."""
        if not 0 <= after < self.spots:
            raise IndexError(f"spot {after + 1} is not among the {self.spots} of this rhythm")
        if self.numerator % self.denominator == 0:
            return after + 1
        rare, opens = self._rare()
        seen = rare.up_to(after + 1 if opens else after)
        if seen == rare.stitches:
            return self.spots
        return rare.spot_of(seen + 1) - (1 if opens else 0)

    @property
    def drift(self) -> Fraction:
        """How far it strays, in stitches, from the straight line through its own ends, at its worst spot.

        Takes as long as there are spots.
        """
        spots, stitches = self.spots, self.stitches
        step, wide, at = self.numerator, self.denominator, self.offset
        worst = max(abs((i * step + at) // wide * spots - i * stitches) for i in range(spots + 1))
        return Fraction(worst, max(spots, 1))

    def picked(self) -> list[int]:
        """Return every loop's spot, in order; a doubled spot stands twice."""
        step, wide, at = self.numerator, self.denominator, self.offset
        return [-((at - loop * wide) // step) for loop in range(1, self.stitches + 1)]

    def _single_runs(self) -> Iterator[Run]:
        after = loops = 0
        while after < self.spots:
            end = self.run_end(after)
            made = self.up_to(end)
            yield Run(made - loops, end - after, 1)
            after, loops = end, made

    def _rare(self) -> tuple["Line", bool]:
        """Return the line of the spots that never stand together, and whether they open a run (else they end it).

        Up to one half these are the picks, then up to one the skips, up to one and a half the doubled spots, and
        up to two the single ones. The skips of a line are a line: ``i - floor((i p + c) / q)`` is
        ``floor((i (q - p) + q - 1 - c) / q)``.
        """
        floor, part = divmod(self.numerator, self.denominator)
        if 2 * part <= self.denominator:
            return Line(part, self.denominator, self.offset, self.spots), floor == 0
        others = self.denominator - part
        return Line(others, self.denominator, self.denominator - 1 - self.offset, self.spots), floor == 1
