"""The easy rhythm: the two kinds of run and how many of each, and the order with the fewest blocks."""

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations, groupby

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sympy import Rational
from sympy.ntheory.continued_fraction import continued_fraction

from finishing_tui.craft.spacing import Ends, Run, Runs, draw, space

Kind = tuple[int, int]


def kinds(stitches: int, spots: int) -> dict[Kind, int]:
    """Return the two kinds of run and how many of each, by the formulas of the design."""
    if 2 * stitches >= spots:
        b = next(b for b in range(2, spots + 2) if (b - 1) * spots <= b * stitches and (b + 1) * stitches < b * spots)
        found = {(b - 1, b): spots * b - stitches * (b + 1), (b, b + 1): stitches * b - spots * (b - 1)}
    else:
        b = next(b for b in range(2, spots + 1) if stitches * b <= spots < stitches * (b + 1))
        found = {(1, b): stitches * (b + 1) - spots, (1, b + 1): spots - stitches * b}
    return {kind: count for kind, count in found.items() if count}


def easy(stitches: int, spots: int, ends: Ends = "open") -> Runs:
    """Return the easy rhythm, which is always made of runs."""
    rhythm = space(stitches, spots, ends=ends)
    assert isinstance(rhythm, Runs)
    return rhythm


def test_open_is_exactly_the_two_kinds_of_run() -> None:
    """For every k < n <= 90 the runs are x and y of two neighbouring kinds, never a negative number of one."""
    for spots in range(2, 91):
        for stitches in range(1, spots):
            wanted = kinds(stitches, spots)
            assert min(wanted.values()) > 0
            made: Counter[Kind] = Counter()
            for run in easy(stitches, spots).runs:
                made[run.pick, run.of] += run.times
            assert made == wanted, (stitches, spots)


def test_the_kinds_are_neighbours_in_the_stern_brocot_tree() -> None:
    """Their ratios differ by 1 over the product of the denominators, and b stands in the continued fraction of k/n.

    From one half up k/n = [0; 1, b - 1, ...]; below, k/n = [0; b, ...] (sympy as the outside reference).
    """
    for spots in range(3, 40):
        for stitches in range(1, spots):
            terms = [int(term) for term in continued_fraction(Rational(stitches, spots))]
            b = terms[2] + 1 if 2 * stitches > spots else terms[1]
            found = kinds(stitches, spots)
            ratios = {(b - 1, b), (b, b + 1)} if 2 * stitches >= spots else {(1, b), (1, b + 1)}
            assert set(found) <= ratios, (stitches, spots)
            (low, wide), (high, wider) = sorted(ratios, key=lambda kind: Fraction(*kind))
            assert high * wide - low * wider == 1


@pytest.mark.parametrize("ends", ["open", "closed"])
def test_drift_is_within_one_stitch_for_every_count(ends: Ends) -> None:
    """For every k <= 2n, n <= 100: never more than one stitch from the straight line, and the ends as asked."""
    for spots in range(1, 101):
        for stitches in range(2 if ends == "closed" and spots > 1 else 1, 2 * spots + 1):
            rhythm = easy(stitches, spots, ends)
            assert (rhythm.stitches, rhythm.spots) == (stitches, spots)
            assert rhythm.drift <= 1, (stitches, spots)
            if ends == "closed":
                assert rhythm.at(1) >= 1
                assert rhythm.at(spots) >= 1


@given(st.integers(1000, 100_000), st.data())
def test_drift_is_within_one_stitch_on_any_edge(spots: int, data: st.DataObject) -> None:
    """The same on edges longer than any that is knitted."""
    stitches = data.draw(st.integers(2, 2 * spots))
    assert easy(stitches, spots, data.draw(st.sampled_from(("open", "closed")))).drift <= 1


@pytest.mark.parametrize("ends", ["open", "closed"])
def test_no_order_of_the_runs_has_fewer_blocks_within_one_stitch(ends: Ends) -> None:
    """By brute force over every order of the runs for n <= 19: the fewest blocks, and the least drift with so few."""
    for spots in range(3, 20):
        for stitches in range(2, spots):
            rhythm = easy(stitches, spots, ends)
            every = [_joined(order) for order in _orders(stitches, spots, ends)]
            least = min((len(runs.runs), drift) for runs in every if (drift := runs.drift) <= 1)
            assert (len(rhythm.runs), rhythm.drift) == least, (stitches, spots)


def _orders(stitches: int, spots: int, ends: Ends) -> Iterator[list[Kind]]:
    """Give every order of the runs that the design allows for these ends."""
    if ends == "open":
        yield from _mixed(kinds(stitches, spots))
    elif 2 * stitches > spots:
        found = kinds(stitches, spots + 1)
        for last in found:
            rest = {kind: count - (kind == last) for kind, count in found.items()}
            for order in _mixed(rest):
                yield [*order, (last[0], last[0])]
    else:
        for order in _mixed(kinds(stitches - 1, spots - 1)):
            yield [*order, (1, 1)]


def _mixed(found: dict[Kind, int]) -> Iterator[list[Kind]]:
    """Give every order of runs of at most two kinds."""
    first, *others = found
    total = sum(found.values())
    for places in combinations(range(total), found[first]):
        yield [first if place in places else others[0] for place in range(total)]


def _joined(order: list[Kind]) -> Runs:
    """Set runs in this order, equal neighbours as one block."""
    return Runs(tuple(Run(*kind, len(list(same))) for kind, same in groupby(order)))


@given(st.integers(2, 400), st.data())
def test_the_closed_answer_is_the_open_one_of_its_neighbour(spots: int, data: st.DataObject) -> None:
    """From one half up the runs of k over n + 1, one of them last and short of its skip; below, of k - 1 over n - 1."""
    stitches = data.draw(st.integers(2, max(2, spots - 1)))
    if stitches == spots:
        return
    runs = easy(stitches, spots, "closed").runs
    made: Counter[Kind] = Counter()
    for run in runs:
        made[run.pick, run.of] += run.times
    last = runs[-1]
    made[last.pick, last.of] -= 1
    if 2 * stitches > spots:
        made[last.pick, last.pick + 1] += 1
        assert +made == kinds(stitches, spots + 1)
    else:
        assert last == Run(1, 1, 1)
        assert +made == kinds(stitches - 1, spots - 1)


def test_spots_that_take_two_are_doubled_last_in_their_run() -> None:
    """5 of 4 is five loops in four spots with the last one doubled, and mirrored the first."""
    rhythm = space(10, 8)
    assert rhythm == Runs((Run(5, 4, 2),))
    assert draw(rhythm) == "xxx2xxx2"
    assert draw(rhythm.mirrored()) == "2xxx2xxx"
