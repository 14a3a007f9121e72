"""Spacing is provably the most even there is: by theorem for every count, and by brute force where that can be done.

The bounds themselves are proven at the head of ``craft/spacing.py``.
"""

from fractions import Fraction
from itertools import combinations
from math import gcd

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.spacing import Ends, Line, Rhythm, Style, draw, least_drift, space

ENDS: tuple[Ends, ...] = ("open", "closed", "last")
STYLES: tuple[Style, ...] = ("easy", "even")


def counts(rhythm: Rhythm) -> list[int]:
    """Return the loops at each spot, asked spot by spot."""
    return [rhythm.at(spot) for spot in range(1, rhythm.spots + 1)]


def drift_by_hand(loops: list[int]) -> Fraction:
    """Return the worst straying, summed up spot by spot."""
    spots, stitches, made, worst = len(loops), sum(loops), 0, 0
    for spot, here in enumerate(loops, 1):
        made += here
        worst = max(worst, abs(made * spots - spot * stitches))
    return Fraction(worst, spots)


@st.composite
def asked(draw_from: st.DrawFn, most: int = 3000) -> tuple[int, int, Style, Ends]:
    """Give stitches, spots, style and ends that can be spaced."""
    spots = draw_from(st.integers(1, most))
    stitches = draw_from(st.integers(1, 2 * spots))
    ends: Ends = draw_from(st.sampled_from(ENDS if stitches > 1 or spots == 1 else ("open", "last")))
    return stitches, spots, draw_from(st.sampled_from(STYLES)), ends


@given(asked())
def test_every_rhythm_makes_what_was_asked_for_within_one_stitch(request_: tuple[int, int, Style, Ends]) -> None:
    """The counts are exact, every spot takes what it can, the ends are picked, and the drift is at most one."""
    stitches, spots, style, ends = request_
    rhythm = space(stitches, spots, style=style, ends=ends)
    loops = counts(rhythm)
    assert (rhythm.stitches, rhythm.spots) == (stitches, spots) == (sum(loops), len(loops))
    assert set(loops) <= ({0, 1} if stitches <= spots else {1, 2})
    assert rhythm.drift == drift_by_hand(loops) <= 1
    assert ends == "open" or loops[-1] >= 1
    assert ends != "closed" or loops[0] >= 1


def test_even_with_open_ends_is_the_least_drift_for_every_count_up_to_200() -> None:
    """For every k <= n <= 200 the even rhythm drifts exactly floor(q/2)/q, q = n / gcd(k, n).

    Drift is summed up here spot by spot from the rhythm's own counts; k and n with a common part repeat a shorter
    rhythm, which is then compared instead of summed again.
    """
    for spots in range(1, 201):
        for stitches in range(1, spots + 1):
            common = gcd(stitches, spots)
            line = space(stitches, spots, style="even")
            assert isinstance(line, Line)
            parts = spots // common
            if common > 1:
                short = space(stitches // common, parts, style="even")
                assert isinstance(short, Line)
                assert (line.numerator, line.denominator, line.offset) == (
                    short.numerator,
                    short.denominator,
                    short.offset,
                )
                continue
            step, wide, offset = line.numerator, line.denominator, line.offset
            worst = max(abs((i * step + offset) // wide * spots - i * stitches) for i in range(spots + 1))
            assert line.up_to(spots) == stitches
            assert worst == parts // 2, (stitches, spots)
            assert least_drift(stitches, spots) == Fraction(parts // 2, parts)


@pytest.mark.parametrize("ends", ENDS)
def test_even_reaches_the_bound_of_its_ends(ends: Ends) -> None:
    """For every k <= 2n, n <= 60: drift is floor(q/2)/q, or 1 - k/n where the ends make that more; ends are picked."""
    for spots in range(1, 61):
        for stitches in range(2 if ends == "closed" and spots > 1 else 1, 2 * spots + 1):
            line = space(stitches, spots, style="even", ends=ends)
            parts = spots // gcd(stitches, spots)
            bound = Fraction(parts // 2, parts)
            if ends != "open" and stitches < spots:
                bound = max(bound, 1 - Fraction(stitches, spots))
            assert line.drift == bound == least_drift(stitches, spots, ends), (stitches, spots)
            assert line.stitches == stitches
            assert ends == "open" or line.at(spots) >= 1
            assert ends != "closed" or line.at(1) >= 1


@pytest.mark.parametrize("ends", ENDS)
def test_nothing_is_more_even_by_brute_force(ends: Ends) -> None:
    """Among all ways to pick k of n spots (n <= 15), and to double k - n of them, none drifts less than the bound."""
    for spots in range(1, 16):
        for more in range(spots + 1):
            least: Fraction | None = None
            single: Fraction | None = None
            for chosen in combinations(range(1, spots + 1), more):
                drift = _drift_of(chosen, more, spots)
                single = drift if single is None else min(single, drift)
                fits_last = ends == "open" or spots in chosen
                if fits_last and (ends != "closed" or 1 in chosen):
                    least = drift if least is None else min(least, drift)
            if more and not (ends == "closed" and more == 1 < spots):
                assert least_drift(more, spots, ends) == least, (more, spots)
            # The doubled spots among n stray as the same spots stray when they alone are picked, whatever the ends.
            if more:
                assert least_drift(spots + more, spots, ends) == single, (spots + more, spots)


def _drift_of(chosen: tuple[int, ...], stitches: int, spots: int) -> Fraction:
    """Return the drift of picking just ``chosen``: it is worst at a pick or at the spot before one."""
    worst = 0
    for made, spot in enumerate(chosen):
        before = made * spots - (spot - 1) * stitches
        after = (made + 1) * spots - spot * stitches
        worst = max(worst, -before, before, -after, after)
    return Fraction(worst, spots)


@given(st.integers(2, 100_000), st.data())
def test_even_is_a_formula_that_needs_no_list(spots: int, data: st.DataObject) -> None:
    """Anywhere on any edge the even rhythm is within its bound, and spot_of undoes up_to."""
    stitches = data.draw(st.integers(2, 2 * spots))
    ends = data.draw(st.sampled_from(ENDS))
    line = space(stitches, spots, style="even", ends=ends)
    spot = data.draw(st.integers(0, spots))
    assert abs(line.up_to(spot) - Fraction(spot * stitches, spots)) <= least_drift(stitches, spots, ends)
    loop = data.draw(st.integers(1, stitches))
    place = line.spot_of(loop)
    assert line.up_to(place - 1) < loop <= line.up_to(place)


@pytest.mark.parametrize(
    ("stitches", "spots", "ends", "says"),
    [
        (0, 5, "open", "at least 1 stitch"),
        (5, 0, "open", "at least 1 spot"),
        (11, 5, "open", "at most 10"),
        (1, 5, "closed", "at least 2 stitches"),
    ],
)
def test_what_cannot_be_spread_is_refused_in_a_sentence(stitches: int, spots: int, ends: Ends, says: str) -> None:
    """The refusal names what would be right, and least_drift refuses the same."""
    with pytest.raises(Impossible, match=says):
        space(stitches, spots, ends=ends)
    with pytest.raises(Impossible, match=says):
        least_drift(stitches, spots, ends)


def test_one_stitch_over_one_spot_can_be_closed() -> None:
    """A single spot is first and last at once."""
    assert draw(space(1, 1, ends="closed")) == draw(space(1, 1, style="even", ends="closed")) == "x"
