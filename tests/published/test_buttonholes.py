"""Published buttonhole bands (trade.md section 7), each with its source."""

import pytest

from finishing_tui.craft.buttonholes import band_for, buttonholes
from finishing_tui.craft.totals import Repeat


def test_seven_holes_of_four_on_a_hundred() -> None:
    """Margins 3: six gaps of 11 (Knitting Robin 2012)."""
    assert buttonholes(100, 7, 4, 3, 3).gaps == (11,) * 6


def test_five_holes_of_four_on_138() -> None:
    """Margins 24 and 6: four gaps of 22 (carolina22nstitches 2010)."""
    assert buttonholes(138, 5, 4, 24, 6).gaps == (22,) * 4


def test_a_fence_post() -> None:
    """A band picked up in 11m for "rib 9, bind off 2" needs 11m + 9 (Yarn Harlot 2005)."""
    assert band_for(8, 2, 9, 9, 9) == 8 * 11 + 9
    assert Repeat(11, 9).holds(band_for(8, 2, 9, 9, 9))


def test_the_stitch_left_after_a_cast_off() -> None:
    """54: rib 3, cast off 1, (rib 10, cast off 1) x 4, rib 1: gaps 11, margins 3 and 2 (KnittingHelp 151262)."""
    found = buttonholes(54, 5, 1, 3, 2)
    assert found.row == "work 3, bind off 1, (work 10, bind off 1) 4 times, work 1"
    assert found.gaps == (11,) * 4
    assert "not counted" in found.text


@pytest.mark.parametrize(("ends", "gap"), [(2, 18), (4, 17), (6, 16)])
def test_five_holes_of_two_on_86(ends: int, gap: int) -> None:
    """Ends 2 make gaps of 18, 4 make 17, 6 make 16 (KnittingHelp 159723)."""
    assert buttonholes(86, 5, 2, ends, ends).gaps == (gap,) * 4


def test_wrong_four_buttons_with_one_between() -> None:
    """WRONG in print: 4 buttons are the first, the last and 2 between, not 1 (Australian Knitting, January 2016)."""
    assert "the first, the last and 2 between" in buttonholes(100, 4, 2, 4, 4).text
