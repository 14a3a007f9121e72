"""The job with an edge nobody counted, in lines: as it should go, and what goes wrong in it."""

import shutil
from pathlib import Path

import pytest

from finishing_tui.garment.commands import Finish, Press, TakeMeasure
from finishing_tui.garment.hand import InHand
from finishing_tui.garment.state import State
from finishing_tui.garment.walk import done_on
from finishing_tui.garment.work import StepWork
from tests.plain.making import garment, talked

EDGES = 12
"""The step of the vest that picks up both panel edges, counted from 0."""
LEFT, RIGHT, PANEL = 1, 3, 24
"""Its parts that are panel edges, and the stitches of each."""


@pytest.fixture(scope="module")
def begun(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return the folder of a vest whose panel edges are just begun."""
    folder = garment(tmp_path_factory.mktemp("vest") / "vest", "long-front-vest", "XL")
    hand = InHand.open(folder)
    hand.pick_up()
    while True:
        work = hand.state.standing.work if hand.state.standing else None
        if hand.state.current == EDGES and work is not None and work.at == LEFT:
            break
        hand.do(Finish() if work is None or work.complete else Press())
    hand.put_down("")
    hand.close()
    return folder


@pytest.fixture
def vest(begun: Path, tmp_path: Path) -> Path:
    """Return a copy of it."""
    return shutil.copytree(begun, tmp_path / "vest")


def told(vest: Path, *lines: str) -> str:
    """Type ``lines`` and put it down; return all that was said, which never is that anything puckers."""
    said = "\n".join(talked(vest, "escape", *lines, "q", ""))
    assert "will pucker" not in said
    return said


def state(vest: Path) -> State:
    """Return how the garment stands."""
    hand = InHand.open(vest, look=True)
    hand.close()
    return hand.state


def edges(vest: Path) -> StepWork:
    """Return the work of the step that picks up both edges."""
    work = state(vest).steps[EDGES].work
    assert work is not None
    return work


def picked(vest: Path, part: int) -> list[int]:
    """Return what was picked up row by row."""
    work = edges(vest)
    return done_on(work.progress[part], 0, work.stages[part].units)


def re_space(said: str) -> str:
    """Return the number of the way that re-spaces the rest."""
    return next(line[0] for line in reversed(said.splitlines()) if line.endswith(": Re-space the rest."))


def to_the_end(vest: Path) -> None:
    """Work what is left as it comes, by the keys that count."""
    hand = InHand.open(vest)
    hand.pick_up()
    while hand.state.current is not None:
        work = hand.state.standing.work if hand.state.standing else None
        measures = work is not None and not work.complete and work.stages[work.at].unit == "value"
        step = Finish() if work is None or work.complete else TakeMeasure("48") if measures else Press()
        assert hand.do(step) is None
    hand.put_down("")
    hand.close()


@pytest.mark.turns(of=3)
@pytest.mark.parametrize("rows", [36, 37, 38])
def test_the_whole_job(rows: int, vest: Path) -> None:
    """Counted at 15 and re-spaced, counted at 23, the marker, the second panel as the first, all joined and closed."""
    lines = [*["d"] * 15, "15", "1", str(rows - 22 - 13)]
    way = re_space(told(shutil.copytree(vest, vest.with_name("look")), *lines))
    said = told(vest, *lines, way, *["d"] * 8, "23", "d", "f", "d")
    assert "23 counted, as planned" in said
    assert "center join" in state(vest).ledger.markers
    said = told(vest, *["d"] * PANEL)
    assert sum(picked(vest, LEFT)) == sum(picked(vest, RIGHT)) == PANEL
    assert picked(vest, LEFT) == picked(vest, RIGHT)[::-1]
    assert len(picked(vest, LEFT)) == rows
    assert state(vest).ledger.on("edge_needle") == 2 * PANEL
    to_the_end(vest)
    assert state(vest).current is None
    assert state(vest).ledger.empty


def test_lost_at_17(vest: Path) -> None:
    """Nobody knows where: the count stands, what is to go is said, and the end is said when it comes."""
    said = told(vest, *["d"] * 17, "r", "17", "7", *["d"] * 3)
    assert "17 counted: 7 to go: 10 more rows at this rate; press z where the edge ends." in said.replace("\n  ", " ")
    assert "count the rows that are left" in said
    said = told(vest, *["d"] * 4, "z", "2")
    assert edges(vest).stages[LEFT].units in {35, 37}
    assert state(vest).ledger.on("edge_needle") == PANEL


@pytest.mark.parametrize(
    ("way", "stitches"),
    [
        ("Pick up a second stitch in row 32", PANEL),
        ("Lift and twist 1 strand onto the needle here", PANEL),
        ("Rip back to row 32", None),
        ("Leave it with fewer stitches", PANEL - 1),
        ("Pick up 1 more along the right panel edge; the sides won't match", PANEL - 1),
    ],
)
def test_23_and_no_room(way: str, stitches: int | None, vest: Path) -> None:
    """Each way is what it says; the second panel then has as many rows, and the corners are picked on both."""
    asked = told(shutil.copytree(vest, vest.with_name("look")), *["d"] * 23, "z")
    number = next(line[0] for line in asked.splitlines() if line.replace("\n  ", " ").endswith(f": {way}."))
    said = told(vest, *["d"] * 23, "z", number, "1")
    assert "short" in said
    if stitches is None:
        told(vest, *["d"] * 2)
        stitches = PANEL
    assert state(vest).ledger.on("edge_needle") == stitches
    assert edges(vest).stages[LEFT].units == 34
    told(vest, "f", "d", *["d"] * 3)
    second = edges(vest).stages[RIGHT]
    assert second.units == 34 or "won't match" in way
    assert second.target == (stitches + 2 if "won't match" in way else stitches)


def test_the_second_side_is_two_rows_shorter(vest: Path) -> None:
    """It is said when she says that it ends; told before, the corner pick is kept, and both have as many."""
    told(vest, *["d"] * 15, "15", "3", "14", "1", *["d"] * 9, "f", "d")
    rows = len(picked(vest, LEFT))
    assert rows == 36
    told(vest, *["d"] * 20)
    ends = told(shutil.copytree(vest, vest.with_name("ends")), *["d"] * 2, "x", "z", "0")
    assert "2 rows shorter than the left panel edge" in ends.replace("\n  ", " ")
    told(vest, "w", f"{rows - 2} rows", "2", *["d"] * 4)
    right = picked(vest, RIGHT)
    assert (len(right), sum(right), right[-1]) == (rows - 2, PANEL, 1)


def test_the_second_side_is_counted_as_expected_and_two_rows_shorter(vest: Path) -> None:
    """It is as long as the first only by guess: once it is counted, the rows left say so, and the first stays."""
    told(vest, *["d"] * 15, "15", "3", "14", "1", *["d"] * 9, "f", "d")
    rows = len(picked(vest, LEFT))
    said = told(vest, *["d"] * 12, "12", "r", "3", str(rows - 2 - 18), "1", *["d"] * 12)
    assert "12 counted, as planned; 36 on the needle." in said
    assert "34 rows in all: you have 12; pick up 12 over the last 16 rows." in said.replace("\n  ", " ")
    right = picked(vest, RIGHT)
    assert (len(right), sum(right), right[-1]) == (rows - 2, PANEL, 1)
    assert len(picked(vest, LEFT)) == rows


def test_missed_presses_are_asked_where_too(vest: Path) -> None:
    """Another row by the presses says nothing of the edge's length: the rows left are asked after it."""
    said = told(vest, *["d"] * 13, "15", "15", "3", "1", "3", "14", "1")
    assert said.count("Where are you on this edge?") == 1
    left = edges(vest).stages[LEFT]
    assert (left.units, left.uncounted) == (36, "")


def test_the_edge_ends_with_a_row_that_is_skipped(vest: Path) -> None:
    """It is asked whether that row lies there; picked up, it gives one of the two that are missing."""
    told(vest, *["d"] * 22)
    asked = told(shutil.copytree(vest, vest.with_name("none")), "z", "1")
    assert "How many rows come after your last stitch?" in asked.replace("\n  ", " ")
    assert "Left panel edge, last stitch in row 33" in asked
    assert ": Pick up 2 in the last row." in asked
    told(
        vest, "z", "1", next(line[0] for line in asked.splitlines() if line.endswith(": Leave it with fewer stitches."))
    )
    assert picked(vest, LEFT)[-3:] == [1, 1, 0]
    second = edges(vest).stages[RIGHT]
    assert (second.units, second.target) == (33, 22)


def test_a_question_left_after_missed_presses_counts_nothing_twice(vest: Path) -> None:
    """What was counted stands; the length stays unknown, and where she is may be said later by the same key."""
    told(vest, *["d"] * 13, "15", "15", "3", "1", "escape")
    left = edges(vest).stages[LEFT]
    assert left.uncounted == "spots"
    assert state(vest).ledger.on("edge_needle") == 15
    told(vest, "r", "3", "14", "1")
    assert edges(vest).stages[LEFT].units == 36


def at_the_join(vest: Path) -> None:
    """Pick up both panels, 36 rows each, and go on to the pairs that join them to the neck."""
    told(vest, *["d"] * 15, "15", "3", "14", "1", *["d"] * 9, "f", "d", *["d"] * PANEL, "f")
    hand = InHand.open(vest)
    hand.pick_up()
    while (work := hand.state.standing.work if hand.state.standing else None) is None or (
        work.complete or work.stages[work.at].unit != "pair"
    ):
        assert hand.do(Finish() if work is None or work.complete else Press()) is None
    hand.put_down("")
    hand.close()


def test_a_stitch_dropped_at_the_join(vest: Path) -> None:
    """Counted twice, looked for and found: both needles hold the same again, and the job goes on to its end."""
    at_the_join(vest)
    said = told(vest, *["d"] * 3, "44", "1", "44", "1")
    assert "You counted 44; it should be 45." in said
    assert "Look for a dropped stitch. Catch it with a pin at once." in said.replace("\n  ", " ")
    assert "1: Found it: 45." in said
    held = state(vest).ledger
    assert held.on("edge_needle") == held.on("back_needle") == 2 * PANEL - 3
    to_the_end(vest)
    assert state(vest).current is None
    assert state(vest).ledger.empty


def test_a_stitch_dropped_at_the_join_and_not_found(vest: Path) -> None:
    """Two together on the needle with one more make them the same, and the job goes on to its end."""
    at_the_join(vest)
    said = told(vest, *["d"] * 3, "44", "1", "44", "2")
    assert "expected 45" in said
    held = state(vest).ledger
    assert (held.on("edge_needle"), held.on("back_needle")) == (2 * PANEL - 4, 2 * PANEL - 3)
    told(vest, *["d"] * 3, "x")
    held = state(vest).ledger
    assert held.on("edge_needle") == held.on("back_needle") == 2 * PANEL - 8
    to_the_end(vest)
    assert state(vest).current is None
    assert state(vest).ledger.empty
