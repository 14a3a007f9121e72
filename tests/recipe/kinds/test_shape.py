"""``shape``."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.shaping import evenly
from finishing_tui.recipe.kinds.shape import Shape
from finishing_tui.recipe.stage import Stage, entries_between
from tests.craft.row_reader import worked
from tests.recipe.kinds.beginning import after, here, refused


def stage_of(before: int, to: int, *, flat: bool = False, method: str = "") -> Stage:
    """Return the only stage of shaping ``before`` stitches to ``to``."""
    (stage,) = Shape(title="Shape", on="neck", to=to, flat=flat, method=method).stages(here({"neck": before}))
    return stage


@pytest.mark.parametrize(
    ("before", "to", "flat", "groups"),
    [
        (55, 38, False, 17),  # Paper Moon Knits: decrease 17 over 55
        (190, 249, False, 59),  # Paper Moon Knits: increase 59 over 190
        (30, 20, False, 10),  # Teach Yourself Visually Knitting: (k1, k2tog) 10 times
        (80, 70, True, 10),  # KnittingHelp 74714: k3, k2tog, (k6, k2tog) 9 times, k3
        (131, 92, False, 39),  # spincraftpatterns.com, put right: 131 to 92 takes 39 decreases
        (128, 74, False, 54),  # KnittingHelp 45374, put right: every third gives 42 only
        (112, 128, True, 16),  # Woolpack Yarn: increase 16 over 112
    ],
)
def test_published_rows(before: int, to: int, flat: bool, groups: int) -> None:  # noqa: FBT001  (a column of the table)
    """A press is one shaping with the plain stitches before it, and the row is the one the sum on its own gives."""
    stage = stage_of(before, to, flat=flat)
    assert stage.units == groups
    assert evenly(before, to, flat=flat).text in stage.words
    assert after(Shape(title="Shape", on="neck", to=to, flat=flat), here({"neck": before})).on("neck") == to


def test_published_words_of_the_groups() -> None:
    """Decrease 10 over 80 flat begins with k3, k2tog, goes on with k6, k2tog, and ends with k3 (KnittingHelp 74714)."""
    texts = [item.text for item in stage_of(80, 70, flat=True).items]
    assert texts == ["k3, k2tog", *["k6, k2tog"] * 8, "k6, k2tog, k3"]


def test_published_increase_that_was_printed_wrong() -> None:
    """(k1, kfb) over 80 gives 120, not the 122 first printed (lornajay, 2005, own correction)."""
    stage = stage_of(80, 120, method="kfb")
    assert [item.text for item in stage.items] == ["k1, kfb"] * 40


@given(st.integers(1, 120), st.integers(1, 160), st.booleans(), st.sampled_from(("", "ssk", "M1L", "kfb")))
def test_the_groups_make_up_the_row(before: int, to: int, flat: bool, method: str) -> None:  # noqa: FBT001  (given)
    """Read stitch by stitch the groups use what is there and leave what is wanted; so does every press on the way."""
    try:
        stage = stage_of(before, to, flat=flat, method=method)
    except Impossible:
        assume(condition=False)
    assert worked(", ".join(item.text for item in stage.items)) == (before, to)
    standing = here({"neck": before}).ledger
    for unit in range(stage.units):
        standing = standing.enter(*entries_between(stage, unit, unit + 1))
        used, left = worked(", ".join(item.text for item in stage.items[: unit + 1]))
        assert standing.on("neck") == before - used + left


def test_a_left_handed_knitter_leans_the_other_way() -> None:
    """k2tog and ssk change places for the left hand; the counts do not change."""
    start = here({"neck": 80}, hand="left")
    (stage,) = Shape(title="Shape", on="neck", to=70, flat=True).stages(start)
    assert stage.items[1].text == "k6, ssk"
    (other,) = Shape(title="Shape", on="neck", to=70, flat=True, method="ssk").stages(start)
    assert other.items[1].text == "k6, k2tog"


def test_the_word_says_which_way() -> None:
    """The word of two metres is what is done next."""
    assert stage_of(20, 24).act == "increase"
    assert stage_of(24, 20).act == "decrease"
    assert [item.text for item in stage_of(20, 20).items] == ["k20"]


def test_refusals_name_the_numbers() -> None:
    """An empty needle, a row that cannot hold it, a method that goes the other way or that nobody knows, none left."""
    assert "neck has 0 stitches" in refused(Shape(title="S", on="neck", to=4), here({}))
    assert "10 stitches" in refused(Shape(title="S", on="neck", to=2, method="k2tog"), here({"neck": 10}))
    assert "k2tog loses stitches" in refused(Shape(title="S", on="neck", to=12, method="k2tog"), here({"neck": 10}))
    assert "ktog" in refused(Shape(title="S", on="neck", to=9, method="ktog"), here({"neck": 10}))
    assert "0" in refused(Shape(title="S", on="neck", to=0), here({"neck": 10}))
    assert "30000" in refused(Shape(title="S", on="neck", to=60_000), here({"neck": 90_000}))
