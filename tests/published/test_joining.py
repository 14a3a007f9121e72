"""Published facts of joining (trade.md section 5), each with its source."""

import pytest

from finishing_tui.craft.buttonholes import bind_off_row
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.gaps import extra_loops, grafted_gap, undone
from finishing_tui.craft.pairing import pair, rows_to_rows
from finishing_tui.craft.seams import stitches_to_rows
from finishing_tui.craft.shoulders import stepped, steps
from tests.craft.row_reader import worked


@pytest.mark.parametrize("live", [16, 19, 21, 24])
def test_equal_shoulders(live: int) -> None:
    """16 19 21 24 with 16 19 21 24 pair off loop by loop (Teach Yourself Visually Knitting ch. 15)."""
    found = pair(live, live)
    assert (found.pairs, found.extra_on, found.double_at) == (live, None, ())


def test_unequal_needles_offer_both_answers() -> None:
    """Sources disagree: make one on the short side, or two together on the long side. So it asks.

    (Modern Daily Knitting; Simply Knitting 2022; Cocoknits).
    """
    found = pair(24, 25)
    assert found.extra_on == "back"
    assert len(found.double_at) == len(found.make_after) == 1
    assert "take two together" in found.text
    assert "make 1 on the front needle" in found.text
    assert "Choose one" in found.text


def test_ten_at_the_beginning_of_six_rows() -> None:
    """103 stitches: leave 10, 20, 30 unworked each side, 30 live a side, 43 left (KnittingHelp 27087)."""
    found = stepped(103, 10, 6)
    assert (found.left_unworked, found.live, found.middle) == ((10, 20, 30), 30, 43)


def test_a_shoulder_in_three_steps() -> None:
    """16 in three steps is 5, 5, 6 with two turns (TECHknitter 2012; KnittingHelp 41947)."""
    found = steps(16, 3)
    assert (found.steps, found.turns) == ((5, 5, 6), 2)


def test_one_stitch_more_on_the_front() -> None:
    """The front one stitch more than the back: one decrease, on the front (wendyknits.net, 2007)."""
    found = pair(25, 24)
    assert (found.pairs, found.extra_on, len(found.double_at)) == (24, "front", 1)


def test_binding_off_in_mid_row() -> None:
    """88 = 20 + 6 + 36 + 6 + 20: a bind-off of 6 works 7, the 7th is of the next group (KnittingHelp 134698)."""
    groups = (20, 6, 36, 6, 20)
    assert bind_off_row(groups) == "work 20, bind off 6, work 35, bind off 6, work 19"
    assert worked(bind_off_row(groups)) == (88, 76)


def test_sixty_stitches_to_eighty_four_rows() -> None:
    """5 : 7, rows taken 1, 2, 1, 1, 2 (or 1, 2, 1, 2, 1) (H. Yeoh 2009; Knitting For Dummies)."""
    found = stitches_to_rows(60, 84)
    assert found.taken == (1, 2, 1, 1, 2) * 12
    assert stitches_to_rows(5, 7).taken in {(1, 2, 1, 1, 2), (1, 2, 1, 2, 1)}
    assert "5 stitches to 7 rows" in found.text


def test_sides_of_a_seam() -> None:
    """One row of difference or more is eased, two bars at a time on the long side (L. Neatby; Knitting Robin 2013)."""
    assert len(rows_to_rows(80, 81).double_at) == 1
    found = rows_to_rows(80, 84)
    assert (found.short + len(found.double_at), len(found.double_at)) == (84, 4)
    assert "two bars from the longer side" in found.text


def test_an_underarm_graft() -> None:
    """10 and 10: one extra loop at each end of both needles, 12 and 12 (J. Fee, via Chez Lizzie 2013)."""
    assert grafted_gap(10, 10).picked == (12, 12)


def test_an_undone_cast_on() -> None:
    """A cast-on of 15 undone gives 14 live loops (Holly Briscoe)."""
    assert undone(15) == 14


def test_extra_stitches_beside_a_gap() -> None:
    """6 + 6 instead of 5 + 5, then 2 decreased, lifted top to bottom (common practice, no source)."""
    found = extra_loops((5, 5))
    assert (found.picked, found.extra) == ((6, 6), 2)
    assert "top to bottom" in found.text
    assert "wrong side" in found.text


def test_needles_that_cannot_match() -> None:
    """Both needles must hold the same number (A. Rangel; L. A. Bestor; Kelbourne Woolens): 23 and 7 is a miscount."""
    with pytest.raises(Impossible, match="count both needles again"):
        pair(23, 7)
