"""Published ratios and blocking figures: trade.md sections 1 and 8, each with its source."""

from fractions import Fraction

import pytest

from finishing_tui.craft.edges import Measured, SlopeEdge, SpotsEdge, doubt, doubt_of, ideal, natural_ratio
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.gauge import Gauge, before_blocking
from finishing_tui.craft.lengths import length, say_length
from finishing_tui.craft.markers import by_fold
from finishing_tui.craft.ratio import near_ratios, simplest
from finishing_tui.craft.slopes import Leg


def over(stitches: int, rows: int, inches: int = 4) -> Gauge:
    """Return a gauge over inches."""
    return Gauge(Fraction(stitches), Fraction(rows), length(inches, "in"))


@pytest.mark.parametrize(
    ("gauge", "ratio"),
    [
        (over(20, 28), Fraction(5, 7)),  # Espace Tricot, "A little Pick-Me-Up", 2013
        (over(5, 8, 1), Fraction(5, 8)),  # Stitches of Violet, "Picking Up Stitches", 2009
        (over(3, 6, 1), Fraction(1, 2)),  # Annie Modesitt, modeknit.com, 2003
        (over(16, 24), Fraction(2, 3)),  # Men Who Knit forum, node 5359
        (over(6, 9, 1), Fraction(2, 3)),  # comment, Creeping Thyme, 2015
    ],
)
def test_natural_ratios(gauge: Gauge, ratio: Fraction) -> None:
    """The natural ratio of a row edge is the published one, and heads the simple ratios as exactly right."""
    assert natural_ratio("row", gauge) == ratio
    first = near_ratios(ratio)[0]
    assert first.ratio == ratio
    assert first.error == 0


def test_an_edge_of_twenty_inches() -> None:
    """16 and 24 per 4 in, edge 20 in: 120 rows, 80 stitches (Men Who Knit forum, node 5359)."""
    gauge = over(16, 24)
    edge = length(20, "in")
    assert gauge.rows_in(edge) == 120
    assert ideal(SpotsEdge("edge", 120, "row"), gauge) == ideal(Measured("edge", edge), gauge) == 80


def test_a_hundred_rows_at_three_of_four() -> None:
    """100 rows at 3 of 4 take 75 stitches (knitgrove.com, picking up along an edge)."""
    assert ideal(SpotsEdge("edge", 100, "row"), None) == 75


def test_four_a_marked_inch() -> None:
    """Edge 10 in, border 4 to the inch: 40 in all (Knit Perfect, handbook); 25 cm exactly would be 39.4."""
    border = Gauge(Fraction(4), None, length(1, "in"))
    assert ideal(Measured("edge", length(10, "in")), border) == 40
    assert ideal(Measured("edge", length(1, "in")), border) == 4
    assert ideal(Measured("edge", length(25, "cm")), border) == Fraction(5000, 127)


@pytest.mark.parametrize(("rows", "ratio"), [(6, Fraction(5, 6)), (7, Fraction(5, 7))])
def test_band_stitches_go_against_body_rows(rows: int, ratio: Fraction) -> None:
    """Band 5 to the inch, body 6 to 7 rows: 5 of 6 to 5 of 7 ("Faced band", It's All About the Color, 2007)."""
    band = Gauge(Fraction(5), None, length(1, "in"))
    assert natural_ratio("row", over(4, rows, 1), band) == ratio


def test_slopes_take_more_stitches_a_row() -> None:
    """Straight 3 of 4, slight slope 4 of 5, strong slope 5 of 6 to 1 of 1 (Studio Knits, Expert Knitter ch. 23).

    The same chapter gives about 4 of 5 for a V decreased every 4th or 6th row. Reckoned here at 21 × 28, where straight
    edges are exactly 3 of 4; "about" is taken as 5 %, as wide as a rhythm may be off and lie flat.
    """
    body = over(21, 28)
    assert natural_ratio("row", body) == Fraction(3, 4)
    for every in (4, 6):
        picked = ideal(SlopeEdge("V", (Leg(1, every, 10),)), body) / (10 * every)
        assert abs(picked / Fraction(4, 5) - 1) <= Fraction(1, 20)
    for known in (body, None):  # at 3 of 4 where no gauge is known
        strong = ideal(SlopeEdge("side", (Leg(1, 2, 10),)), known) / 20
        assert Fraction(5, 6) < strong < 1


def test_garter_and_stitch_edges_take_one_each() -> None:
    """Garter 1 a ridge of two rows, cast-on or bound-off edge 1 a stitch (Knit Yourself Happy; illi tilli)."""
    garter = over(20, 40)  # garter stitch: a ridge is about as high as a stitch is wide
    assert natural_ratio("ridge", garter) == 1
    assert natural_ratio("stitch", garter) == 1
    assert ideal(SpotsEdge("edge", 30, "ridge"), None) == 30
    assert ideal(SpotsEdge("edge", 30, "stitch"), None) == 30


