"""Published rib numbers (trade.md section 4), each with its source."""

import pytest

from finishing_tui.craft.ribs import Rib, balanced, edges_mirror, fitting, in_the_round, nearest, seamed
from finishing_tui.craft.totals import Repeat

K2P2, K1P1 = Rib(2, 2), Rib(1, 1)


def test_k2p2() -> None:
    """Flat and balanced 4m + 2, round 4m (Binka Schwan, TKGA, 2022; WLS Makes Stuff)."""
    assert balanced(K2P2) == Repeat(4, 2)
    assert in_the_round(K2P2) == Repeat(4, 0)


def test_k1p1() -> None:
    """Flat odd, round even (Lindy's Knits & Laces, 2009)."""
    assert balanced(K1P1) == Repeat(2, 1)
    assert in_the_round(K1P1) == Repeat(2, 0)


def test_k2p2_with_a_full_stitch_seam() -> None:
    """4m + 2; a published 4m + 1 is WRONG (Holly Briscoe)."""
    assert seamed(K2P2, "full stitch").alike == Repeat(4, 2)
    assert not any(seamed(K2P2, "full stitch").alike.holds(4 * m + 1) for m in range(50))


def test_k2p2_with_a_half_stitch_seam() -> None:
    """4m + 3 (Holly Briscoe), where one piece begins with knit and the other with purl; 4m + 1 is WRONG for those.

    Two pieces that begin alike, or one sewn to itself, need 4m + 1 instead: tests/craft/test_ribs.py sews every count
    on paper, and finds those and no others.
    """
    found = seamed(K2P2, "half stitch")
    assert found.turned == Repeat(4, 3)
    assert not any(found.turned.holds(4 * m + 1) for m in range(50))
    assert found.alike == Repeat(4, 1)


@pytest.mark.parametrize("band", [62, 74, 86, 98])
def test_bands_in_k2p2_flat(band: int) -> None:
    """All of them 4m + 2 (Australian Knitting, January 2016)."""
    assert balanced(K2P2).holds(band)
    assert edges_mirror(band, K2P2)


def test_169_in_k2p2_in_the_round() -> None:
    """It does not fit: one fewer or three more in the set-up round (KnittingHelp 58695)."""
    assert nearest(169, 4, 0) == (168, 172)
    assert "1 fewer (168) or 3 more (172)" in fitting(169, in_the_round(K2P2))


@pytest.mark.parametrize(("printed", "mended"), [(60, 62), (64, 66), (68, 70)])
def test_edges_that_do_not_mirror(printed: int, mended: int) -> None:
    """60, 64, 64, 68, 68 in k2p2 flat do not mirror; 62, 66, 66, 70, 70 would (NobleKnits, 2007)."""
    assert not edges_mirror(printed, K2P2)
    assert edges_mirror(mended, K2P2)
    assert mended in nearest(printed, 4, 2)


@pytest.mark.parametrize(
    ("side", "back", "total"), [(58, 27, 143), (60, 29, 149), (62, 31, 155), (64, 33, 161), (66, 35, 167)]
)
def test_a_v_neck_in_k1p1_flat(side: int, back: int, total: int) -> None:
    """Odd, and twice the side and the back, in every size (vintage raglan 1732)."""
    assert balanced(K1P1).holds(2 * side + back)
    assert nearest(total, 2, 1) == (2 * side + back,)
