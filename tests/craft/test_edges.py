"""The natural ratio, the edge as a walk of sections, and doubtful counts."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.edges import (
    USUAL,
    EdgeSection,
    EdgeUnit,
    GapEdge,
    HeldEdge,
    Measured,
    SlopeEdge,
    SpotsEdge,
    doubt,
    doubt_of,
    ideal,
    natural_ratio,
    walk,
)
from finishing_tui.craft.errors import Impossible
from finishing_tui.craft.gauge import Gauge
from finishing_tui.craft.judging import SHOWS
from finishing_tui.craft.lengths import length
from finishing_tui.craft.sharing import share
from finishing_tui.craft.slopes import Leg, stitches_along, straight

gauges = st.builds(
    lambda s, r, n, u: Gauge(Fraction(s), Fraction(r), length(n, u)),
    st.integers(4, 40),
    st.integers(4, 60),
    st.integers(1, 12),
    st.sampled_from(["cm", "in"]),
)
units = st.sampled_from(list(USUAL))
BODY = Gauge(Fraction(20), Fraction(28), length(10, "cm"))


@given(gauges, gauges, st.integers(1, 300))
def test_the_ratio_makes_the_band_as_long_as_the_edge(body: Gauge, band: Gauge, rows: int) -> None:
    """Stitches by the natural ratio lie, at the band's gauge, exactly as long as the rows do at the body's."""
    stitches = natural_ratio("row", body, band) * rows
    assert stitches / band.stitches_per_cm == body.length_of_rows(rows).cm


@given(gauges, gauges)
def test_ridges_and_chains_are_two_rows(body: Gauge, band: Gauge) -> None:
    """A ridge and a chain each take exactly what two rows take."""
    row = natural_ratio("row", body, band)
    assert natural_ratio("ridge", body, band) == natural_ratio("chain", body, band) == 2 * row


@given(gauges, gauges)
def test_a_stitch_edge_takes_one_for_one_in_its_own_gauge(body: Gauge, band: Gauge) -> None:
    """On stitches the ratio is 1 unless the band has another gauge; then the lengths are the same again."""
    assert natural_ratio("stitch", body) == 1
    assert natural_ratio("stitch", body, band) / band.stitches_per_cm == 1 / body.stitches_per_cm


def test_rows_are_needed_only_where_there_are_rows() -> None:
    """A gauge without rows serves a stitch edge and the band; a row edge says what is missing."""
    no_rows = Gauge(Fraction(20), None, length(10, "cm"))
    assert natural_ratio("stitch", no_rows) == 1
    assert natural_ratio("row", BODY, no_rows) == Fraction(5, 7)
    with pytest.raises(Impossible, match="no rows"):
        natural_ratio("row", no_rows)


@given(gauges, st.integers(1, 300), units)
def test_a_length_is_worth_its_spots(body: Gauge, spots: int, unit: EdgeUnit) -> None:
    """A row section and the length that its rows measure have the same ideal."""
    if unit == "stitch":
        assert ideal(SpotsEdge("a", spots, unit), body) == spots
        return
    rows = spots * (1 if unit == "row" else 2)
    if body.length_of_rows(rows).cm <= 1000:
        assert ideal(SpotsEdge("a", spots, unit), body) == ideal(Measured("a", body.length_of_rows(rows)), body)


def test_a_slope_without_gauge_is_as_long_as_with_one_of_the_usual_ratio() -> None:
    """How long it is for its rows needs no more of a gauge than its ratio, and at 3 of 4 that is known."""
    slope = SlopeEdge("side", (Leg(1, 2, 5), straight(18)))
    assert ideal(slope, None) == stitches_along(slope.legs, Gauge(Fraction(30), Fraction(40), length(10, "cm")))
    assert ideal(slope, BODY) == stitches_along(slope.legs, BODY)
    assert ideal(SlopeEdge("side", (straight(28),)), None) == ideal(SpotsEdge("side", 28, "row"), None) == 21


def test_a_walk_is_ready_to_be_shared() -> None:
    """Ideals in walking order, held stitches and extra loops fixed, edges bounded by two a spot."""
    edge: list[EdgeSection] = [
        SpotsEdge("left front", 32, "row"),
        HeldEdge("front", 16),
        GapEdge("corner", 1),
        SpotsEdge("back", 20, "ridge"),
        SlopeEdge("right front", (straight(30),)),
        Measured("sleeve", length(5, "cm")),
    ]
    sections = walk(edge, BODY)
    assert [section.ideal for section in sections] == [
        Fraction(160, 7), 16, 1, Fraction(200, 7), Fraction(150, 7), 10,
    ]  # fmt: skip
    assert [section.fixed for section in sections] == [False, True, True, False, False, False]
    assert [section.holds for section in sections] == [64, None, None, 40, 60, None]
    assert share(sections).total == 100


@pytest.mark.parametrize(
    "section",
    [
        SpotsEdge("a", 0, "row"),
        SpotsEdge("a", 100_001, "row"),
        HeldEdge("a", -1),
        GapEdge("a", 0),
        Measured("a", length(1, "cm")),
        SlopeEdge("a", ()),
    ],
)
def test_empty_absurd_and_unknowable_sections_are_refused(section: EdgeSection) -> None:
    """No spots, absurdly many, and a length with no gauge are refused with the section's name or a reason."""
    with pytest.raises(Impossible):
        ideal(section, None)


