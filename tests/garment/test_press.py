"""Pressing: all presses of a step are the whole step, at any pace; and what the other key does."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from finishing_tui.craft.errors import FinishingError
from finishing_tui.craft.ledger import OFF, Posting
from finishing_tui.garment.commands import ChoosePace, Command, Other, Press, Refusal, TakeCount, TakeMeasure
from finishing_tui.garment.decide import decide
from finishing_tui.garment.events import Pace, Strayed
from finishing_tui.garment.evolve import Happening, evolve
from finishing_tui.garment.plan import Plan
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import done, loops_up_to, planned, strays
from finishing_tui.garment.work import Standing
from finishing_tui.glance import SpotFace, glance
from finishing_tui.glance.label_words import top_words
from finishing_tui.recipe.kinds import KINDS
from finishing_tui.recipe.model import Number, Place, Recipe
from finishing_tui.recipe.stage import whole
from tests import strategies
from tests.examples import share
from tests.garment.edges import PACES, along, press_to_the_end, section, sections, work_of

NOW = datetime(2024, 5, 1, 12, tzinfo=UTC)


def after(state: State, command: Command) -> State | Refusal:
    """Return the state after a command, with no journal between."""
    events = decide(state, command)
    if isinstance(events, Refusal):
        return events
    for event in events:
        state = evolve(state, Happening(1, "2024-05-01T12:00:00.000Z", 0, event))
    return state


def pressed_through(state: State) -> State:
    """Return the state when the step under the needles is complete; x where a join asks for it, values typed."""
    while state.standing is None or state.standing.work is None or not state.standing.work.complete:
        work = state.standing.work if state.standing else None
        command: Command = Press()
        if work is not None:
            stage = work.stages[work.at]
            if stage.unit == "value":
                command = TakeMeasure("61 cm")
            elif stage.act == "count":
                command = TakeCount(state.ledger.on(stage.place))
            elif stage.unit == "pair" and stage.empties:
                front, back = state.ledger.on(stage.front), state.ledger.on(stage.back)
                command = Press() if front == back else Other(stage.front if front > back else stage.back)
        following = after(state, command)
        assert isinstance(following, State), following
        state = following
    return state


@pytest.mark.turns(of=4)
@pytest.mark.parametrize("do", KINDS)
@settings(max_examples=share(20))
@given(data=st.data())
def test_all_presses_of_a_step_are_the_whole_step(do: str, data: st.DataObject) -> None:
    """For every kind, size, hand, pace and ledger, pressing through enters what the audit enters at one go."""
    here = data.draw(strategies.heres())
    step = replace(strategies.model_of(KINDS[do], data.draw(strategies.steps(do))), for_=())
    expected = here.ledger
    try:
        for stage in step.stages(here):
            expected = expected.enter(*whole(stage))
    except FinishingError:
        assume(condition=False)
    recipe = Recipe(
        format=1,
        title="one step",
        sizes=strategies.SIZES,
        number={name: Number(text=name, by_size=values) for name, values in strategies.NUMBERS.items()},
        place={name: Place(text=here.texts[name], kind="needle") for name in strategies.PLACES},
        gauge=strategies.GAUGE if here.natural else None,
        step=(step,),
    )
    size = strategies.SIZES[here.size]
    plan = Plan(name="x", title="x", recipe=recipe, source="x", text="", size=size, hand=here.hand)
    state = State(plan, here.ledger, (Standing(),), pace=data.draw(st.sampled_from(PACES)))
    if do in {"join", "graft"} and step.count == "all":
        needles = step.needles(here)
        few, many = sorted(here.ledger.on(one) for one in needles)
        assume(many <= 2 * few)
        # The audit leaves what does not match; at the needles x takes it in.
        kept = {getattr(step, "keep", ""): 1} if few < many else {}
        left = [(one, expected.on(one) - kept.get(one, 0)) for one in needles if few < many]
        expected = expected.enter(*(Posting(one, OFF, count) for one, count in left if count))
    assert pressed_through(state).ledger == expected


@given(sections(), st.sampled_from(PACES))
def test_every_pace_reaches_the_same_ledger_and_edge(shape: tuple[int, int, str, str], pace: Pace) -> None:
    """Loop by loop, spot by spot, run by run: the same stitches, the same spots, and no stray."""
    paper = press_to_the_end(along(*shape, pace=pace))
    stage, progress = section(paper)
    assert paper.state.ledger.on("band") == progress.mark.loops == stage.target == shape[1]
    assert progress.mark.units == shape[0]
    assert not strays(progress)
    assert paper.do(Press()) is not None, "at the target another press is refused"


@given(sections(), st.lists(st.sampled_from(PACES), min_size=1, max_size=80))
def test_the_pace_may_change_at_any_press(shape: tuple[int, int, str, str], paces: list[Pace]) -> None:
    """However the paces are mixed, even in the middle of a spot that takes two, the target is reached exactly."""
    paper = along(*shape)
    for pace in paces:
        if not work_of(paper.state).complete:
            paper.did(ChoosePace(pace), Press())
    assert section(press_to_the_end(paper))[1].mark.loops == shape[1]


@given(sections(least=2), st.lists(st.integers(0, 6), min_size=1, max_size=5), st.sampled_from(PACES))
def test_a_stray_is_made_up_for_where_a_later_spot_can_take_it(
    shape: tuple[int, int, str, str], gaps: list[int], pace: Pace
) -> None:
    """After each x the plan still ends at the target, unless no later spot can take it; the edge shows each stray."""
    paper = along(*shape, pace=pace)
    strayed: dict[int, int] = {}
    for gap in gaps:
        for _ in range(gap):
            if not work_of(paper.state).complete:
                paper.did(Press())
        if work_of(paper.state).complete:
            break
        stage, before = section(paper)
        spot = before.mark.units + 1
        plan, owing = planned(before, spot), stage.target - loops_up_to(before, stage.units)
        paper.did(Other())
        _, progress = section(paper)
        event = paper.latest[0]
        assert isinstance(event, Strayed)
        assert (event.at, event.loops) == (spot, done(progress, spot))
        assert abs(event.loops - plan) == 1
        strayed[spot] = event.loops
        short = stage.target - loops_up_to(progress, stage.units)
        more = shape[1] > shape[0]
        can = range(spot + 1, stage.units + (0 if shape[3] == "closed" and event.loops > plan and not more else 1))
        takers = [one for one in can if planned(before, one) + plan - event.loops in ((1, 2) if more else (0, 1))]
        assert short == owing + (0 if takers else plan - event.loops)
    face = glance(paper.state, NOW).face
    if isinstance(face, SpotFace):
        assert face.edge.strayed == set(strayed)
    stage, progress = section(press_to_the_end(paper))
    assert progress.mark.loops == loops_up_to(progress, stage.units) == paper.state.ledger.on("band")
    assert dict(strays(progress)) == strayed


def test_a_skipped_pick_is_picked_at_the_end_of_its_run() -> None:
    """3 of every 4: the second row skipped by mistake, so the fourth is picked; then the rhythm goes on."""
    paper = along(8, 6).press().did(Other())
    _, progress = section(paper)
    assert [planned(progress, spot) for spot in range(3, 9)] == [1, 1, 1, 1, 1, 0]
    assert top_words(paper.state) == "row 2, skipped against the plan"


def test_in_a_run_with_a_stray_presses_go_spot_by_spot() -> None:
    """At run pace x drops to spot pace for that run, and the screen says so; the next run goes at one press."""
    paper = along(8, 6, pace="run").did(Other())
    assert isinstance(face := glance(paper.state, NOW).face, SpotFace)
    assert (face.count, face.spot, face.acts) == (0, 1, ("PICK",))
    paper.press(3)
    assert isinstance(face := glance(paper.state, NOW).face, SpotFace)
    assert (face.count, face.spot, face.acts) == (3, 4, ("PICK 3", "SKIP 1"))
    paper.press()
    assert work_of(paper.state).complete


def test_a_spot_that_takes_two_may_be_left_at_one() -> None:
    """Six from four, rows two and four doubled: x after one loop of row two leaves it, and row three takes two."""
    paper = along(4, 6).press(2).did(Other())
    _, progress = section(paper)
    assert (progress.mark.units, progress.mark.loops) == (2, 2)
    assert top_words(paper.state) == "row 2, picked once against the plan"
    assert [planned(progress, spot) for spot in (3, 4)] == [2, 2]
    assert section(press_to_the_end(paper))[1].mark.loops == 6


def test_a_spot_that_takes_one_may_take_two() -> None:
    """Six from four: row one doubled, so row two takes one only, and the section ends at six."""
    paper = along(4, 6).did(Other())
    assert top_words(paper.state) == "row 1, doubled against the plan"
    assert [planned(section(paper)[1], spot) for spot in (2, 3, 4)] == [1, 1, 2]
    assert section(press_to_the_end(paper))[1].mark.loops == 6


def test_a_picked_skip_never_opens_a_closed_end() -> None:
    """With both ends picked, the last spot stays picked; the loop too many is left out before it."""
    paper = along(5, 4, "easy", "closed")
    skip = next(spot for spot in range(1, 6) if not planned(section(paper)[1], spot))
    paper.did(ChoosePace("spot")).press(skip - 1).did(Other())
    assert planned(section(paper)[1], 5) == 1


def test_x_does_nothing_where_there_is_only_one_thing_to_do() -> None:
    """A round is a round: refused with a sentence."""
    paper = press_to_the_end(along(4, 3))
    refusal = paper.do(Other())
    assert refusal is not None
    assert "finish it" in refusal.sentence
