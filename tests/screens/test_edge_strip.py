"""The edge as it is drawn: the caret always in sight, every spot in its shape, from either hand."""

import re
from dataclasses import replace
from itertools import pairwise, permutations
from typing import Literal

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.spacing import space
from finishing_tui.garment.work import Progress, Reached, Stretch
from finishing_tui.glance.values import Edge
from finishing_tui.widgets.edge_strip import PIN, PINNED, ROW, SHAPES, TIPS, edge_rows, window

Hand = Literal["right", "left"]
HANDS: st.SearchStrategy[Hand] = st.sampled_from(["right", "left"])


def _edge(stitches: int, spots: int, at: int, hand: Hand) -> Edge:
    rhythm = space(stitches, spots)
    progress = Progress(Reached(at, 0, rhythm.up_to(at)), (Stretch(0, rhythm),))
    return Edge(spots, at, spots // 2 or None, "held stitches", "shoulder join", hand, progress)


@st.composite
def edges(draw: st.DrawFn) -> Edge:
    """Return an edge somewhere along its walk."""
    spots = draw(st.integers(1, 400))
    return _edge(draw(st.integers(1, 2 * spots)), spots, draw(st.integers(0, spots)), draw(HANDS))


@given(edges(), st.integers(30, 160))
def test_the_next_spot_is_always_in_sight(edge: Edge, width: int) -> None:
    """However long the edge and narrow the screen, the caret is shown, and every line fits."""
    rows = edge_rows(edge, width)
    assert len(rows) == 4
    assert all(row.cell_length <= width for row in rows)
    assert any("reverse" in str(span.style) for span in rows[1].spans) == (edge.at < edge.spots)


@given(edges(), st.integers(30, 160))
def test_every_spot_in_sight_has_the_shape_of_what_it_is(edge: Edge, width: int) -> None:
    """Read back in walking order, the shapes are those of the spots, and what is beyond is counted."""
    first, last, step = window(edge, width - 2 * (len(str(edge.spots)) + 2))
    shapes = above(edge, width, step)
    walked = shapes if edge.hand == "left" else shapes[::-1]
    shapes = [SHAPES[edge.sort(spot)][0] for spot in range(first, last + 1)]
    if step == 1 and 0 < edge.at < edge.spots:  # the tip has no room beside it
        shapes[edge.at + 1 - first] = TIPS[edge.hand][0]
    assert walked == shapes
    assert (first, last) == (1, edge.spots) or step == 1
    if first > 1:
        assert str(first - 1) in edge_rows(edge, width)[1].plain


def above(edge: Edge, width: int, step: int) -> list[str]:
    """Return what is drawn above each row of the edge, from left to right."""
    needle, rows = (line.plain for line in edge_rows(edge, width)[:2])
    marks = [at for at, sign in enumerate(rows) if sign == ROW[0]]
    assert {b - a for a, b in pairwise(marks)} <= {step}
    return [needle.ljust(width)[at] for at in marks]


@given(edges(), st.integers(30, 160), st.booleans())
def test_the_half_is_no_half_of_a_number(edge: Edge, width: int, only_ascii: bool) -> None:  # noqa: FBT001
    """Its sign never touches a number of the ruler: nobody reads 50½."""
    ruler = edge_rows(edge, width, ascii_only=only_ascii)[2].plain
    assert not re.search(r"\d½|½\d", ruler)


@given(edges(), st.integers(30, 160))
def test_both_hands_see_mirror_images(edge: Edge, width: int) -> None:
    """A left-handed knitter walks from left to right: the spots are the same the other way round."""
    other = Edge(edge.spots, edge.at, edge.half, edge.before, edge.after, _OTHER[edge.hand], edge.progress)
    _, _, step = window(edge, width - 2 * (len(str(edge.spots)) + 2))
    turned = {tip: other for (tip, _), (other, _) in permutations(TIPS.values())}
    assert above(edge, width, step) == [turned.get(sign, sign) for sign in above(other, width, step)[::-1]]


_OTHER: dict[Hand, Hand] = {"right": "left", "left": "right"}


def test_shapes_differ_without_colour() -> None:
    """What a spot is shows in its shape alone, in both alphabets of shapes."""
    for alphabet in (0, 1):
        assert len({shapes[alphabet] for shapes in SHAPES.values()}) == len(SHAPES)
    assert all(shapes[1].isascii() for shapes in SHAPES.values())


@st.composite
def pinned(draw: st.DrawFn) -> Edge:
    """Return a pinned edge somewhere along its walk: a spot a stitch, and each is picked."""
    stitches = draw(st.integers(4, 200))
    parts = draw(st.integers(2, stitches // 2))
    pins = tuple(part * stitches // parts for part in range(1, parts))
    return replace(_edge(stitches, stitches, draw(st.integers(0, stitches)), draw(HANDS)), half=None, pins=pins)


@given(pinned(), st.integers(30, 160), st.booleans())
def test_every_pin_in_sight_stands_behind_its_last_stitch(edge: Edge, width: int, only_ascii: bool) -> None:  # noqa: FBT001
    """Between two stitches where there is room, else below the last one; the edge has no rows, and every line fits."""
    lines = [line.plain for line in edge_rows(edge, width, ascii_only=only_ascii)]
    assert all(len(line) <= width for line in lines)
    first, last, step = window(edge, width - 2 * (len(str(edge.spots)) + 2))
    line = PINNED[only_ascii]
    drawn = re.search(f"[{line}{PIN}]+", lines[1])
    assert drawn is not None
    walked = drawn[0] if edge.hand == "left" else drawn[0][::-1]
    assert len(walked) == (last - first + 1) * step
    found = {first + at // step for at, sign in enumerate(walked) if sign == PIN}
    if edge.hand == "right" and step > 1:  # read from the right, the room of a stitch comes before it
        found = {spot - 1 for spot in found}
    assert found == {pin for pin in edge.pins if first <= pin <= last}


@given(pinned(), st.integers(30, 160))
def test_every_number_stands_under_its_pin_and_is_whole(edge: Edge, width: int) -> None:
    """Where two pins are too close together, one of them goes without."""
    _, below, ruler, _ = (line.plain for line in edge_rows(edge, width))
    for number in re.finditer(r"\d+", ruler):
        assert int(number[0]) in edge.pins
        assert below[number.start()] == PIN


@given(pinned(), st.integers(30, 160))
def test_the_working_tip_is_at_the_next_stitch(edge: Edge, width: int) -> None:
    """The needle holds what was picked up, and nothing that is to come."""
    needle = edge_rows(edge, width)[0].plain
    walked = needle if edge.hand == "left" else needle[::-1]
    tip = walked.find(TIPS[edge.hand][0])
    if 0 < edge.at < edge.spots:
        assert set(walked[:tip]) <= {"∩", "═", " "}
        assert set(walked[tip + 1 :]) <= {"╷", " "}