@given(units, st.integers(1, 300), gauges, gauges)
def test_the_nearest_whole_count_is_never_doubtful(unit: EdgeUnit, spots: int, body: Gauge, band: Gauge) -> None:
    """Whoever picks up the natural number, rounded either way, is not warned, however short the section."""
    natural = natural_ratio(unit, body, band)
    for count in (natural * spots // 1, -(-natural * spots // 1)):
        assert doubt(unit, int(count), spots, natural) is None


@given(units, st.integers(10, 300), st.integers(1, 600), gauges)
def test_more_than_a_tenth_off_is_doubtful(unit: EdgeUnit, spots: int, count: int, body: Gauge) -> None:
    """With a gauge known, just the counts over 10 % and a whole stitch off are warned of, to the right side."""
    natural = natural_ratio(unit, body)
    wanted = natural * spots
    found = doubt(unit, count, spots, natural)
    assert (found is not None) == (abs(count - wanted) > wanted * SHOWS and abs(count - wanted) >= 1)
    if found is not None:
        assert found.few == (count < wanted)
        assert found.off == count / wanted - 1
        assert ("pucker" in found.text) == found.few
        assert ("flare" in found.text) != found.few


@pytest.mark.parametrize(
    ("unit", "stitches", "spots", "few"),
    [
        ("row", 60, 100, None),
        ("row", 59, 100, True),
        ("row", 95, 100, None),
        ("row", 96, 100, False),
        ("ridge", 75, 100, True),
        ("ridge", 100, 100, None),
        ("chain", 75, 100, True),
        ("chain", 150, 100, None),
        ("chain", 191, 100, False),
        ("stitch", 100, 100, None),
        ("stitch", 101, 100, False),
        ("stitch", 60, 100, None),
        ("row", 1, 1, None),
        ("row", 3, 5, None),
    ],
)
def test_with_no_gauge_the_usual_bounds_hold(unit: EdgeUnit, stitches: int, spots: int, few: bool | None) -> None:  # noqa: FBT001
    """Under 0.6 or over 0.95 a row, over 1 a stitch; two-row spots taken for rows (3 of 4) are caught."""
    found = doubt(unit, stitches, spots)
    assert (None if found is None else found.few) == few
    if found is not None:
        assert unit in found.text
        assert found.off is None


def test_a_mistaken_unit_is_guessed() -> None:
    """Half as many on ridges, and twice as many on rows, name the likely mistake."""
    half = doubt("chain", 5, 7, Fraction(10, 7))
    twice = doubt("row", 10, 7, Fraction(5, 7))
    other = doubt("row", 5, 14, Fraction(5, 7))
    assert half is not None
    assert "a chain is two rows" in half.text
    assert twice is not None
    assert "counted as rows" in twice.text
    assert other is not None
    assert "two rows" not in other.text


def test_a_count_for_a_length_is_judged_alike() -> None:
    """Without spots the ideal itself is the measure; nothing wanted is refused."""
    found = doubt_of(40, Fraction(50))
    assert found is not None
    assert found.off == -Fraction(1, 5)
    assert doubt_of(45, Fraction(50)) is None
    with pytest.raises(Impossible):
        doubt_of(1, Fraction(0))
    with pytest.raises(Impossible):
        doubt("row", 1, 0)
