"""Published bands and their sections: trade.md sections 2, 4 and 7, each with its source."""

from fractions import Fraction

import pytest

from finishing_tui.craft.edges import doubt
from finishing_tui.craft.sharing import CannotShare, Portion, share


def held(stitches: int) -> Portion:
    """Return a section of fixed stitches."""
    return Portion(Fraction(stitches), fixed=True)


@pytest.mark.parametrize(("back", "front", "total"), [(20, 14, 52), (22, 16, 56), (24, 18, 60)])
def test_neckbands_that_are_all_4m(back: int, front: int, total: int) -> None:
    """Back 20 20 22 24 + 9 + front 14 14 16 18 + 9 = 52 52 56 60, all 4m (KnittingHelp 42528)."""
    found = share([held(back), Portion(Fraction(9)), held(front), Portion(Fraction(9), mirrors=1)], repeat=(4, 0))
    assert found.counts == (back, 9, front, 9)
    assert found.total == total


@pytest.mark.parametrize(("side", "front", "total"), [(13, 24, 60), (14, 26, 64), (15, 28, 68)])
def test_a_yoke_neck_that_is_4m(side: int, front: int, total: int) -> None:
    """5 + 13 14 15 15 + 24 26 28 28 + the same again = 60 64 68 68 (Plymouth Yarn)."""
    sides = [held(5), Portion(Fraction(side)), held(front), held(5), Portion(Fraction(side), mirrors=1)]
    assert share(sides, repeat=(4, 0)).counts == (5, side, front, 5, side)
    assert share(sides, repeat=(4, 0)).total == total


@pytest.mark.parametrize(
    ("front", "sleeve", "back", "total"),
    [(14, 12, 10, 72), (15, 14, 10, 78), (15, 14, 12, 82), (16, 14, 12, 84), (16, 14, 14, 88)],
)
def test_a_childs_jumper(front: int, sleeve: int, back: int, total: int) -> None:
    """72 78 82 84 88: all even, but only 72, 84 and 88 are 4m (thenuttyknitters, 2010)."""
    sections = [held(count) for count in (front, sleeve, front, back, sleeve, back)]
    assert share(sections, repeat=(2, 0)).total == total
    if total in {72, 84, 88}:
        assert share(sections, repeat=(4, 0)).total == total
    else:
        with pytest.raises(CannotShare, match=f"{total - 2} and {total + 2}"):
            share(sections, repeat=(4, 0))


@pytest.mark.parametrize(("neck", "side", "middle", "total"), [(36, 30, 37, 97), (38, 33, 41, 107)])
def test_a_deep_collar(neck: int, side: int, middle: int, total: int) -> None:
    """97 97 107 … = 10m + 7; more picks than stitches on a straight edge, a warning (The Knitter, May 2020)."""
    found = share([Portion(Fraction(side)), held(middle), Portion(Fraction(side), mirrors=0)], repeat=(10, 7))
    assert found.counts == (side, middle, side)
    assert found.total == total
    doubtful = doubt("stitch", middle, neck)
    assert doubtful is not None
    assert not doubtful.few


@pytest.mark.parametrize(("side", "total", "holder"), [(28, 94, 18), (30, 100, 20), (31, 104, 22)])
def test_a_holder_that_is_not_printed(side: int, total: int, holder: int) -> None:
    """28 30 30 31 31 twice + 10 + held + 10 = 94 100 100 104 104: held 18 20 20 22 22 (collection, 2016)."""
    sections = [held(side), held(10), Portion(Fraction(20)), held(10), held(side)]
    assert share(sections, total=total).counts == (side, 10, holder, 10, side)


@pytest.mark.parametrize(
    ("counts", "printed", "right", "mended"),
    [((18, 15, 18, 11, 24, 12), 97, 98, 23), ((20, 17, 20, 11, 28, 12), 105, 108, 25)],
)
def test_a_printed_sum_that_is_wrong(counts: tuple[int, ...], printed: int, right: int, mended: int) -> None:
    """Printed 97 and 105 are WRONG: 98 and 108; with the 23 and 25 bound off they hold (Rico 617, corrections)."""
    with pytest.raises(CannotShare) as refused:
        share([held(count) for count in counts], total=printed)
    assert refused.value.nearest == (right,)
    bound_off = [*counts[:4], mended, counts[5]]
    assert share([held(count) for count in bound_off], total=printed).total == printed


def test_an_armhole_is_half_front_half_back() -> None:
    """68 round an armhole: 34 front, 34 back (NobleKnits, 2007)."""
    found = share([Portion(Fraction(33)), Portion(Fraction(33), mirrors=0)], total=68)
    assert found.counts == (34, 34)


@pytest.mark.parametrize(
    ("side", "back", "total"), [(58, 27, 143), (60, 29, 149), (62, 31, 155), (64, 33, 161), (66, 35, 167)]
)
def test_a_v_neck_in_odd_rib(side: int, back: int, total: int) -> None:
    """143 149 155 161 167, odd for k1p1 flat, and 2 × side + back in every size (vintage raglan 1732)."""
    found = share([Portion(Fraction(side)), held(back), Portion(Fraction(side), mirrors=0)], repeat=(2, 1))
    assert found.counts == (side, back, side)
    assert found.total == total


@pytest.mark.parametrize("total", [62, 74, 86, 98])
def test_bands_that_are_4m_and_2(total: int) -> None:
    """62, 74, 86, 98 in k2p2 flat are all 4m + 2 (Australian Knitting, Jan 2016)."""
    assert share([Portion(Fraction(total))], repeat=(4, 2)).total == total


def test_169_in_k2p2_in_the_round() -> None:
    """169 is no 4m: one fewer or three more in the set-up round (KnittingHelp 58695)."""
    with pytest.raises(CannotShare) as refused:
        share([Portion(Fraction(169))], total=169, repeat=(4, 0))
    assert refused.value.nearest == (168, 172)
