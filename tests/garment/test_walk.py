"""An edge read a stretch at a time says what it says spot by spot."""

from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.spacing import space
from finishing_tui.garment.walk import done, done_on, next_pick, planned, planned_on
from finishing_tui.garment.work import Progress, Reached, Stretch
from finishing_tui.recipe.stage import Stage


@st.composite
def walked(draw: st.DrawFn) -> tuple[Stage, Progress]:
    """Return a section walked through several counts, with strays, what makes up for them, and loops left in a spot."""
    spots = draw(st.integers(1, 60))
    starts = [0, *sorted(draw(st.lists(st.integers(0, spots), max_size=3)))]
    changes = st.lists(st.tuples(st.integers(1, spots), st.integers(0, 2)), max_size=4).map(tuple)
    stretches = tuple(
        Stretch(
            start,
            space(draw(st.integers(1, 2 * left)), left, style=draw(st.sampled_from(("easy", "even")))),
            moved,
            strayed,
        )
        for start, moved, strayed in ((start, draw(changes), draw(changes)) for start in starts)
        for left in (draw(st.integers(1, max(spots - start, 1))),)
    )
    return Stage("spot", spots, "edge", "pick"), Progress(Reached(draw(st.integers(0, spots))), stretches)


@given(walked(), st.data())
def test_a_stretch_of_spots_is_its_spots(edge: tuple[Stage, Progress], data: st.DataObject) -> None:
    """What is planned and what was done on many spots is what it is on each of them."""
    stage, progress = edge
    last = data.draw(st.integers(0, stage.units))
    after = data.draw(st.integers(0, last))
    spots = range(after + 1, last + 1)
    assert planned_on(progress, after, last) == [planned(progress, spot) for spot in spots]
    assert done_on(progress, after, last) == [done(progress, spot) for spot in spots]


@given(walked())
def test_the_next_pick_is_the_first_spot_to_come_that_takes_a_loop(edge: tuple[Stage, Progress]) -> None:
    """Nothing is planned on the spots before it; where there is none, nothing is planned on any."""
    stage, progress = edge
    found = next_pick(stage, progress)
    to_come = range(progress.mark.units + 1, stage.units + 1)
    assert found == next((spot for spot in to_come if planned(progress, spot)), None)
