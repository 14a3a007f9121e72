"""Published increases and decreases (trade.md section 3), each with its source."""

from collections import Counter
from itertools import accumulate

import pytest

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.methods import METHODS
from finishing_tui.craft.shaping import evenly, room
from tests.craft.row_reader import worked


def old_groups(before: int, after: int, *, flat: bool = False, method: str | None = None) -> Counter[int]:
    """Return the sizes of the groups in old stitches, shaping included, and how often each comes."""
    found = evenly(before, after, flat=flat, method=method)
    return Counter(gap + way.eats for gap, way in zip(found.plain, found.shapings, strict=not flat))


@pytest.mark.parametrize(
    ("before", "after", "groups"),
    [
        pytest.param(55, 38, {4: 4, 3: 13}, id="decrease 17 over 55: Paper Moon Knits"),
        pytest.param(190, 249, {3: 46, 4: 13}, id="increase 59 over 190: Paper Moon Knits"),
        pytest.param(30, 20, {3: 10}, id="decrease 10 over 30: Teach Yourself Visually Knitting"),
        pytest.param(112, 128, {7: 16}, id="increase 16 over 112: Woolpack Yarn"),
        pytest.param(48, 54, {8: 6}, id="increase 6 over 48: Modern Daily Knitting"),
        pytest.param(60, 66, {10: 6}, id="increase 6 over 60: neasesneedlework"),
        pytest.param(42, 50, {5: 6, 6: 2}, id="increase 8 over 42: Knit Now, CraftWorld"),
        pytest.param(131, 92, {3: 25, 4: 14}, id="decrease 39 over 131: spincraftpatterns.com, corrected"),
        pytest.param(128, 74, {2: 34, 3: 20}, id="decrease 54 over 128: KnittingHelp 45374, corrected"),
    ],
)
def test_groups_in_the_round(before: int, after: int, groups: dict[int, int]) -> None:
    """The published sizes of the groups, in old stitches, and how many there are of each."""
    assert old_groups(before, after) == groups


def test_increase_4_over_51_in_the_round() -> None:
    """After stitches 13, 26, 39, 51 (Woolpack Yarn)."""
    assert tuple(accumulate(evenly(51, 55, flat=False).plain)) == (13, 26, 39, 51)


def test_increase_4_over_51_flat() -> None:
    """After stitches 6, 19, 32, 45 (Woolpack Yarn)."""
    assert tuple(accumulate(evenly(51, 55, flat=True).plain))[:-1] == (6, 19, 32, 45)


def test_increase_16_over_112_flat() -> None:
    """Every 7, beginning at 3 or 4 (Woolpack Yarn)."""
    plain = evenly(112, 128, flat=True).plain
    assert plain[0] in {3, 4}
    assert set(plain[1:-1]) == {7}


def test_increase_12_over_48_flat() -> None:
    """2, then every 4, ending 2 (DROPS Design lesson)."""
    assert evenly(48, 60, flat=True).plain == (2, *[4] * 11, 2)


def test_decrease_every_sixth() -> None:
    """Every 6th is k4, k2tog (DROPS Design lesson)."""
    assert evenly(60, 50, flat=False).text == "(k4, k2tog) 10 times"


def test_decrease_10_over_30_in_words() -> None:
    """(k1, k2tog) 10 times (Teach Yourself Visually Knitting)."""
    assert evenly(30, 20, flat=False).text == "(k1, k2tog) 10 times"


def test_decrease_10_over_80_flat() -> None:
    """k3, k2tog, (k6, k2tog) 9 times, k3 (KnittingHelp 74714)."""
    found = evenly(80, 70, flat=True)
    assert found.text == "k3, k2tog, (k6, k2tog) 9 times, k3"
    assert found.plain == (3, *[6] * 9, 3)


def test_decrease_14_over_82_flat() -> None:
    """68 with balanced margins; a published row from k4 to k8 is lopsided (A. Keep, "Decreasing Gracefully", 2012)."""
    found = evenly(82, 68, flat=True)
    assert worked(found.text) == (82, 68)
    assert found.plain[0] == found.plain[-1]
    assert found.plain == found.plain[::-1]


def test_wrong_k2_k2tog_over_131() -> None:
    """WRONG in print: 39 times (k2, k2tog) needs 156 stitches, not 131 (spincraftpatterns.com)."""
    printed = "(k2, k2tog) 39 times"
    assert worked(printed) == (156, 117)
    right = evenly(131, 92, flat=False)
    assert right.text != printed
    assert worked(right.text) == (131, 92)


def test_wrong_every_third_over_128() -> None:
    """WRONG in print: k2tog on every third stitch of 128 goes 42 times, not 54 (KnittingHelp 45374)."""
    assert worked("(k1, k2tog) 42 times, k2") == (128, 86)
    assert max(old_groups(128, 74)) == 3
    assert old_groups(128, 74)[2] == 34


def test_wrong_k1_kfb_over_80() -> None:
    """WRONG in print: (k1, kfb) over 80 is 120, not 122; over 81 with one kfb more it is 122 (lornajay, 2005)."""
    assert evenly(80, 120, flat=False, method="kfb").text == "(k1, kfb) 40 times"
    assert worked("(k1, kfb) 40 times") == (80, 120)
    assert worked("(k1, kfb) 40 times, kfb") == (81, 122)
    assert worked(evenly(81, 122, flat=False, method="kfb").text) == (81, 122)


@pytest.mark.parametrize("method", ["k2tog", "ssk", "kfb", "M1"])
def test_never_on_the_edge_stitch_when_flat(method: str) -> None:
    """Common practice, no source: the first and the last stitch of a row are worked plain."""
    way = METHODS[method]
    for before in range(4, 40):
        for times in range(1, room(before, way, flat=True) + 1):
            plain = evenly(before, before + times * way.change, flat=True, method=method).plain
            assert plain[0] >= 1
            assert plain[-1] >= 1
        with pytest.raises(Impossible):
            evenly(before, before + (room(before, way, flat=True) + 1) * way.change, flat=True, method=method)
