"""``buttonholes``."""

import re
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.buttonholes import buttonholes
from finishing_tui.recipe.kinds.buttonholes import Buttonholes
from finishing_tui.recipe.stage import Stage, entries_between
from tests.recipe.kinds.beginning import after, here, refused


def step(**keys: Any) -> Buttonholes:
    """Return a step on the band."""
    return Buttonholes(title="Work the buttonholes", on="band", **keys)


def worked(stage: Stage, width: int) -> list[int]:
    """Return the groups of a row as its items say them: kept, bound off, kept ... with the stitch left counted back."""
    groups: list[int] = []
    for place, item in enumerate(stage.items):
        before = re.match(r"Work (\d+)", item.text)
        kept = int(before[1]) if before else 0
        groups += [kept + (place > 0), width]
    end = re.search(r"work (\d+) to the end", stage.items[-1].text)
    return [*groups, (int(end[1]) if end else 0) + 1]


@pytest.mark.parametrize(
    ("held", "keys", "gaps", "ends"),
    [
        # Knitting Robin 2012
        (100, {"holes": 7, "width": 4, "first": 3, "last": 3}, {11}, (3, 3)),
        # carolina22nstitches 2010
        (138, {"holes": 5, "width": 4, "first": 24, "last": 6}, {22}, (24, 6)),
        # KnittingHelp 151262: rib 3, cast off 1, (rib 10, cast off 1) 4 times, rib 1; gaps 11, margins 3 and 2
        (54, {"holes": 5, "width": 1, "first": 3, "between": 11}, {11}, (3, 2)),
        # KnittingHelp 159723: ends of 4 give gaps of 17
        (86, {"holes": 5, "width": 2, "first": 4}, {17}, (4, 4)),
        # Yarn Harlot 2005: rib 9, bind off 2 needs 11m + 9
        (64, {"holes": 5, "width": 2, "first": 9, "between": 9}, {9}, (9, 9)),
    ],
)
def test_published_bands(held: int, keys: dict[str, Any], gaps: set[int], ends: tuple[int, int]) -> None:
    """Gaps and margins as published; bound off in one row and cast on over in the next, the count comes back."""
    start = here({"band": held})
    off, on = step(**keys).stages(start)
    groups = worked(off, keys["width"])
    assert sum(groups) == held
    assert set(groups[2:-1:2]) == gaps
    assert (groups[0], groups[-1]) == ends
    assert off.units == on.units == keys["holes"]
    between = start.ledger.enter(*entries_between(off, 0, off.units))
    assert between.on("band") == held - keys["holes"] * keys["width"]
    assert after(step(**keys), start).on("band") == held


def test_the_convention_is_stated() -> None:
    """The words say whether the stitch left on the needle is counted: "rib 10" after a cast-off is a gap of 11."""
    off = step(holes=5, width=1, first=3, between=11).stages(here({"band": 54}))[0]
    assert off.items[1].text == "Work 10, bind off 1."
    assert "is not counted in the number to work next" in off.words
    assert off.words == buttonholes(54, 5, 1, 3, 2).text


@given(
    st.integers(1, 6), st.integers(1, 4), st.integers(1, 6), st.integers(1, 6), st.integers(1, 60), st.integers(0, 9)
)
def test_the_groups_make_up_the_row(holes: int, width: int, first: int, last: int, spare: int, rest: int) -> None:
    """Margins, holes, gaps and what lies beyond ``over`` are all the stitches there are, in the words as in the sum."""
    over = first + last + holes * width + ((holes - 1) * spare if holes > 1 else 0)
    off, _ = step(holes=holes, width=width, first=first, last=last, over=over).stages(here({"band": over + rest}))
    groups = worked(off, width)
    assert sum(groups) == over + rest
    assert tuple(groups[2:-1:2]) == buttonholes(over, holes, width, first, last).gaps
    assert groups[-1] == last + rest


def test_a_yarn_over_with_a_decrease_keeps_the_count_at_every_press() -> None:
    """Each hole loses one and makes one; ssk for a left-handed knitter."""
    for start, decrease in ((here({"band": 30}), "k2tog"), (here({"band": 30}, hand="left"), "ssk")):
        (row,) = step(holes=3, first=4, method="yarn over").stages(start)
        assert row.items[1].text == f"Work 8, yarn over, {decrease}."
        assert worked(row, 1) == [4, 1, 9, 1, 10, 1, 4]
        standing = start.ledger
        for unit in range(row.units):
            standing = standing.enter(*entries_between(row, unit, unit + 1))
            assert standing.on("band") == 30


def test_refusals_name_the_numbers() -> None:
    """What does not fit: too many, a margin that does not add up, one hole off its place, both keys, absurd numbers."""
    band = here({"band": 20})
    assert "20 stitches cannot hold 7 holes of 4" in refused(step(holes=7, width=4, first=3), band)
    said = refused(step(holes=3, width=2, first=3, between=5, last=4), band)
    assert "3 + 3 × 2 + 2 × 5 + 4 = 23" in said
    assert "has 20" in said
    assert "= 24 and 1 more" in refused(step(holes=4, width=2, first=4, between=4), here({"band": 24}))
    assert "both over and between" in refused(step(holes=2, first=3, between=4, over=10), band)
    assert "width is 3" in refused(step(holes=2, width=3, first=3, method="yarn over"), band)
    assert "21 were" in refused(step(holes=2, first=3, over=21), band)
    assert "100,000" in refused(step(holes=100_000, first=3), here({"band": 100_000}))
    assert "not 0" in refused(step(holes=3, first=3, between=0), band)


def test_none_in_this_size() -> None:
    """No hole at all is done as it begins."""
    assert [stage.units for stage in step(holes=0, first=3).stages(here({"band": 9}))] == [0]
