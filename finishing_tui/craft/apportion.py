"""The counts with the least ``sum of (given - ideal)**2 / ideal``, exactly, where mirrored pairs move by two.

This is the measure that the Sainte-Laguë method minimises (A. Sainte-Laguë, 1910) when every count stands
alone. With mirrored pairs a greedy method goes wrong, so the optimum is found in two moves:

1. *A threshold.* One more in a group of weight w (1, or 2 for a pair) costs, stitch for stitch, ``(2x + 1) ·
   h - 2`` with ``h = (sum of 1/ideal) / w``; these marginal costs rise with x. Find the marginal cost m at
   which taking everything dearer than m away leaves at most the total, and taking everything up to m gives at
   least it. Call the counts below m and up to m ``low`` and ``high``; they differ by at most 1 in each group.
2. *A table.* Every best solution keeps pairs within low … high and single counts within low-1 … high+1. For
   let U be the units it takes beyond high and D those up to m that it leaves; the weight of D is at least
   that of U. Were there in U and in D parts of equal weight, swapping them would make it cheaper. Weights are
   1 or 2, so U is at most one single unit (two singles could be swapped for a pair, a pair for two singles);
   likewise below low. A table over these few counts, group by group, with the number of stitches used so far,
   therefore finds the best there is.

Ties go to the most symmetric counts (the least sum of differences between places equally far from the two
ends of the walk), then to earlier sections. Both are sums too, so the same table settles them.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import lcm


@dataclass(frozen=True, slots=True)
class Group:
    """One or two places of the walk (``at``, 0-based) that get equal counts, from ``least`` to ``most`` each.

    ``ideals`` holds the ideal of each place, more than 0; a group without a choice (``least == most``) may
    have any ideals, for it costs the same whatever the others get. ``slope`` says how fast the cost of one
    more stitch rises (``h`` in the module's docstring).
    """

    at: tuple[int, ...]
    ideals: tuple[Fraction, ...]
    least: int
    most: int
    slope: Fraction = field(init=False)

    def __post_init__(self) -> None:
        rise = sum((1 / ideal for ideal in self.ideals), Fraction(0)) if self.free else Fraction(0)
        object.__setattr__(self, "slope", rise / self.weight)

    @property
    def weight(self) -> int:
        """How many stitches one more is."""
        return len(self.at)

    @property
    def free(self) -> bool:
        """Whether there is a choice."""
        return self.least < self.most

    def cost(self, count: int) -> Fraction:
        """Return this group's part of the measure at ``count`` each; 0 where there is no choice."""
        if not self.free:
            return Fraction(0)
        return sum(((count - ideal) ** 2 / ideal for ideal in self.ideals), Fraction(0))

    def up_to(self, marginal: Fraction) -> int:
        """Return the count when every unit with ``(2x + 1) · slope <= marginal`` is taken."""
        if not self.free:
            return self.least
        count = (marginal / self.slope + 1) // 2
        return min(max(count, self.least), self.most)

    def next_marginal(self, count: int) -> Fraction:
        """Return ``(2x + 1) · slope`` at ``count``."""
        return (2 * count + 1) * self.slope


def best_counts(groups: Sequence[Group], total: int) -> tuple[int, ...]:
    """Return the count of each group, with ``total`` stitches in all, that is best by the measure and its ties.

    The places of all groups together are 0 to n-1, each once; the total must be attainable (see
    ``craft.totals``).
    """
    return _table(groups, _windows(groups, total), total)


def _weight(groups: Sequence[Group], marginal: Fraction) -> int:
    return sum(group.weight * group.up_to(marginal) for group in groups)


def _windows(groups: Sequence[Group], total: int) -> list[range]:
    """Return, for each group, the counts that a best solution can give it."""
    free = [group for group in groups if group.free]
    low = Fraction(0)
    high = max((group.next_marginal(group.most) for group in free), default=Fraction(0))
    # Halve until few units lie between: each group has at most one unit at any one marginal cost, so this ends.
    while _weight(groups, high) - _weight(groups, low) > 4 * len(groups):
        middle = (low + high) / 2
        if _weight(groups, middle) >= total:
            high = middle
        else:
            low = middle
    counts = [group.up_to(low) for group in groups]
    marginals = sorted(
        {
            group.next_marginal(count)
            for group, first in zip(groups, counts, strict=True)
            if group.free
            for count in range(first, group.up_to(high))
        }
    )
    at = next((one for one in marginals if _weight(groups, one) >= total), low)
    windows = []
    for group in groups:
        most = group.up_to(at)
        taken_at = group.free and most > group.least and group.next_marginal(most - 1) == at
        least = most - 1 if taken_at else most
        if group.free and group.weight == 1:
            least, most = max(least - 1, group.least), min(most + 1, group.most)
        windows.append(range(least, most + 1))
    return windows


def _in_chains(groups: Sequence[Group]) -> list[list[int]]:
    """Return the groups in chains: neighbours in a chain have places that mirror each other in the walk.

    A group has one or two places and each place one opposite, so that no group has more than two neighbours:
    every chain is a line, or a ring. A line starts at an end.
    """
    owner = {place: index for index, group in enumerate(groups) for place in group.at}
    last = len(owner) - 1
    beside = [
        [owner[last - place] for place in group.at if owner[last - place] != index]
        for index, group in enumerate(groups)
    ]
    chains: list[list[int]] = []
    seen: set[int] = set()
    for start in sorted(range(len(groups)), key=lambda index: len(beside[index]) == 2):
        chain: list[int] = []
        index: int | None = start if start not in seen else None
        while index is not None:
            seen.add(index)
            chain.append(index)
            index = next((other for other in beside[index] if other not in seen), None)
        if chain:
            chains.append(chain)
    return chains


_Score = tuple[int, int, int]
"""Cost (scaled to whole numbers), asymmetry, and minus the counts read as the digits of one number."""


@dataclass(frozen=True, slots=True)
class _Best:
    score: _Score
    counts: tuple[int, ...]


def _scores(groups: Sequence[Group], windows: Sequence[range]) -> list[dict[int, _Score]]:
    """Return what each group adds to the score at each count of its window, as whole numbers that compare alike."""
    costs = [{count: group.cost(count) for count in window} for group, window in zip(groups, windows, strict=True)]
    scale = lcm(*(cost.denominator for by_count in costs for cost in by_count.values()))
    digit = max((len(window) for window in windows), default=1)
    places = sum(group.weight for group in groups)
    return [
        {
            count: (
                cost.numerator * (scale // cost.denominator),
                0,
                -sum((count - window.start) * digit ** (places - 1 - place) for place in group.at),
            )
            for count, cost in by_count.items()
        }
        for group, window, by_count in zip(groups, windows, costs, strict=True)
    ]


def _table(groups: Sequence[Group], windows: Sequence[range], total: int) -> tuple[int, ...]:
    """Return the best counts within the windows, chain by chain of what lies opposite in the walk."""
    last = sum(group.weight for group in groups) - 1
    owner = {place: index for index, group in enumerate(groups) for place in group.at}
    scores = _scores(groups, windows)

    def opposite(first: int, second: int) -> int:
        """How many places of ``first`` lie opposite places of ``second``."""
        return sum(owner[last - place] == second for place in groups[first].at)

    # (stitches so far, count of the chain's first group, count of its latest group) -> the best so far
    table = {(0, 0, 0): _Best((0, 0, 0), ())}
    order: list[int] = []
    for chain in _in_chains(groups):
        for step, index in enumerate(chain):
            links = opposite(chain[step - 1], index) if step else 0
            ring = opposite(chain[0], index) if 1 < step == len(chain) - 1 else 0
            grown: dict[tuple[int, int, int], _Best] = {}
            for (used, first, latest), best in table.items():
                for count, (cost, _, lexical) in scores[index].items():
                    now = used + groups[index].weight * count
                    if now > total:
                        break
                    uneven = links * abs(count - latest) + ring * abs(count - first)
                    score = (best.score[0] + cost, best.score[1] + uneven, best.score[2] + lexical)
                    _keep(grown, (now, first if step else count, count), _Best(score, (*best.counts, count)))
            table = grown
        # The next chain depends on the number of stitches only.
        ended: dict[tuple[int, int, int], _Best] = {}
        for (used, _, _), best in table.items():
            _keep(ended, (used, 0, 0), best)
        table = ended
        order += chain
    found = table[total, 0, 0].counts
    return tuple(count for _, count in sorted(zip(order, found, strict=True)))


def _keep(table: dict[tuple[int, int, int], _Best], key: tuple[int, int, int], one: _Best) -> None:
    known = table.get(key)
    if known is None or one.score < known.score:
        table[key] = one
