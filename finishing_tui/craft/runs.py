"""A rhythm as a hand remembers it: runs of "pick a of every b", one after the other.

Built of nothing but whole numbers, so that it can be written into a journal and read back for ever. Nothing here
decides how stitches are best spread; ``craft.easy`` does.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import accumulate, groupby


@dataclass(frozen=True, slots=True)
class Run:
    """``pick`` loops in every ``of`` spots, ``times`` over.

    ``pick`` may be 0 (skip them all). With more loops than spots every spot takes one and some take two: 5 of 4 is
    five loops in four spots.
    """

    pick: int
    of: int
    times: int

    def __post_init__(self) -> None:
        if self.of < 1 or self.times < 1 or not 0 <= self.pick <= 2 * self.of:
            raise ValueError(f"no such run: {self.pick} of every {self.of}, {self.times} times")

    @property
    def stitches(self) -> int:
        """Loops the run makes, all its times together."""
        return self.pick * self.times

    @property
    def spots(self) -> int:
        """Spots the run walks over, all its times together."""
        return self.of * self.times


def joined(runs: Iterable[Run]) -> tuple[Run, ...]:
    """Return ``runs`` of one time each, equal neighbours made one run with its times."""
    return tuple(replace(run, times=len(list(alike))) for run, alike in groupby(runs))


@dataclass(frozen=True, slots=True)
class Runs:
    """A rhythm made of runs, in walking order.

    Within a run the picks come first and the skips last; where spots take two, the doubled ones come last. With
    ``skips_first`` (the mirror image) each run is walked the other way round. A question about a spot is answered by
    halving, in the time of the logarithm of how many runs there are, whatever their ``times``.
    """

    runs: tuple[Run, ...]
    skips_first: bool = False
    spots: int = field(init=False, repr=False, compare=False)
    """Spots walked over by the whole rhythm."""
    stitches: int = field(init=False, repr=False, compare=False)
    """Loops made over the whole rhythm."""
    _spots: tuple[int, ...] = field(init=False, repr=False, compare=False)  # walked over before each run, and in all
    _loops: tuple[int, ...] = field(init=False, repr=False, compare=False)  # the same of loops

    def __post_init__(self) -> None:
        spots = tuple(accumulate((run.of * run.times for run in self.runs), initial=0))
        loops = tuple(accumulate((run.pick * run.times for run in self.runs), initial=0))
        for name, value in (("spots", spots[-1]), ("stitches", loops[-1]), ("_spots", spots), ("_loops", loops)):
            object.__setattr__(self, name, value)  # worked out once, since every press asks for them many times

    def at(self, spot: int) -> int:
        """Loops made at ``spot`` (1 is the first): 0, 1 or 2. IndexError beyond the rhythm."""
        if not 1 <= spot <= self.spots:
            raise IndexError(f"spot {spot} is not among the {self.spots} of this rhythm")
        index = bisect_left(self._spots, spot) - 1
        run = self.runs[index]
        place = (spot - self._spots[index] - 1) % run.of + 1
        floor, more, first = self._fuller(run)
        return floor + (place <= more if first else place > run.of - more)

    def between(self, after: int, last: int) -> list[int]:
        """Return the loops made at each spot after ``after`` up to ``last``. IndexError beyond the rhythm."""
        if not 0 <= after <= last <= self.spots:
            raise IndexError(f"spots {after + 1} to {last} are not all among the {self.spots} of this rhythm")
        found: list[int] = []
        index = bisect_right(self._spots, after) - 1
        while (at := after + len(found)) < last:
            run = self.runs[index]
            floor, more, first = self._fuller(run)
            places = range(at - self._spots[index], min(last, self._spots[index + 1]) - self._spots[index])
            of, turn = run.of, more if first else run.of - more
            found += [floor + ((place % of < turn) == first) for place in places]
            index += 1
        return found

    def up_to(self, spot: int) -> int:
        """Loops made in the first ``spot`` spots (0 before the first). IndexError beyond the rhythm."""
        if not 0 <= spot <= self.spots:
            raise IndexError(f"spot {spot} is not among the {self.spots} of this rhythm")
        index = bisect_right(self._spots, spot) - 1
        left, loops = spot - self._spots[index], self._loops[index]
        if not left:
            return loops
        run = self.runs[index]
        whole, part = divmod(left, run.of)
        return loops + whole * run.pick + self._within(run, part)

    def spot_of(self, loop: int) -> int:
        """Return the spot where the ``loop``-th loop is made (1 is the first). IndexError if there is none."""
        if not 1 <= loop <= self.stitches:
            raise IndexError(f"loop {loop} is not among the {self.stitches} of this rhythm")
        index = bisect_left(self._loops, loop) - 1
        run = self.runs[index]
        whole, part = divmod(loop - self._loops[index] - 1, run.pick)
        return self._spots[index] + whole * run.of + self._place(run, part + 1)

    def rest(self, after: int) -> "Runs":
        """Return what is left after the first ``after`` spots, exactly. IndexError beyond the rhythm."""
        left, kept = after, list(self.runs)
        while kept and left >= kept[0].spots:
            left -= kept.pop(0).spots
        if left < 0 or (left and not kept):
            raise IndexError(f"spot {after} is not among the {self.spots} of this rhythm")
        if left:
            run = kept.pop(0)
            whole, part = divmod(left, run.of)
            cut = [replace(run, times=run.times - whole)]
            if part:
                cut = [Run(run.pick - self._within(run, part), run.of - part, 1)]
                if run.times - whole > 1:
                    cut.append(replace(run, times=run.times - whole - 1))
            kept[:0] = cut
        return Runs(tuple(kept), self.skips_first)

    def mirrored(self) -> "Runs":
        """Return the same rhythm walked from its other end."""
        return Runs(self.runs[::-1], not self.skips_first)

    def as_runs(self) -> tuple[Run, ...]:
        """Return the runs in walking order; with ``skips_first`` each of them begins with its skips."""
        return self.runs

    def run_end(self, after: int) -> int:
        """Return the spot where the run that holds spot ``after + 1`` ends. IndexError beyond the rhythm."""
        if not 0 <= after < self.spots:
            raise IndexError(f"spot {after + 1} is not among the {self.spots} of this rhythm")
        index = bisect_right(self._spots, after) - 1
        of = self.runs[index].of
        return after - (after - self._spots[index]) % of + of

    @property
    def drift(self) -> Fraction:
        """How far it strays, in stitches, from the straight line through its own ends, at its worst spot."""
        spots, stitches = self.spots, self.stitches
        worst = max((abs(loops * spots - spot * stitches) for spot, loops in self._corners()), default=0)
        return Fraction(worst, max(spots, 1))

    def picked(self) -> list[int]:
        """Return every loop's spot, in order; a doubled spot stands twice."""
        return [self.spot_of(loop) for loop in range(1, self.stitches + 1)]

    def _fuller(self, run: Run) -> tuple[int, int, bool]:
        """Return what every spot of ``run`` takes, how many take one more, and whether those come first."""
        floor = 1 if run.pick > run.of else 0
        return floor, run.pick - floor * run.of, (floor == 0) != self.skips_first

    def _within(self, run: Run, part: int) -> int:
        """Loops in the first ``part`` spots of one time of ``run``."""
        floor, more, first = self._fuller(run)
        return floor * part + (min(part, more) if first else max(0, part - run.of + more))

    def _place(self, run: Run, loop: int) -> int:
        """Return the spot, within one time of ``run``, of its ``loop``-th loop."""
        floor, more, first = self._fuller(run)
        if first:
            full = (floor + 1) * more
            return -(-loop // (floor + 1)) if loop <= full else more + loop - full
        plain = run.of - more
        return loop if loop <= floor * plain else plain - (floor * plain - loop) // (floor + 1)

    def _corners(self) -> Iterator[tuple[int, int]]:
        """Give (spots, loops) wherever straying can be worst: at each turn of the first and last time of each run."""
        spots = loops = 0
        for run in self.runs:
            _, more, first = self._fuller(run)
            turn = more if first else run.of - more
            for time in {0, run.times - 1}:
                yield spots + time * run.of + turn, loops + time * run.pick + self._within(run, turn)
                yield spots + (time + 1) * run.of, loops + (time + 1) * run.pick
            spots, loops = spots + run.spots, loops + run.stitches
