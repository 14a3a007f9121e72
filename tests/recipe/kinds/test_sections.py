"""Sections given by their length or their slope."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.edges import doubt
from finishing_tui.craft.gauge import read_gauge
from finishing_tui.craft.slopes import count_along, read_slope, rows_of
from finishing_tui.recipe.kinds.pick_up_and_knit import PickUpAndKnit
from finishing_tui.recipe.kinds.sections import Along
from finishing_tui.recipe.model import RecipeGauge
from finishing_tui.recipe.natural import band_stitches, natural_ratios
from finishing_tui.recipe.stage import Stage
from tests.recipe.kinds.beginning import here, refused

SLOPE = "1 stitch every 2 rows, 5 times, then 18 rows straight"


def step(section: Along) -> PickUpAndKnit:
    """Return a step that picks up along one section."""
    return PickUpAndKnit(title="Pick up", onto="neck", section=(section,))


def stage_of(section: Along, body: str = "", band: str = "") -> Stage:
    """Return its stage, at these gauges."""
    (stage,) = step(section).stages(here({}, body=body, band=band))
    return stage


def test_published_length_at_a_gauge() -> None:
    """16 stitches and 24 rows per 4 in, an edge of 20 in: 120 rows, 80 stitches (Men Who Knit, node 5359)."""
    edge = stage_of(Along(along="front edge", length="20 in", stitches=80), "16 x 24 over 4 in")
    assert (edge.units, edge.target) == (120, 80)


@pytest.mark.parametrize(("unit", "spots"), [("row", 28), ("ridge", 14), ("chain", 14), ("stitch", 20)])
def test_a_length_is_counted_in_its_own_spots(unit: str, spots: int) -> None:
    """At 20 stitches and 28 rows over 10 cm; a ridge and a chain are two rows each."""
    section = Along(along="edge", length="10 cm", unit=unit, stitches=10)  # type: ignore[arg-type]  # a literal above
    assert stage_of(section, "20 x 28 over 10 cm").units == spots


def test_a_length_takes_the_nearest_whole_number_of_spots() -> None:
    """10.2 cm are 28.56 rows, so 29; 10.1 cm are 28.28, so 28."""
    assert stage_of(Along(along="edge", length="10.2 cm", stitches=20), "20 x 28 over 10 cm").units == 29
    assert stage_of(Along(along="edge", length="10.1 cm", stitches=20), "20 x 28 over 10 cm").units == 28


def test_spots_given_count_before_a_length() -> None:
    """Rows that were counted are not reckoned again from a ruler."""
    section = Along(along="edge", spots=30, length="10 cm", stitches=20)
    assert stage_of(section, "20 x 28 over 10 cm").units == 30


@given(st.integers(1, 3), st.integers(1, 4), st.integers(1, 12), st.integers(1, 30), st.sampled_from(("", "18 x 25")))
def test_stitches_of_a_slope_lie_along_it(stitches: int, every: int, times: int, rest: int, band: str) -> None:
    """Left out, they are worked out along the hypotenuse; the spots are its rows; and the count is not doubtful."""
    text = f"{stitches} stitches every {every} rows, {times} times, then {rest} rows straight"
    body, legs = read_gauge("20 x 28 over 10 cm"), read_slope(text)
    of_band = read_gauge(f"{band} over 10 cm") if band else None
    wanted = count_along(legs, body, of_band)
    if not 1 <= wanted <= 2 * rows_of(legs):
        return
    stage = stage_of(Along(along="neck", slope=text), "20 x 28 over 10 cm", f"{band} over 10 cm" if band else "")
    assert (stage.units, stage.target) == (rows_of(legs), wanted)
    assert stage.target >= round(stage.units * Fraction(18, 28)), "a slope is never shorter than its height"
    assert doubt("row", stage.target, stage.units, Fraction(stage.natural)) is None


def test_a_slope_without_a_gauge_takes_the_usual_ratio() -> None:
    """3 of 4 rows where nothing is known."""
    stage = stage_of(Along(along="neck", slope=SLOPE))
    assert (stage.units, stage.target, stage.natural) == (28, 21, "")


def test_a_half_goes_up() -> None:
    """The rule of every sum of the program: 3 of 4 over 30 rows are 22.5, so 23; the same at 3 of 4 by the gauge.

    The band's own 22.5 in 10 cm are 23 as well.
    """
    assert stage_of(Along(along="edge", spots=30)).target == 23
    gauge = RecipeGauge(stitches=9, rows=12, over="4 cm")
    natural = natural_ratios(gauge)
    (stage,) = step(Along(along="edge", spots=30)).stages(replace(here({}), natural=natural))
    assert (natural["row"], stage.target) == (Fraction(3, 4), 23)
    assert band_stitches(gauge) == 23


def test_refusals_name_the_numbers() -> None:
    """A length without a gauge or a unit; spots that are not the slope's; a slope or a rate not read."""
    gauged = here({}, body="20 x 28 over 10 cm")
    assert "a rate is" in refused(step(Along(along="edge", ratio="2 of 3")), gauged)
    assert "give the gauge too" in refused(step(Along(along="edge", length="10 cm")), here({}))
    assert "'10'" in refused(step(Along(along="edge", length="10")), gauged)
    assert "28 rows, not 30 rows" in refused(step(Along(along="edge", slope=SLOPE, spots=30)), gauged)
    assert "28 rows" in refused(step(Along(along="edge", slope=SLOPE, unit="stitch")), gauged)
    assert "'downhill'" in refused(step(Along(along="edge", slope="downhill")), gauged)
    assert "10000 rows" in refused(step(Along(along="edge", slope="9999 rows, 9999 rows")), gauged)
    absurd = step(Along(along="edge", length="9999 cm"))
    assert "comes to" in refused(absurd, here({}, body="20 x 999 over 1 cm"))


def test_a_slope_may_be_walked_ridge_by_ridge() -> None:
    """28 rows are 14 ridges, given or not; an odd number of rows is none."""
    assert stage_of(Along(along="edge", slope=SLOPE, unit="ridge", spots=14, stitches=14)).units == 14
    assert "27 rows" in refused(step(Along(along="edge", slope="27 rows straight", unit="ridge")), here({}))
