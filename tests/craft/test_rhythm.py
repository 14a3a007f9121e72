"""Both kinds of rhythm answer every question just as a plain list of loops does."""

import json
from dataclasses import asdict
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.spacing import Line, Rhythm, Run, Runs, draw


@st.composite
def some_runs(draw_from: st.DrawFn) -> Runs:
    """Give any runs at all: with nothing picked, with everything picked, with doubled spots, mirrored or not."""
    found = []
    for _ in range(draw_from(st.integers(0, 5))):
        of = draw_from(st.integers(1, 7))
        found.append(Run(draw_from(st.integers(0, 2 * of)), of, draw_from(st.integers(1, 4))))
    return Runs(tuple(found), draw_from(st.booleans()))


@st.composite
def some_line(draw_from: st.DrawFn) -> Line:
    """Give any line at all."""
    wide = draw_from(st.integers(1, 40))
    return Line(
        draw_from(st.integers(1, 2 * wide)),
        wide,
        draw_from(st.integers(0, wide - 1)),
        draw_from(st.integers(0, 90)),
    )


some_rhythm = st.one_of(some_runs(), some_line())


def by_hand(rhythm: Rhythm) -> list[int]:
    """Write a rhythm out from its definition, spot by spot."""
    if isinstance(rhythm, Line):
        made = [(i * rhythm.numerator + rhythm.offset) // rhythm.denominator for i in range(rhythm.spots + 1)]
        return [here - before for before, here in pairwise(made)]
    loops: list[int] = []
    for run in rhythm.runs:
        if run.pick <= run.of:
            once = [1] * run.pick + [0] * (run.of - run.pick)
        else:
            once = [1] * (2 * run.of - run.pick) + [2] * (run.pick - run.of)
        loops += (once[::-1] if rhythm.skips_first else once) * run.times
    return loops


@given(some_rhythm)
def test_it_answers_as_its_list_of_loops_does(rhythm: Rhythm) -> None:
    """At, up_to, spot_of, picked, draw and the totals agree with the rhythm written out."""
    loops = by_hand(rhythm)
    spots = range(1, len(loops) + 1)
    assert (rhythm.spots, rhythm.stitches) == (len(loops), sum(loops))
    assert [rhythm.at(spot) for spot in spots] == loops
    assert [rhythm.up_to(spot) for spot in (0, *spots)] == [sum(loops[:spot]) for spot in (0, *spots)]
    listed = [spot for spot, here in enumerate(loops, 1) for _ in range(here)]
    assert rhythm.picked() == listed
    assert [rhythm.spot_of(loop) for loop in range(1, len(listed) + 1)] == listed
    assert draw(rhythm) == "".join(".x2"[here] for here in loops)


@given(some_rhythm, st.data())
def test_any_stretch_of_it_is_that_of_its_list(rhythm: Rhythm, data: st.DataObject) -> None:
    """Between any two spots are the loops that the list of loops has there; at one spot there are none."""
    loops = by_hand(rhythm)
    last = data.draw(st.integers(0, len(loops)))
    after = data.draw(st.integers(0, last))
    assert rhythm.between(after, last) == loops[after:last]


@given(some_rhythm, st.data())
def test_it_can_be_cut_and_mirrored_without_losing_anything(rhythm: Rhythm, data: st.DataObject) -> None:
    """A cut is the rest of the list; the mirror image is the list backwards, and mirrored twice it is itself."""
    loops = by_hand(rhythm)
    after = data.draw(st.integers(0, len(loops)))
    assert by_hand(rhythm.rest(after)) == loops[after:]
    assert type(rhythm.rest(after)) is type(rhythm)
    assert by_hand(rhythm.mirrored()) == loops[::-1]
    assert rhythm.mirrored().mirrored() == rhythm
    further = data.draw(st.integers(0, len(loops) - after))
    assert rhythm.rest(after).rest(further) == rhythm.rest(after + further)


@given(some_rhythm)
def test_its_runs_are_the_rhythm_again(rhythm: Rhythm) -> None:
    """The runs walk over the same spots with the same loops, and every run ends where run_end says."""
    runs = rhythm.as_runs()
    assert by_hand(Runs(runs, rhythm.skips_first)) == by_hand(rhythm)
    start, ends = 0, []
    for run in runs:
        for _ in range(run.times):
            ends += [start + run.of] * run.of
            start += run.of
    assert [rhythm.run_end(after) for after in range(rhythm.spots)] == ends


@given(some_rhythm)
def test_drift_is_the_worst_straying_from_the_line_through_its_ends(rhythm: Rhythm) -> None:
    """The drift agrees with the definition, spot by spot."""
    loops = by_hand(rhythm)
    spots, stitches = len(loops), sum(loops)
    strays = [abs(sum(loops[:spot]) - Fraction(spot * stitches, spots)) for spot in range(1, spots + 1)]
    assert rhythm.drift == max(strays, default=0)


@given(some_rhythm)
def test_it_is_made_of_what_json_can_hold(rhythm: Rhythm) -> None:
    """Written as JSON and read back, it is equal."""
    stored = json.loads(json.dumps(asdict(rhythm)))
    again: Rhythm
    if isinstance(rhythm, Line):
        again = Line(**stored)
    else:
        again = Runs(tuple(Run(**run) for run in stored["runs"]), stored["skips_first"])
    assert again == rhythm


@given(some_rhythm)
def test_beyond_its_ends_it_has_no_answer(rhythm: Rhythm) -> None:
    """No spot 0 and none beyond the last, no loop 0 and none beyond the last: never a silent wrong number."""
    spots, stitches = rhythm.spots, rhythm.stitches
    for ask, value in [
        (rhythm.at, 0),
        (rhythm.at, spots + 1),
        (rhythm.up_to, spots + 1),
        (rhythm.up_to, -1),
        (rhythm.spot_of, 0),
        (rhythm.spot_of, stitches + 1),
        (rhythm.run_end, spots),
        (rhythm.run_end, -1),
        (rhythm.rest, spots + 1),
        (rhythm.rest, -1),
    ]:
        with pytest.raises(IndexError):
            ask(value)
    for after, last in ((-1, 0), (0, spots + 1), (1, 0)):
        with pytest.raises(IndexError):
            rhythm.between(after, last)


@pytest.mark.parametrize("numbers", [(3, 1, 1), (-1, 2, 1), (1, 0, 1), (1, 2, 0)])
def test_there_are_no_impossible_runs(numbers: tuple[int, int, int]) -> None:
    """A run of more than two a spot, of nothing, or of a negative number is refused."""
    with pytest.raises(ValueError, match="no such run"):
        Run(*numbers)


@pytest.mark.parametrize("numbers", [(0, 1, 0, 5), (3, 1, 0, 5), (1, 2, 2, 5), (1, 2, -1, 5), (1, 2, 0, -1)])
def test_there_are_no_impossible_lines(numbers: tuple[int, int, int, int]) -> None:
    """A line steeper than two a spot, level, or with an offset outside its denominator is refused."""
    with pytest.raises(ValueError, match="no such line"):
        Line(*numbers)
