import pytest
from hypothesis import given
from hypothesis import strategies as st

from finishing_tui.craft.rhythm import draw
from finishing_tui.garment.commands import ChooseMirror, Other, Press, PutRight, TakeCount
from finishing_tui.garment.walk import done
from finishing_tui.garment.work import Progress
from finishing_tui.recipe.stage import Stage
from finishing_tui.talk.offers import offers
from tests.garment.edges import work_of
from tests.garment.paper import Paper, plan_for
from tests.recipe_texts import along, place, recipe, section, step


def two_sides(left: int = 32, right: int = 32, stitches: int = 24) -> Paper:
    """Return a garment with two sides of an edge, a gap between them, and the second the mirror of the first."""
    sections = (
        along("left side", left, stitches),
        section(gap="corner", extra=1),
        along("right side", right, stitches, mirrors="left side"),
    )
    picked_up = step("pick up and knit", "Pick up", *sections, onto="band")
    return Paper(plan_for(recipe("Two sides", place("band"), picked_up)))


def side(paper: Paper, index: int) -> tuple[Stage, Progress]:
    """Return a stage of the step and its progress."""
    work = work_of(paper.state)
    return work.stages[index], work.progress[index]


def walk(paper: Paper, plan: list[bool]) -> None:
    """Walk the first side: at each True the other thing is done than the plan says."""
    for other in plan:
        if work_of(paper.state).at:
            return
        paper.did(Other() if other else Press())
    while not work_of(paper.state).at:
        paper.did(Press())


def really(paper: Paper) -> list[int]:
    """Return what was really picked along the first side."""
    stage, progress = side(paper, 0)
    return [done(progress, spot) for spot in range(1, stage.units + 1)]


def drawn(stage: Stage) -> str:
    """Return the rhythm of a stage, drawn."""
    assert stage.rhythm is not None
    return draw(stage.rhythm)


@given(st.lists(st.booleans(), max_size=40))
def test_the_second_side_is_the_first_as_it_was_walked(plan: list[bool]) -> None:
    """Where presses explain the first side, the second is its real spots, walked from the other end."""
    paper = two_sides()
    walk(paper, plan)
    first = "".join(".x2"[loops] for loops in really(paper))
    stage, progress = side(paper, 2)
    assert drawn(stage) == first[::-1]
    assert stage.target == side(paper, 0)[1].mark.loops
    assert progress.stretches[0].rhythm == stage.rhythm


def test_a_side_worked_as_planned_leaves_the_plan_as_it_was() -> None:
    """Without a deviation nothing is said of the first side, and there is nothing to choose."""
    paper = two_sides()
    planned = side(paper, 2)[0]
    walk(paper, [])
    assert side(paper, 2)[0] == planned
    paper.press()  # the loop in the corner
    assert "mirror" not in {offer.action for offer in offers(paper.state)}


def test_a_count_that_presses_do_not_explain_is_kept_and_spread() -> None:
    """11 counted where 12 were pressed at half way: 11 over those 15 rows evenly, then what was really picked."""
    paper = two_sides()
    paper.press(12)
    paper.did(TakeCount(11, answer="loops"))
    walk(paper, [])
    stage, _ = side(paper, 2)
    assert stage.target == 24
    backwards = drawn(stage)
    assert (backwards[:17].count("x"), backwards[17:].count("x")) == (13, 11)
    assert backwards[:17][::-1] == "".join(".x2"[loops] for loops in really(paper)[15:])


def test_another_number_of_rows_gets_the_same_count_evenly() -> None:
    """With 30 rows where the first side had 32, the second takes as many stitches, spread evenly, and says so."""
    paper = two_sides(right=30)
    walk(paper, [False, True])
    stage, _ = side(paper, 2)
    assert (stage.units, stage.target) == (30, side(paper, 0)[1].mark.loops)
    assert stage.words.startswith("as many as left side got, evenly")


def test_the_planned_rhythm_is_the_other_choice() -> None:
    """Before the second side is begun it can go as planned, and back; once begun it cannot be changed like that."""
    paper = two_sides()
    planned = side(paper, 2)[0]
    walk(paper, [True])
    paper.press()  # the loop in the corner
    worked = side(paper, 2)[0]
    assert drawn(worked) != drawn(planned)
    assert "mirror" in {offer.action for offer in offers(paper.state)}
    assert side(paper.did(ChooseMirror(as_worked=False)), 2)[0] == planned
    assert side(paper.did(ChooseMirror(as_worked=True)), 2)[0] == worked
    paper.press()
    assert paper.do(ChooseMirror(as_worked=False)) is not None


def test_a_recount_of_the_first_side_changes_the_second() -> None:
    """The first side counted once more at its end: 23, taken as it is; the second then takes 23 too."""
    paper = two_sides()
    walk(paper, [])
    paper.did(TakeCount(23, answer="loops", repair="as-it-is"))
    assert side(paper, 2)[0].target == 23


@pytest.mark.parametrize("presses", [1, 5])
def test_taking_back_the_end_of_the_first_side_takes_its_mirror_back(presses: int) -> None:
    """The mirror is fixed in the event that ends the first side, so it goes and comes with it."""
    paper = two_sides()
    walk(paper, [True] * presses)
    before, after = side(two_sides(), 2), side(paper, 2)
    assert paper.take_back() is None
    assert side(paper, 2) == before
    assert paper.put_back() is None
    assert side(paper, 2) == after
    assert paper.replayed() == paper.state


@pytest.mark.parametrize(
    "command", [TakeCount(24, place="band"), PutRight("here", "band", 1)], ids=["counted", "put right"]
)
def test_a_count_between_the_sides_leaves_the_mirror(command: TakeCount | PutRight) -> None:
    """Counting the needle, or making a stitch on it, after the first side: the second still goes as that was worked."""
    paper = two_sides()
    walk(paper, [True, True])
    worked = side(paper, 2)[0]
    assert worked.as_worked
    paper.did(command)
    assert side(paper, 2)[0] == worked


def test_a_count_as_it_is_loses_only_the_stretch_before_it() -> None:
    """11 counted where 12 were pressed, and on by the plan: from there on the real spots are mirrored."""
    paper = two_sides()
    paper.press(12)
    paper.did(TakeCount(11, answer="loops", repair="as-it-is"))
    walk(paper, [True])
    backwards, first = drawn(side(paper, 2)[0]), "".join(".x2"[loops] for loops in really(paper))
    assert backwards[:17] == first[:14:-1]
    assert (backwards[17:].count("x"), first[:15].count("x")) == (11, 12)