def test_four_for_every_three_chains() -> None:
    """3 chains are 6 rows, so "4 for every 3 chains" is 2 of every 3 rows (KnittingHelp 154288)."""
    gauge = over(16, 24)
    assert natural_ratio("row", gauge) == Fraction(2, 3)
    assert natural_ratio("chain", gauge) == Fraction(4, 3)


def test_five_of_six_ridges_is_the_wrong_unit() -> None:
    """Over 6 garter bumps "5 of 6" is the wrong unit: 12 rows want 10 and the knitter got 5 (KnittingHelp 158788)."""
    natural = natural_ratio("ridge", over(20, 24))
    assert natural * 6 == 10
    found = doubt("ridge", 5, 6, natural)
    assert found is not None
    assert found.few
    assert found.off == -Fraction(1, 2)
    assert "a ridge is two rows" in found.text


def test_too_few_pucker_and_too_many_flare() -> None:
    """Interweave Knits July 2019; Lion Brand (B. Breiter). WRONG the other way round (one page of knitgrove)."""
    few, many = doubt_of(60, Fraction(80)), doubt_of(100, Fraction(80))
    assert few is not None
    assert many is not None
    assert "pucker" in few.text
    assert "flare" not in few.text
    assert "flare" in many.text
    assert "pucker" not in many.text


def test_just_over_ten_per_cent_short_is_told() -> None:
    """A band about 10 % short was visibly curled (purlwise.com, 2008): 10 % is the last that is not warned of."""
    assert doubt_of(90, Fraction(100)) is None
    assert doubt_of(89, Fraction(100)) is not None


def test_two_of_every_three_and_check_at_half_way() -> None:
    """Pick 2 of every 3, check at half way, alter the rest (common practice, no source)."""
    fold = by_fold(80, Fraction(2, 3))
    assert (fold.rhythm.pick, fold.rhythm.of, fold.half) == (2, 3, 40)


@pytest.mark.parametrize(("gauge", "off"), [(over(20, 28), 5), (over(29, 44), 14)])
def test_three_of_four_always(gauge: Gauge, off: int) -> None:
    """3 of 4 in place of the computed ratio is 5 % off at 20 × 28, 14 % at 29 × 44 (Studio Knits; arithmetic)."""
    error = Fraction(3, 4) / natural_ratio("row", gauge) - 1
    assert rounded(error * 100) == off
    assert (doubt("row", 75, 100, natural_ratio("row", gauge)) is not None) == (off > 10)


def test_eighty_of_a_hundred_and_two_is_normal() -> None:
    """80 of 102 lies inside the normal range and is no error (Men Who Knit 5359)."""
    assert doubt("row", 80, 102) is None


def test_the_ratio_behind_218_of_294() -> None:
    """294 rows want 218: "2 of 3" is WRONG (196); 3 of 4 gives 220 or 221 (KnittingHelp 52473)."""
    near = simplest(Fraction(218, 294))
    assert (near.pick, near.of) == (3, 4)
    assert rounded(ideal(SpotsEdge("edge", 294, "row"), None)) == 221  # 220.5
    assert doubt("row", 196, 294, Fraction(218, 294)) is not None


def test_blocking_wider_and_shorter() -> None:
    """29 × 44 becomes 28 × 46 per 10 cm: 4 % wider and 4 % shorter (A. Gaughan)."""
    before = Gauge(Fraction(29), Fraction(44), length(10, "cm"))
    blocked = Gauge(Fraction(28), Fraction(46), length(10, "cm"))
    wider = before.stitches_per_cm / blocked.stitches_per_cm - 1
    longer = before.rows_per_cm / blocked.rows_per_cm - 1
    assert (rounded(wider * 100), rounded(-longer * 100)) == (4, 4)
    assert wider > 0 > longer


def test_work_to_rows_where_blocking_lengthens() -> None:
    """26 × 35 becomes 24 × 31 per 4 in (Trappings and Trinkets, 2012).

    10 in after blocking is 78 rows. The published 11.3 in is what 10 in on the ruler before blocking becomes; 78 rows
    themselves measure 8.9 in until then.
    """
    before, blocked = over(26, 35), over(24, 31)
    work = before_blocking(length(10, "in"), before, blocked)
    assert work.rows == 78
    assert before.rows_in(length(10, "in")) / blocked.rows_in(length(1, "in")) == Fraction(350, 31)
    assert rounded(Fraction(350, 31) * 10) == 113
    assert say_length(work.before) == "about 8 7/8 in"
