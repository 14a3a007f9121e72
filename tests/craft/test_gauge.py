"""Gauge, and what blocking makes of it."""

from contextlib import suppress
from fractions import Fraction

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError, Impossible
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.gauge import (
    Gauge,
    before_blocking,
    read_gauge,
    say_gauge,
)
from finishing_tui.craft.lengths import LONGEST, Length, length, say_length

counts = st.fractions(1, 60, max_denominator=4)
lengths = st.builds(length, st.fractions(1, 100, max_denominator=8), st.sampled_from(["cm", "in"]))
gauges = st.builds(Gauge, counts, counts, lengths)


@given(gauges)
def test_a_gauge_holds_over_its_own_length(gauge: Gauge) -> None:
    """Over the length it was measured on, a gauge gives back exactly what was counted."""
    assert gauge.stitches_in(gauge.over) == gauge.stitches
    assert gauge.rows_in(gauge.over) == gauge.rows


@given(gauges, st.integers(1, 50))
def test_stitches_grow_with_the_length(gauge: Gauge, times: int) -> None:
    """An n-fold length has exactly n times the stitches, and the rows lie as long as they were counted on."""
    assume(gauge.over.cm * times <= LONGEST)
    assert gauge.stitches_in(Length(gauge.over.cm * times)) == gauge.stitches * times
    assert gauge.rows is not None
    assert gauge.length_of_rows(gauge.rows * times) == Length(gauge.over.cm * times)


@given(counts, counts, st.integers(1, 40))
def test_the_unit_does_not_matter(stitches: Fraction, rows: Fraction, inches: int) -> None:
    """A gauge over inches and the same over as many centimetres are one gauge."""
    one = Gauge(stitches, rows, length(inches, "in"))
    other = Gauge(stitches, rows, length(inches * Fraction(254, 100), "cm"))
    assert one == other
    assert one.rows_per_cm == other.rows_per_cm


@given(gauges, gauges, lengths)
@example(
    Gauge(Fraction(1), Fraction(1), length(3, "in")),
    Gauge(Fraction(1), Fraction(6), length(1, "cm")),
    length(Fraction(259, 3), "in"),
)
def test_blocking_rows_are_the_nearest_whole_number(before: Gauge, blocked: Gauge, wanted: Length) -> None:
    """The rows to work lie within half a row of the length wanted, and measure what the two gauges say."""
    exact = blocked.rows_in(wanted)
    if exact < Fraction(1, 2):
        with pytest.raises(Impossible, match="shorter than one row"):
            before_blocking(wanted, before, blocked)
        return
    if rounded(exact) / before.rows_per_cm > LONGEST or rounded(exact) / blocked.rows_per_cm > LONGEST:
        with pytest.raises(Impossible, match="up to 10000 cm"):
            before_blocking(wanted, before, blocked)
        return
    work = before_blocking(wanted, before, blocked)
    assert abs(work.rows - exact) <= Fraction(1, 2)
    assert before.rows_in(work.before) == blocked.rows_in(work.after) == work.rows


@given(
    st.integers(1, 60),
    st.integers(1, 99),
    st.sampled_from(
        ["{} x {} over ", "{}x{} per ", "{} sts, {} rows in ", "{} stitches and {} rows to ", "{} {} over "]
    ),
    st.sampled_from(["10 cm", "4 in", '4"', "1 inch"]),
)
def test_the_ways_of_writing(stitches: int, rows: int, form: str, over: str) -> None:
    """Every usual way of writing a gauge is read as the same numbers."""
    gauge = read_gauge(form.format(stitches, rows) + over)
    assert (gauge.stitches, gauge.rows) == (Fraction(stitches), Fraction(rows))
    assert say_length(gauge.over) in {"10 cm", "4 in", "1 in"}


@given(gauges)
def test_what_is_said_is_read_back(gauge: Gauge) -> None:
    """A gauge of quarters over a length on the ruler's marks reads back as itself."""
    if not say_length(gauge.over).startswith("about"):
        said = read_gauge(say_gauge(gauge))
        assert gauge.rows is not None
        assert said.rows is not None
        assert abs(said.stitches - gauge.stitches) < Fraction(1, 100)
        assert abs(said.rows - gauge.rows) < Fraction(1, 100)
        assert said.over == gauge.over


def test_a_band_may_have_no_rows() -> None:
    """The band's rows are not needed; asking for them says that they were not counted."""
    band = read_gauge("22 stitches over 10 cm")
    assert band.rows is None
    assert say_gauge(band) == "22 stitches over 10 cm"
    with pytest.raises(Impossible, match="no rows"):
        band.rows_in(length(10, "cm"))


@pytest.mark.parametrize(
    "typed",
    ["", "20x28", "20 x 28", "20 x 28 over 10", "0 x 28 over 10 cm", "20 x 0 over 10 cm", "20 x 28 over 0 cm",
     "20281234 over 10 cm", "1001 x 3 over 4 in", "x" * 5000, "1" * 79, "-20 x 28 over 10 cm"],
)  # fmt: skip
def test_what_is_no_gauge_is_refused(typed: str) -> None:
    """No length, no unit, nothing counted and absurd numbers are refused in one sentence."""
    with pytest.raises(Impossible):
        read_gauge(typed)


@given(st.text(max_size=100))
def test_any_text_is_a_gauge_or_one_sentence(typed: str) -> None:
    """Whatever is typed is read, or refused by the project's own error."""
    with suppress(FinishingError):
        assert read_gauge(typed).stitches > 0
