"""Sharing a band among its sections: the optimum against brute force and against an outside reference."""

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import product
from typing import Any

import pytest
from apportionment.methods import TiesException, compute
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.sharing import CannotShare, Portion, share
from finishing_tui.craft.totals import Reach, Repeat, choose, nearest

CAP = 4
"""The most that a section of the brute-force cases can get, so that all counts can be tried."""


@st.composite
def small_edges(draw: st.DrawFn) -> tuple[Portion, ...]:
    """Up to five sections with few different ideals (so that ties are common), some fixed, some mirrored."""
    pool = draw(st.lists(st.fractions(0, 6, max_denominator=3), min_size=1, max_size=3))
    sections = []
    for _ in range(draw(st.integers(1, 5))):
        section = Portion(draw(st.sampled_from(pool)), most=draw(st.integers(2, CAP)))
        if draw(st.integers(0, 5)) == 0:
            section = Portion(Fraction(int(section.ideal)), fixed=True)
        elif section.ideal:
            section = replace(section, least=draw(st.integers(0, 2)))
        sections.append(section)
    order = draw(st.permutations(range(len(sections))))
    for pair in range(draw(st.integers(0, len(sections) // 2))):
        first, second = order[2 * pair], order[2 * pair + 1]
        if bool(sections[first].ideal) == bool(sections[second].ideal):
            sections[first] = replace(sections[first], mirrors=second)
    return tuple(sections)


def by_trying_all(
    sections: Sequence[Portion], total: int | None, repeat: tuple[int, int] | None
) -> tuple[int, ...] | None:
    """Return the best counts straight from the words of the design, or None where nothing fits."""
    choices = [
        range(int(section.ideal), int(section.ideal) + 1)
        if section.fixed
        else range(section.least, (section.most or 0) + 1)
        if section.ideal
        else range(1)
        for section in sections
    ]
    ideal_total = sum(section.ideal for section in sections)
    best: tuple[tuple[Any, ...], tuple[int, ...]] | None = None
    for counts in product(*choices):
        given_total = sum(counts)
        if given_total < 1 or (total is not None and given_total != total):
            continue
        if repeat and (given_total < repeat[1] or (given_total - repeat[1]) % repeat[0]):
            continue
        if any(s.mirrors is not None and counts[i] != counts[s.mirrors] for i, s in enumerate(sections)):
            continue
        measure = sum((n - s.ideal) ** 2 / s.ideal for n, s in zip(counts, sections, strict=True) if s.ideal)
        uneven = sum(abs(one - other) for one, other in zip(counts, counts[::-1], strict=True))
        earlier_first = tuple(-count for count in counts)
        key = (abs(given_total - ideal_total), given_total, measure, uneven, earlier_first)
        if best is None or key < best[0]:
            best = (key, counts)
    return None if best is None else best[1]


@given(small_edges(), st.none() | st.integers(1, 16), st.sampled_from([None, (4, 0), (4, 2), (2, 1), (3, 1)]))
def test_nothing_is_better_by_trying_all(
    sections: tuple[Portion, ...], total: int | None, repeat: tuple[int, int] | None
) -> None:
    """Total, measure and both tie rules are met exactly; what is refused cannot be met at all."""
    wanted = by_trying_all(sections, total, repeat)
    try:
        found = share(sections, total=total, repeat=repeat)
    except CannotShare:
        assert wanted is None
    else:
        assert found.counts == wanted


@given(
    st.lists(st.sampled_from([Fraction(1, 2), Fraction(1, 3)]), min_size=8, max_size=8),
    st.permutations(range(8)),
    st.integers(0, 4),
    st.integers(1, 8),
)
def test_ties_across_chains_and_rings_of_mirrors(
    ideals: list[Fraction], order: list[int], pairs: int, total: int
) -> None:
    """Mirrors that lie anywhere link places and their opposites in lines and rings: the most symmetric still wins."""
    sections = [Portion(ideal, most=1) for ideal in ideals]
    for pair in range(pairs):
        sections[order[2 * pair]] = replace(sections[order[2 * pair]], mirrors=order[2 * pair + 1])
    wanted = by_trying_all(sections, total, None)
    if wanted is None:
        with pytest.raises(CannotShare):
            share(sections, total=total)
    else:
        assert share(sections, total=total).counts == wanted


def test_a_line_whose_middle_comes_first() -> None:
    """A pair at places 0 and 1 lies opposite both single places: either may go without, so the earlier one gets it."""
    alike = [Portion(Fraction(1, 2), most=1)] * 4
    sections = [alike[0], replace(alike[1], mirrors=0), alike[2], alike[3]]
    assert share(sections, total=3).counts == by_trying_all(sections, 3, None) == (1, 1, 1, 0)


def test_a_ring_of_four_pairs() -> None:
    """Pairs 0-1, 7-5, 2-4, 6-3 form a ring; of the equally symmetric halves the one with earlier places is chosen."""
    alike = [Portion(Fraction(1, 2), most=1)] * 8
    sections = [replace(one, mirrors=other) for one, other in zip(alike, (1, 0, 4, 6, 2, 7, 3, 5), strict=True)]
    assert share(sections, total=4).counts == by_trying_all(sections, 4, None) == (1, 1, 0, 1, 0, 0, 1, 0)


@given(st.lists(st.integers(1, 60), min_size=1, max_size=8), st.integers(1, 80))
def test_without_mirrors_it_is_sainte_lague(ideals: list[int], total: int) -> None:
    """The counts are those of the apportionment package's saintelague; where that reports a tie, the measure is."""
    found = share([Portion(Fraction(ideal)) for ideal in ideals], total=total)
    try:
        reference = compute("saintelague", ideals, total, fractions=True, tiesallowed=False)
    except TiesException:
        reference = compute("saintelague", ideals, total, fractions=True)
        other = sum((Fraction(n) - ideal) ** 2 / ideal for n, ideal in zip(reference, ideals, strict=True))
        assert other == found.measure
    else:
        assert list(found.counts) == reference


edges = st.lists(st.fractions(Fraction(1, 3), 200, max_denominator=12), min_size=1, max_size=12)


@given(edges, st.integers(1, 5), st.integers(0, 4))
def test_the_counts_add_up_and_fit_the_repeat(ideals: list[Fraction], of: int, plus: int) -> None:
    """The sum of the counts is the total, of the form asked for, and no total of that form is nearer."""
    found = share([Portion(ideal) for ideal in ideals], repeat=(of, plus))
    assert sum(found.counts) == found.total
    assert found.total >= plus
    assert (found.total - plus) % of == 0
    assert found.ideal_total == sum(ideals)
    for other in (found.total - of, found.total + of):
        if other >= max(1, plus):
            assert abs(found.total - found.ideal_total) <= abs(other - found.ideal_total)


@given(edges, st.integers(1, 2000))
def test_bounds_and_fixed_counts_are_kept(ideals: list[Fraction], total: int) -> None:
    """Fixed sections get exactly their ideal, free ones stay within their bounds, mirrors are equal."""
    sections = [Portion(ideal, least=1, most=300) for ideal in ideals]
    sections += [Portion(Fraction(7), fixed=True), replace(sections[0], mirrors=0)]
    try:
        counts = share(sections, total=total).counts
    except CannotShare as refused:
        near = refused.nearest
        assert near
        assert total not in near
        assert all(sum(share(sections, total=one).counts) == one for one in near)
        return
    assert counts[-2] == 7
    assert counts[0] == counts[-1]
    assert all(1 <= count <= 300 for count in counts[:-2])


@given(st.lists(st.fractions(1, 50, max_denominator=6), min_size=1, max_size=6))
def test_a_palindromic_edge_that_can_be_shared_evenly_is(half: list[Fraction]) -> None:
    """An edge that reads the same from both ends, with each half mirrored, gets counts that do."""
    size = len(half)
    sections = [Portion(ideal) for ideal in half]
    sections += [Portion(ideal, mirrors=size - 1 - i) for i, ideal in enumerate(reversed(half))]
    counts = share(sections).counts
    assert counts == counts[::-1]


@given(edges, st.integers(1, 500))
def test_one_stitch_more_takes_none_away(ideals: list[Fraction], total: int) -> None:
    """House monotony, a known property of this measure: with a greater total no section gets fewer."""
    sections = [Portion(ideal) for ideal in dict.fromkeys(ideals)]
    before, after = share(sections, total=total).counts, share(sections, total=total + 1).counts
    moved = sum(max(0, one - other) for one, other in zip(before, after, strict=True))
    measure = share(sections, total=total + 1).measure
    # A tie may be settled otherwise; then the greedy step from the earlier counts is exactly as good.
    if moved:
        steps = [
            sum(
                ((count + (i == j) - s.ideal) ** 2 / s.ideal for j, (count, s) in enumerate(zip(before, sections))),  # noqa: B905
                Fraction(0),
            )
            for i in range(len(sections))
        ]
        assert min(steps) == measure


def test_greedy_would_be_wrong_with_mirrors() -> None:
    """A mirrored pair moves by two: for 3 stitches it gets one each and the single one, as all tries show."""
    sections = [Portion(Fraction(1)), Portion(Fraction(6, 5)), Portion(Fraction(1), mirrors=0)]
    assert share(sections, total=2).counts == (1, 0, 1)
    assert share(sections, total=3).counts == (1, 1, 1)
    assert share(sections, total=4).counts == (1, 2, 1)


def test_ties_go_to_symmetry_and_then_to_earlier_sections() -> None:
    """Four alike and two stitches: the outer two; three alike and one stitch: the middle one; two: the first."""
    alike = [Portion(Fraction(1, 2))] * 4
    assert share(alike, total=2).counts == (1, 0, 0, 1)
    assert share(alike[:3], total=1).counts == (0, 1, 0)
    assert share(alike[:2], total=1).counts == (1, 0)


def test_an_ideal_of_nothing_gets_nothing() -> None:
    """A section with ideal 0 gets 0, even where the total is far above the ideals."""
    assert share([Portion(Fraction(0)), Portion(Fraction(3))], total=9).counts == (0, 9)


def test_a_hundred_sections_are_no_trouble() -> None:
    """The largest edge taken, with every kind of tie and mirror, is answered (and adds up)."""
    sections = [Portion(Fraction(7, 2), mirrors=None if i % 3 else (i + 1) % 100) for i in range(99)]
    sections.append(Portion(Fraction(7, 2)))
    assert sum(share(sections, total=333).counts) == 333


@pytest.mark.parametrize(
    ("sections", "asked", "give_up", "near", "says"),
    [
        ([Portion(Fraction(15)), Portion(Fraction(15), mirrors=0)], {"total": 31}, "mirrors", (30, 32), "by two"),
        ([Portion(Fraction(9), most=12, along="sleeve")], {"total": 20}, "limits", (12,), "limit of sleeve"),
        ([Portion(Fraction(9), holds=12, along="sleeve")], {"total": 20}, "total", (12,), "two in every spot"),
        ([Portion(Fraction(9), most=12, holds=12, along="sleeve")], {"total": 20}, "total", (12,), "two in every spot"),
        ([Portion(Fraction(9), most=11, holds=12, along="sleeve")], {"total": 20}, "limits", (11,), "limit of sleeve"),
        ([Portion(Fraction(9), least=8, along="sleeve")], {"total": 5}, "limits", (8,), "limit of sleeve"),
        ([Portion(Fraction(16), fixed=True, along="back")], {"total": 20}, "fixed", (16,), "back"),
        ([Portion(Fraction(9))], {"total": 21, "repeat": (4, 0)}, "total", (20, 24), "not 4m"),
        ([Portion(Fraction(16), fixed=True)], {"repeat": (4, 2)}, "repeat", (16,), "14 and 18"),
        ([Portion(Fraction(33), fixed=True), Portion(Fraction(5)), Portion(Fraction(5), mirrors=1)],
         {"repeat": (4, 0)}, "mirrors", (40, 44), "odd"),
        ([Portion(Fraction(0))], {}, "limits", (), "nothing to share"),
        ([Portion(Fraction(4), most=4), Portion(Fraction(9), least=6, mirrors=0)], {}, "mirrors", (), "no count suits"),
        ([Portion(Fraction(4)), Portion(Fraction(0), mirrors=0)], {}, "mirrors", (), "nothing to pick up"),
    ],
)  # fmt: skip
def test_a_refusal_names_what_to_give_up_and_the_nearest_totals(
    sections: list[Portion],
    asked: dict[str, int | tuple[int, int]],
    give_up: str,
    near: tuple[int, ...],
    says: str,
) -> None:
    """Every condition that can stand in the way is named in one sentence, with the totals that can be met."""
    with pytest.raises(CannotShare, match=says) as refused:
        share(sections, **asked)  # type: ignore[arg-type]  # total is an int and repeat a pair in each case above
    assert (refused.value.give_up, refused.value.nearest) == (give_up, near)
    assert "\n" not in str(refused.value)
    assert all(str(total) in str(refused.value) for total in near)


@pytest.mark.parametrize(
    ("sections", "total", "repeat"),
    [
        ([], None, None),
        ([Portion(Fraction(1))] * 101, None, None),
        ([Portion(Fraction(-1))], None, None),
        ([Portion(Fraction(100_001))], None, None),
        ([Portion(Fraction(60_000))] * 2, None, None),
        ([Portion(Fraction(1, 2), fixed=True)], None, None),
        ([Portion(Fraction(1), least=3, most=2)], None, None),
        ([Portion(Fraction(1), least=-1)], None, None),
        ([Portion(Fraction(0), least=1)], None, None),
        ([Portion(Fraction(1), mirrors=0)], None, None),
        ([Portion(Fraction(1), mirrors=7)], None, None),
        (
            [Portion(Fraction(1)), Portion(Fraction(1), mirrors=0), Portion(Fraction(1), mirrors=0)],
            None,
            None,
        ),
        ([Portion(Fraction(1))], 0, None),
        ([Portion(Fraction(1))], 100_001, None),
        ([Portion(Fraction(1))], None, (0, 0)),
        ([Portion(Fraction(1))], None, (4, -1)),
        ([Portion(Fraction(1))], None, (4, 1001)),
    ],
)
def test_what_makes_no_sense_is_refused(
    sections: list[Portion], total: int | None, repeat: tuple[int, int] | None
) -> None:
    """Numbers out of range and descriptions that contradict themselves are refused, not guessed at."""
    with pytest.raises(Impossible):
        share(sections, total=total, repeat=repeat)


@given(
    st.fractions(0, 60, max_denominator=4),
    st.integers(0, 20),
    st.integers(0, 40),
    st.sampled_from([1, 2]),
    st.integers(1, 9),
    st.integers(0, 12),
)
def test_the_chosen_total_is_the_nearest(
    ideal: Fraction, least: int, width: int, step: int, of: int, plus: int
) -> None:
    """Of all totals that can be met, the chosen one is nearest to the ideal (the lesser of two), by trying all."""
    among, repeat = Reach(least, least + step * (width // step), step), Repeat(of, plus)
    every = [t for t in range(1, least + width + 1) if among.holds(t) and repeat.holds(t)]
    assert choose(ideal, among, repeat) == min(every, key=lambda t: (abs(t - ideal), t), default=None)
    near = nearest(ideal, among, repeat)
    assert set(near) <= set(every)
    assert bool(near) == bool(every)
