import shutil
from itertools import pairwise
from pathlib import Path

import pytest

from finishing_tui.garment.commands import TakeCount
from finishing_tui.garment.events import RepairChoice, WhyOff
from tests.plain.making import Twin, crew, events, talked
from tests.plain.test_whole_garments import NECKBAND

_WAYS = "3 short: you counted 7, planned 10."


@pytest.fixture(scope="module")
def half_way(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a crew neck put down half way along the left front of the neckband."""
    twin = Twin(crew(tmp_path_factory.mktemp("half way") / "crew"))
    twin.works_to(NECKBAND, 0, 12)
    twin.puts_down("")
    return twin.hand.folder


def both(half_way: Path, folder: Path) -> tuple[Twin, Path]:
    """Return a twin of the garment, and a copy to type at."""
    shutil.copytree(half_way, folder / "twin")
    shutil.copytree(half_way, folder / "plain")
    return Twin(folder / "twin"), folder / "plain"


@pytest.mark.parametrize(
    ("off", "answer", "left", "repair", "lines"),
    [
        (-1, "presses", None, "space-the-rest", ("3", "1")),
        (-1, "loops", None, "space-the-rest", ("2", "1")),
        (-1, "rows-left", 13, "space-the-rest", ("4", "13", "1")),
        (1, "half-way", None, "space-the-rest", ("5", "2")),
        (-3, "loops", None, "as-it-is", ("2", "4")),
    ],
)
def test_the_half_way_count_that_differs(
    half_way: Path,
    tmp_path: Path,
    off: int,
    answer: WhyOff,
    left: int | None,
    repair: RepairChoice,
    lines: tuple[str, ...],
) -> None:
    """A count that differs from the presses is asked about; each answer leaves the events of its command."""
    twin, plain = both(half_way, tmp_path)
    number = twin.loops(NECKBAND) + off
    twin.does(TakeCount(number, answer=answer, left=left, repair=repair))
    twin.puts_down("")
    said = talked(plain, str(number), str(number), *lines, "q", "")
    assert "  What happened?" in said
    assert "Type 1 to 5, or escape." in said
    assert any(f": you counted {number}, " in line for line in said)
    assert events(plain) == events(tmp_path / "twin")


def test_nothing_changes_before_a_way_is_taken(half_way: Path, tmp_path: Path) -> None:
    """What fits nothing leaves the question there, b goes one back, escape leaves it, and no event is written."""
    twin, plain = both(half_way, tmp_path)
    twin.puts_down("")
    asked = (
        *("recount", "7", "7", "6", "0", "d", "", "?", "-1"),
        *("2", "9", "x", "b", "backspace", "b", "escape"),
        *("r", "999999", "r", "escape"),
    )
    said = [line.strip() for line in talked(plain, *asked, "q", "")]
    questions = [line for line in said if line in {_WAYS, "What happened?"}]
    assert questions == ["What happened?"] * 7 + [_WAYS] * 3 + ["What happened?"]
    assert said.count("Nothing changed.") == 2
    assert events(plain) == events(tmp_path / "twin")


@pytest.mark.parametrize(
    "lines",
    [
        ("r", "7", "escape"),
        ("r", "7", "8", "7", "6", "escape"),
        ("7", "7", "b", "escape"),
        ("7", "7", "escape"),
    ],
)
def test_a_count_that_differs_is_counted_again(half_way: Path, tmp_path: Path, lines: tuple[str, ...]) -> None:
    """Another number starts over, and b goes back to the first count; nothing is written before it is known why."""
    twin, plain = both(half_way, tmp_path)
    twin.puts_down("")
    said = [line.strip() for line in talked(plain, *lines, "q", "")]
    assert "You counted 7; it should be 10." in said
    assert "Count the left front neck again." in said
    twice = any(a == b for a, b in pairwise(lines))
    assert ("What happened?" in said) == twice
    assert events(plain) == events(tmp_path / "twin")


@pytest.mark.parametrize("number", [7, 9, 11])
def test_the_first_answer_changes_nothing(half_way: Path, tmp_path: Path, number: int) -> None:
    """A stitch that slipped off is picked up where it was, one too many is found: the count is as planned."""
    twin, plain = both(half_way, tmp_path)
    twin.does(TakeCount(10))
    twin.puts_down("")
    said = talked(plain, str(number), str(number), "1", "q", "")
    assert "10 counted, as planned." in said
    assert events(plain) == events(tmp_path / "twin")


@pytest.mark.parametrize("line", ["as planned", "enter"])
def test_a_count_as_planned_is_taken_at_once(half_way: Path, tmp_path: Path, line: str) -> None:
    """With "as planned", or enter alone, the count is what the presses say."""
    twin, plain = both(half_way, tmp_path)
    loops = twin.loops(NECKBAND)
    twin.does(TakeCount(loops))
    twin.puts_down("")
    said = talked(plain, "r", line, "q", "")
    assert f"{loops} counted, as planned." in said
    assert events(plain) == events(tmp_path / "twin")
