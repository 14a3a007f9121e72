"""Rows written out in full, against published ones that are right and wrong."""

import pytest

from finishing_tui.recipe.audit import Finding, audit
from finishing_tui.recipe.reader import read_text

ROW = """
format = 1
title  = "row"
sizes  = ["1"]
[place.band]
text = "band needle"
kind = "needle"
live = {held}
[[step]]
do      = "work"
title   = "Shape"
on      = "band"
rounds  = 1
pattern = "{row}"
change  = {change}
[[step]]
do    = "bind off"
title = "Bind off"
from  = "band"
[[step]]
do    = "weave in"
title = "Weave in"
"""


def found(held: int, row: str, after: int) -> tuple[Finding, ...]:
    """Return what is found in a round of ``held`` stitches that is to leave ``after``."""
    return audit(read_text(ROW.format(held=held, row=row, change=after - held), "t")).findings


@pytest.mark.parametrize(
    ("held", "row", "after"),
    [
        (80, "k3, k2tog, (k6, k2tog) 9 times, k3", 70),  # KnittingHelp 74714
        (30, "(k1, k2tog) 10 times", 20),  # Teach Yourself Visually Knitting
        (131, "(k1, k2tog) 25 times, (k2, k2tog) 14 times", 92),  # spincraftpatterns.com, put right
        (128, "k2tog 34 times, (k1, k2tog) 20 times", 74),  # KnittingHelp 45374, put right
        (81, "(k1, kfb) 40 times, kfb", 122),  # lornajay, 2005, put right
        (20, "k2, p2 rib, firmly, for a round", 19),  # words are no row
        (20, "k2, p2", 19),  # what is repeated to the end is none either
    ],
)
def test_rows_that_come_out(held: int, row: str, after: int) -> None:
    """A row that uses all there are and leaves what is said is right, and so is what is not a row."""
    assert found(held, row, after) == ()


@pytest.mark.parametrize(
    ("held", "row", "after", "uses"),
    [
        (131, "(k2, k2tog) 39 times", 92, 156),  # spincraftpatterns.com
        (82, "k3, k2tog, (k6, k2tog) 9 times, k3", 72, 80),  # two too many for KnittingHelp 74714
    ],
)
def test_rows_that_use_another_number(held: int, row: str, after: int, uses: int) -> None:
    """A row that uses more or fewer stitches than there are is told with the sum."""
    (one,) = found(held, row, after)
    assert (one.kind, one.expected, one.found) == ("row does not fit", uses, held)
    assert one.sum.endswith(f"= {uses}")


def test_a_row_that_leaves_another_number() -> None:
    """(k1, kfb) over 80 is 120 and not 122 (lornajay, 2005, own correction)."""
    (one,) = found(80, "(k1, kfb) 40 times", 122)
    assert (one.expected, one.found) == (120, 122)
