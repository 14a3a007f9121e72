"""An edge pinned in equal parts: shares, counts at the pins, and nothing about rows."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from finishing_tui.garment.commands import PinEdge, TakeCount
from finishing_tui.garment.stops import due
from tests.examples import share
from tests.garment.test_open_edges import at, edges


def test_98_stitches_in_8_parts() -> None:
    """Six of twelve and two of thirteen, and the parts read the same from both ends ("98 sts evenly around")."""
    paper = edges(98).did(PinEdge(8))
    pins = (0, *at(paper)[0].halts, 98)
    shares = [after - before for before, after in pairwise(pins)]
    assert sorted(shares) == [12] * 6 + [13] * 2
    assert shares == shares[::-1]
    assert at(paper, 2)[0].halts == at(paper)[0].halts, "the other side is pinned with it"


@pytest.mark.parametrize("parts", [-1, 0, 1, 13, 100_000])
def test_parts_that_cannot_be_are_refused_with_the_range(parts: int) -> None:
    """Two at least, and two stitches in each."""
    refusal = edges(24).do(PinEdge(parts))
    assert refusal is not None
    assert "2 to 12" in refusal.sentence


def test_it_is_pinned_before_its_first_stitch_only() -> None:
    """Where one is picked up already, it says so."""
    refusal = edges(24).press(1).do(PinEdge(4))
    assert refusal is not None
    assert "before its first stitch" in refusal.sentence


@settings(max_examples=share(40))
@given(st.integers(12, 60), st.integers(2, 6), st.lists(st.integers(-1, 1), min_size=6, max_size=6))
def test_one_over_or_under_at_a_pin_goes_into_the_next_part(target: int, parts: int, slips: list[int]) -> None:
    """Whatever is counted at each pin, the edge ends with its target, and every pin waits for its count."""
    paper = edges(target).did(PinEdge(parts))
    for slip, pin in zip(slips, at(paper)[0].halts, strict=False):
        paper.press(pin - at(paper)[1].mark.units)
        assert due(paper.state) == pin
        paper.did(TakeCount(pin + slip))
        assert due(paper.state) is None
        assert paper.state.ledger.on("band") == pin + slip
    paper.press(target - at(paper)[1].mark.units)
    assert paper.state.ledger.on("band") == target


@pytest.mark.parametrize(("counted", "more"), [(5, 7), (7, 5), (4, 8)])
def test_a_pin_that_was_counted_is_behind(counted: int, more: int) -> None:
    """Whatever was counted at it: the next part takes what is left to the next pin, and is not stopped before."""
    paper = edges(24).did(PinEdge(4)).press(6).did(TakeCount(counted))
    for _ in range(more):
        assert due(paper.state) is None
        paper.press(1)
    assert due(paper.state) == 12
