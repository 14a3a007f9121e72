"""A re-spaced rest looks behind and ahead: the last picks, the corner of a closed end, the runs of a mirrored side."""

from fractions import Fraction
from itertools import groupby

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from finishing_tui.garment.commands import Other, Press, TakeCount, WhatIf
from finishing_tui.garment.events import RepairChoice, WhyOff
from finishing_tui.garment.walk import done_on, planned_on, stretch_at
from finishing_tui.garment.work import Progress
from finishing_tui.recipe.stage import Stage
from tests.examples import share
from tests.garment.paper import Paper, plan_for
from tests.garment.test_open_edges import at, edges, work_of
from tests.recipe_texts import along as edge
from tests.recipe_texts import place, recipe, section, step

REPAIRS: tuple[RepairChoice, ...] = ("space-the-rest", "first-round", "rip-back")


def sides(spots: int, stitches: int, ends: str = "open") -> Paper:
    """Return a garment just begun: two sides with so many rows, the second the mirror of the first."""
    pick_up = step(
        "pick up and knit",
        "Pick up",
        edge("left edge", spots, stitches, unit="row", ends=ends),
        section(from_="back", along="back neck"),
        edge("right edge", spots, stitches, unit="row", ends=ends, mirrors="left edge"),
        onto="band",
    )
    places = place("band") + place("back", "holder", live=2)
    return Paper(plan_for(recipe("Two sides", places, pick_up, step("work", "Work the band", on="band", rows=2))))


def longest(loops: list[int]) -> int:
    """Return the longest row of spots that are picked."""
    return max((len(list(row)) for picked, row in groupby(loops, bool) if picked), default=0)


def across(stage: Stage, progress: Progress) -> tuple[int, int]:
    """Return the longest row of picks that ends in what is left, and the longest of what is left by itself."""
    mark = progress.mark
    rest = planned_on(progress, mark.units, stage.units)
    behind = 0
    for made in reversed(done_on(progress, 0, mark.units)):
        if not made:
            break
        behind += 1
    first = next((spot for spot, loops in enumerate(rest) if not loops), len(rest))
    return (behind + first if first else 0), longest(rest)


@settings(max_examples=share(60))
@given(st.data())
def test_a_recount_goes_on_from_the_last_picks_on_both_sides(data: st.DataObject) -> None:
    """Whichever way is taken, on the first side and on its mirror: own rows and one more, and the corner is picked."""
    spots = data.draw(st.integers(12, 36))
    stitches = data.draw(st.integers(spots // 3 + 2, spots - 1))
    ends = data.draw(st.sampled_from(("open", "closed")))
    paper, index = sides(spots, stitches, ends), data.draw(st.sampled_from((0, 2)))
    while work_of(paper).at < index or at(paper, index)[1].mark.units < data.draw(st.integers(2, spots - 3)):
        assume(not work_of(paper).complete)
        paper.did(Other() if work_of(paper).at == index and data.draw(st.integers(0, 9)) == 0 else Press())
    assume(work_of(paper).at == index)
    mark = at(paper, index)[1].mark
    turned = stretch_at(at(paper, index)[1], mark.units + 1).rhythm.skips_first
    counted = max(mark.loops + data.draw(st.integers(-2, 2)), 0)
    repair = data.draw(st.sampled_from(REPAIRS))
    if paper.do(TakeCount(counted, answer="loops", repair=repair)) is not None:
        return
    stage, progress = at(paper, index)
    left = sum(planned_on(progress, progress.mark.units, stage.units))
    if not 0 < left < stage.units - progress.mark.units or counted != mark.loops:
        return  # where a count differs, nobody knows where the picks behind it are
    row, own = across(stage, progress)
    assert row <= own + 1
    assert stretch_at(progress, progress.mark.units + 1).rhythm.skips_first or not turned
    if ends == "closed":
        assert planned_on(progress, stage.units - 1, stage.units) == [1]


@settings(max_examples=share(60))
@given(st.integers(14, 60), st.integers(1, 40), st.integers(-1, 1), st.sampled_from(["not-known", "rows-left"]))
@example(17, 14, 1, "not-known")  # two are left: they have no skip of their own
def test_never_four_in_a_row_where_2_of_3_are_wanted(target: int, pressed: int, slip: int, answer: WhyOff) -> None:
    """An edge nobody counted, at 2 of every 3, counted anywhere: at its rate, or over as many rows as that takes."""
    assume(0 < pressed + slip < target - 1 and pressed < target - 1)
    paper = edges(target).press(pressed)
    walked = at(paper)[1].mark.units
    assume(pressed + slip <= walked)
    left = -(-(target - pressed - slip) * 3 // 2) if answer == "rows-left" else None
    paper.did(TakeCount(pressed + slip, answer=answer, left=left, repair="space-the-rest"))
    stage, progress = at(paper)
    row, own = across(stage, progress)
    assert max(row, own) <= 3
    assert sum(planned_on(progress, progress.mark.units, stage.units)) == target - progress.mark.loops


@pytest.mark.parametrize("ends", ["open", "closed"])
@pytest.mark.parametrize("change", [WhatIf(target=20), WhatIf(target=28), WhatIf(spots=38), WhatIf(spots=34)])
def test_what_if_keeps_the_mirror_where_both_sides_agree(change: WhatIf, ends: str) -> None:
    """Another target on the first side: the second is its exact mirror. Another length of one: of the other too."""
    paper = sides(36, 24, ends).press(7).did(change)
    first = at(paper)
    rows = [*done_on(first[1], 0, first[1].mark.units), *planned_on(first[1], first[1].mark.units, first[0].units)]
    while work_of(paper).at < 2:
        paper.press()
    if change.spots is not None and at(paper, 2)[0].units != change.spots:
        paper.did(change)
    stage, progress = at(paper, 2)
    assert planned_on(progress, 0, stage.units) == rows[::-1]


def test_a_mirrored_side_changed_on_the_way_goes_on_in_its_own_runs() -> None:
    """2 of every 3 walked from the other end begin with the skip; with one more wanted they still do."""
    paper = sides(36, 24)
    while work_of(paper).at < 2 or at(paper, 2)[1].mark.units < 9:
        paper.press()
    assert at(paper, 2)[0].rate == Fraction(2, 3)
    paper.did(WhatIf(target=25))
    stage, progress = at(paper, 2)
    assert stretch_at(progress, progress.mark.units + 1).rhythm.skips_first
    assert planned_on(progress, stage.units - 1, stage.units) == [1]
    assert across(stage, progress)[0] <= across(stage, progress)[1] + 1
