"""Every recipe that comes with the program, worked by commands to its end, as a knitter would work it.

The audit and the tests of recipes work whole steps on paper. Here each press, count, lot and measure goes through
``decide``, the store and ``evolve``, so what is proved of a recipe is proved of a garment in hand.
"""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from random import Random
from typing import Literal

import pytest

from finishing_tui import shipped
from finishing_tui.craft.figures import rounded
from finishing_tui.craft.lengths import read_length
from finishing_tui.garment.commands import ChoosePace, Finish, Other, Press, PutRight, TakeCount, TakeMeasure
from finishing_tui.garment.events import Pace
from finishing_tui.garment.evolve import Happening
from finishing_tui.garment.stored import from_row
from finishing_tui.garment.work import StepWork
from finishing_tui.glance.following import following
from finishing_tui.recipe.kinds.count import CountStitches
from finishing_tui.recipe.model import RecipeGauge
from finishing_tui.record import Record, as_data, as_text, record_of
from tests.garment.paper import Paper, plan_for, recipe_of
from tests.recipe.test_shipped import NOTHING_ASKED

TEXTS = {name: path.read_text(encoding="utf-8") for name, path in shipped.recipes().items()}
EVERY_SIZE = [(name, size) for name, text in TEXTS.items() for size in recipe_of(text).sizes]
SIZES = {name: recipe_of(text).sizes for name, text in TEXTS.items()}
SMALLEST_AND_LARGEST = [(name, sizes[at]) for name, sizes in SIZES.items() for at in (0, -1)]
"""Between them lie all counts."""
MIDDLE = [(name, sizes[len(sizes) // 2]) for name, sizes in SIZES.items()]

CM_PER_IN = Fraction("2.54")

Hand = Literal["right", "left"]


def taken(
    name: str, size: str, *, pace: Pace = "run", hand: Hand = "right", own: Mapping[str, int] | None = None
) -> Paper:
    """Return a garment just begun after a shipped recipe."""
    return Paper(plan_for(TEXTS[name], size, hand=hand, own=own)).did(ChoosePace(pace))


def work_of(paper: Paper) -> StepWork | None:
    """Return the work under the needles."""
    return paper.state.standing.work if paper.state.standing else None


def unit(paper: Paper) -> None:
    """Do the next thing as a knitter does: the count at a half mark, the lot of held stitches, a measure, a press."""
    work = work_of(paper)
    if work is None:
        paper.did(Press())
        return
    stage, progress = work.stages[work.at], work.progress[work.at]
    if stage.unit == "value":
        paper.did(TakeMeasure("26"))
    elif stage.act == "count":
        paper.did(TakeCount(paper.state.ledger.on(stage.place), stage.place))
    elif stage.takes_all:
        paper.did(Finish())
    else:
        if progress.mark.units in stage.halts and progress.confirmed[1] < progress.mark.units:
            paper.did(TakeCount(progress.mark.loops))
        paper.did(Press())


def done_or_taken_back(paper: Paper, dice: Random) -> None:
    """Do the next thing, the end of a step too, or now and then take the last one back."""
    work = work_of(paper)
    if dice.random() < 0.1 or paper.state.current is None:
        paper.take_back()
    elif work is not None and work.complete:
        paper.did(Finish())
    else:
        unit(paper)


def end_step(paper: Paper) -> None:
    """Work the step under the needles to its end, and say that it is done: it is not asked twice."""
    while (work := work_of(paper)) is None or not work.complete:
        unit(paper)
    paper.did(Finish())


def to_the_end(paper: Paper) -> Paper:
    """Work every step that is left."""
    while paper.state.current is not None:
        end_step(paper)
    return paper


def recorded(paper: Paper) -> Record:
    """Return the record of a garment on paper."""
    events = (from_row(row) for row in paper.rows)
    return record_of(Happening(one.group, one.at, one.after_ms, one.event) for one in events)


def is_complete(paper: Paper) -> Record:
    """Return the record; the ledger is empty, every step of the size is done, and the record tells of all of them."""
    state, plan = paper.state, paper.state.plan
    assert state.ledger.empty, state.ledger
    wanted = {index for index in range(len(state.steps)) if plan.is_for(index)}
    assert {index for index, standing in enumerate(state.steps) if standing.status == "done"} == wanted
    record = recorded(paper)
    assert record.state == state
    data = as_data(record)
    assert data["finished"]
    assert data["places"] == {}
    text = as_text(record)
    assert all(plan.step(index).title in text for index in wanted)
    counted = {one.step for one in record.counts}
    assert {index + 1 for index in wanted if isinstance(plan.step(index), CountStitches)} <= counted
    return record


@pytest.mark.turns(of=8)
@pytest.mark.parametrize(("name", "size"), EVERY_SIZE)
def test_every_size_as_printed(name: str, size: str) -> None:
    """With the printed numbers nothing is refused or asked twice, nothing departs, and nothing is left."""
    record = is_complete(to_the_end(taken(name, size)))
    assert record.deviations == ()
    assert all(one.act.counted == one.act.expected for one in record.counts)


OTHERWISE: tuple[tuple[int, Hand, Pace], ...] = ((2, "left", "loop"), (-3, "right", "spot"))
"""How the smallest and the largest size differ from print: asked numbers by so many, the hand, and the pace."""


@pytest.mark.turns(of=2)
@pytest.mark.parametrize(("name", "size", "otherwise"), [(*one, at % 2) for at, one in enumerate(SMALLEST_AND_LARGEST)])
def test_a_few_rows_more_or_fewer(name: str, size: str, otherwise: int) -> None:
    """What the knitter is asked for may differ from print, for either hand: nothing is refused, and nothing is left."""
    off, hand, pace = OTHERWISE[otherwise]
    recipe = recipe_of(TEXTS[name])
    printed = plan_for(TEXTS[name], size).numbers()
    own = {key: printed[key] + off for key, number in recipe.number.items() if number.ask}
    assert own or name == NOTHING_ASKED
    is_complete(to_the_end(taken(name, size, pace=pace, hand=hand, own=own)))


@pytest.mark.turns(of=2)
@pytest.mark.parametrize(("name", "size"), MIDDLE)
def test_a_gauge_of_her_own_in_inches_left_handed(name: str, size: str) -> None:
    """A stitch more and a row fewer than printed, counted over 4 in, for a left-handed knitter: it comes out too.

    What is given by a length has another number of spots then; what is picked stays as printed, or follows the gauge.
    """
    plan = plan_for(TEXTS[name], size, hand="left")
    printed = plan.recipe.gauge
    assert printed is not None
    long = read_length(printed.over).cm
    stitches, rows = (rounded(count * 4 * CM_PER_IN / long) for count in (printed.stitches, printed.rows))
    own = RecipeGauge(stitches=stitches + 1, rows=rows - 1, over="4 in", band=printed.band)
    paper = to_the_end(Paper(replace(plan, gauge=own)).did(ChoosePace("run")))
    assert recorded(paper).state == paper.state
    assert paper.state.ledger.empty


@pytest.mark.turns(of=2)
@pytest.mark.parametrize(("name", "size"), MIDDLE)
def test_one_stitch_missing_is_found_and_put_right(name: str, size: str) -> None:
    """At the first count one stitch is missing: later numbers are named, the first repair mends all of them."""
    paper = taken(name, size)
    while paper.state.current is not None:
        work = work_of(paper)
        if work is not None and not work.complete and work.stages[work.at].act == "count":
            break
        if work is not None and work.complete:
            paper.did(Finish())
        else:
            unit(paper)
    assert paper.state.current is not None
    place = paper.state.plan.step(paper.state.current).main_place
    before = paper.state
    should = before.ledger.on(place)
    paper.did(TakeCount(should - 1, place))
    assert paper.state.ledger.on(place) == should - 1
    found = following(before, paper.state)
    assert found is not None
    assert found.lines
    paper.did(next(one.command for one in found.does if isinstance(one.command, PutRight)))
    to_the_end(paper)
    assert paper.state.ledger.empty
    (told,) = [one.act for one in recorded(paper).counts if one.act.counted != one.act.expected]
    assert (told.counted, told.expected) == (should - 1, should)


@pytest.mark.turns(of=2)
@pytest.mark.parametrize(("name", "size"), MIDDLE)
def test_the_other_thing_done_at_one_row(name: str, size: str) -> None:
    """One row picked that should have been skipped, or the other way: the rest makes up for it, and it is recorded.

    Where every spot is picked anyway (the ridges of the baby jacket) nothing could make up for it.
    """
    paper = taken(name, size, pace="spot")
    strayed = False
    while paper.state.current is not None:
        work = work_of(paper)
        if work is not None and work.complete:
            paper.did(Finish())
        elif not strayed and work is not None and 1 < (stage := work.stages[work.at]).target < stage.units:
            paper.did(Press(), Press(), Other())
            strayed = True
        else:
            unit(paper)
    assert paper.state.ledger.empty
    assert bool(recorded(paper).deviations) == strayed
