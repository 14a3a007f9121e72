import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from finishing_tui.craft.buttonholes import CONVENTION, ButtonholeRow, band_for, buttonholes
from finishing_tui.craft.errors import Impossible
from tests.craft.row_reader import worked


@st.composite
def bands(draw: st.DrawFn) -> ButtonholeRow:
    """Return a band that holds its holes."""
    holes, width = draw(st.integers(1, 20)), draw(st.integers(1, 6))
    first, last = draw(st.integers(1, 30)), draw(st.integers(1, 30))
    spare = draw(st.integers(holes - 1, 300)) if holes > 1 else 0
    return buttonholes(first + last + holes * width + spare, holes, width, first, last)


@given(bands())
def test_margins_holes_and_gaps_are_the_band(band: ButtonholeRow) -> None:
    """Margins + n x hole + gaps = band, with gaps of at least one that differ by at most one."""
    assert band.first + band.last + band.holes * band.width + sum(band.gaps) == band.stitches
    assert len(band.gaps) == band.holes - 1
    if band.gaps:
        assert min(band.gaps) >= 1
        assert max(band.gaps) - min(band.gaps) <= 1


@given(bands())
def test_holes_begin_where_it_says(band: ButtonholeRow) -> None:
    """Laid out stitch by stitch, each hole begins at its start and they never touch."""
    row = ["plain"] * band.stitches
    for start in band.starts:
        assert row[start - 1 : start - 1 + band.width] == ["plain"] * band.width
        row[start - 1 : start - 1 + band.width] = ["hole"] * band.width
    assert row.index("hole") == band.first
    assert row[::-1].index("hole") == band.last
    assert row.count("hole") == band.holes * band.width


@given(bands())
def test_the_row_as_written_binds_off_the_holes(band: ButtonholeRow) -> None:
    """Worked from its words the row uses the whole band and leaves all but the holes; the convention is stated."""
    assert worked(band.row) == (band.stitches, band.stitches - band.holes * band.width)
    assert CONVENTION in band.text


@given(bands())
def test_turned_round_the_gaps_are_the_same(band: ButtonholeRow) -> None:
    """Symmetry: from the other end the gaps mirror, wherever they can."""
    other = buttonholes(band.stitches, band.holes, band.width, band.last, band.first)
    assert other.gaps == band.gaps
    if len(band.gaps) % 2 or sum(band.gaps) % 2 == 0:
        assert band.gaps == band.gaps[::-1]


@given(bands())
def test_the_band_for_these_gaps_is_this_band(band: ButtonholeRow) -> None:
    """Asked the other way round, from the gap to the band, the sum is the same."""
    assume(len(set(band.gaps)) == 1)
    assert band_for(band.holes, band.width, band.gaps[0], band.first, band.last) == band.stitches


@pytest.mark.parametrize(
    ("stitches", "holes", "width", "first", "last", "says"),
    [
        (10, 3, 2, 2, 2, "takes 12 at least"),
        (20, 1, 2, 9, 5, "come 9, not 5"),
        (20, 0, 2, 3, 3, "buttonholes cannot be 0"),
        (20, 2, 0, 3, 3, "width of a hole cannot be 0"),
        (20, 2, 2, 0, 3, "before the first hole cannot be 0"),
        (100_001, 2, 2, 3, 3, "use 1 to 100,000"),
    ],
)
def test_bands_that_cannot_be(stitches: int, holes: int, width: int, first: int, last: int, says: str) -> None:
    """The refusal says what it would take."""
    with pytest.raises(Impossible, match=says):
        buttonholes(stitches, holes, width, first, last)
