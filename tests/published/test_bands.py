"""Published bands, mitres and necks over heads (trade.md section 7), each with its source."""

from fractions import Fraction

import pytest

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.head import ORDINARY_STRETCH, over_the_head, wide_and_deep_enough
from finishing_tui.craft.lengths import length
from finishing_tui.craft.mitres import inside, outside, vee
from finishing_tui.craft.ribs import added
from finishing_tui.craft.totals import Repeat
from finishing_tui.craft.wearers import MAN, MEDICAL, WOMAN, of_age

FOUR = Repeat(4, 0)


@pytest.mark.parametrize(("back", "front", "total"), [(20, 14, 52), (22, 16, 56), (24, 18, 60)])
def test_neckbands_that_are_all_4m(back: int, front: int, total: int) -> None:
    """Back 20 20 22 24 + 9 + front 14 14 16 18 + 9 = 52 52 56 60, all 4m (KnittingHelp 42528)."""
    found = added((back, 9, front, 9), FOUR, printed=total)
    assert (found.total, found.fits) == (total, True)


@pytest.mark.parametrize(("side", "front", "total"), [(13, 24, 60), (14, 26, 64), (15, 28, 68)])
def test_neckbands_of_five_parts(side: int, front: int, total: int) -> None:
    """5 + 13 14 15 15 + 24 26 28 28 + the same back = 60 64 68 68 (Plymouth Yarn)."""
    found = added((5, side, front, 5, side), FOUR, printed=total)
    assert (found.total, found.fits) == (total, True)


@pytest.mark.parametrize(
    ("front", "held", "back", "total"),
    [(14, 12, 10, 72), (15, 14, 10, 78), (15, 14, 12, 82), (16, 14, 12, 84), (16, 14, 14, 88)],
)
def test_a_childs_jumper(front: int, held: int, back: int, total: int) -> None:
    """72 78 82 84 88: all even, only 72, 84 and 88 are 4m (thenuttyknitters, 2010)."""
    found = added((front, held, front, back, held, back), FOUR, printed=total)
    assert (found.total, found.fits) == (total, total in {72, 84, 88})
    assert added((front, held, front, back, held, back), Repeat(2, 0)).fits


@pytest.mark.parametrize(("side", "back", "total"), [(30, 37, 97), (33, 41, 107)])
def test_a_deep_collar(side: int, back: int, total: int) -> None:
    """30 … 33, 37 … 41, the first again = 97 … 107 = 10m + 7 (The Knitter, May 2020)."""
    found = added((side, back, side), Repeat(10, 7), printed=total)
    assert (found.total, found.fits) == (total, True)


@pytest.mark.parametrize(("side", "total", "held"), [(28, 94, 18), (30, 100, 20), (31, 104, 22)])
def test_a_holder_that_is_not_printed(side: int, total: int, held: int) -> None:
    """28 30 30 31 31 twice + 10 + held + 10 = 94 100 100 104 104: the holder is 18 20 20 22 22 (collection, 2016)."""
    assert "prints" not in added((side, side, 10, held, 10), printed=total).text


@pytest.mark.parametrize(
    ("parts", "printed", "right", "bound_off"),
    [((18, 15, 18, 11, 24, 12), 97, 98, 23), ((20, 17, 20, 11, 28, 12), 105, 108, 25)],
)
def test_wrong_printed_sums(parts: tuple[int, ...], printed: int, right: int, bound_off: int) -> None:
    """WRONG in print: 97 and 105 are 98 and 108; 24 and 28 should be 23 and 25 (Rico 617, corrections page)."""
    found = added(parts, printed=printed)
    assert found.total == right
    assert f"prints {printed}" in found.text
    assert added([bound_off if part in {24, 28} else part for part in parts]).total == printed


@pytest.mark.parametrize(("every", "counts"), [(1, [39, 37, 35, 33]), (2, [39, 39, 37, 37])])
def test_a_v_mitre(every: int, counts: list[int]) -> None:
    """Two fewer on a held centre stitch: every round a narrow V, every other a wide one.

    (fiknits 2014; Buss, Big Book of Knitting).
    """
    assert [each.count for each in vee(20, 20, 4, every=every).rounds] == counts


def test_an_inside_mitre_of_31() -> None:
    """31, 29, 27, 25 … (easycrochetpattern)."""
    assert [31, *(each.count for each in inside(31, 3))] == [31, 29, 27, 25]


def test_an_outside_mitre() -> None:
    """A garter border: two more a corner every second round (Stitch Therapy 2013)."""
    assert [each.count for each in outside(100, 4, corners=4)] == [108, 108, 116, 116]


def test_sides_of_a_v_have_the_same_parity() -> None:
    """Before round 1 the sides beside a centre stitch must have the same parity (webknits, 2008)."""
    with pytest.raises(Impossible, match="odd or both even"):
        vee(30, 31, 4)
    assert vee(29, 31, 4).rounds[-1].count == 53


def test_an_adult_neck() -> None:
    """Width + front depth of 25.5 cm or more passes the head (S. Melville's rule, via Sister Mountain)."""
    assert wide_and_deep_enough(length(18, "cm"), length(Fraction("7.5"), "cm"))
    assert not wide_and_deep_enough(length(18, "cm"), length(Fraction("7.4"), "cm"))


def test_an_ordinary_bind_off_stretches() -> None:
    """11.5 cm relaxed, 16 stretched, 39 % (S. Winter 2019)."""
    assert round((ORDINARY_STRETCH - 1) * 100) == 39
    assert over_the_head(length(Fraction("11.5"), "cm"), length(16, "cm")).goes
    assert not over_the_head(length(Fraction("11.5"), "cm"), length(Fraction("16.1"), "cm")).goes


def test_heads() -> None:
    """95th percentile of girls by months (medical table); adults from craft charts (trade.md section 7)."""
    girls = {3: "41.7", 6: "44.6", 12: "47.6", 24: "50.1", 36: "51.4"}
    assert {months: Fraction(cm) for months, cm in girls.items()} == MEDICAL
    assert [*WOMAN, *MAN] == [53, 60, 56, 62]


AVERAGE = {0: 35, 3: 40, 6: 44, 9: 46, 12: 47, 18: 48, 24: 49, 36: 50, 48: 51}
"""Average heads in cm by age in months (hat size table; trade2.md)."""


@pytest.mark.parametrize("months", AVERAGE)
def test_the_head_allowed_for_is_above_the_average(months: int) -> None:
    """At every age that the hat size table has, by up to 7 cm at birth and 3 cm from three months on."""
    over = of_age(months).head.cm - AVERAGE[months]
    assert 0 < over < (7 if months == 0 else 3)
