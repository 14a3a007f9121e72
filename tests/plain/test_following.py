"""What a count changes further on, line by line: it is named, and put right only by the way that is chosen."""

from pathlib import Path

import pytest

from finishing_tui.garment.commands import PutRight, TakeCount
from tests.plain.making import Twin, crew, events, talked
from tests.plain.test_whole_garments import NECKBAND


def at_the_back_holder(folder: Path) -> Twin:
    """Return a crew neck of which the back holder, with 46 stitches, is counted next."""
    twin = Twin(crew(folder))
    twin.works_to(1)
    return twin


@pytest.mark.parametrize(
    ("line", "way"),
    [("1", PutRight("here", "back", 1)), ("3", PutRight("as-it-is", "back", 0)), ("escape", None)],
)
def test_a_count_that_differs_names_what_it_changes(tmp_path: Path, line: str, way: PutRight | None) -> None:
    """One missing of 46: the later numbers are said, and each answer leaves the events of its command, escape none."""
    twin = at_the_back_holder(tmp_path / "twin")
    twin.does(TakeCount(45, "back"), "45", "45", "2", "2")
    if way is None:
        twin.lines.append(line)
    else:
        twin.does(way, line)
    twin.puts_down("")
    said = talked(crew(tmp_path / "plain"), *twin.lines)
    assert "Look for a dropped stitch." in said
    assert "Catch it with a pin at once." in [one.strip() for one in said]
    at = said.index("This affects later steps.")
    assert "Step 5, Left back onto a needle, has 34 on the back holder, not 35." in said[at:]
    assert any(one.startswith("1: Make 1 on the back holder now.") for one in said[at:])
    assert "Type 1 to 3, or escape." in said[at:]
    assert events(tmp_path / "plain") == events(tmp_path / "twin")


def test_other_lines_do_nothing_while_it_is_asked(tmp_path: Path) -> None:
    """What fits no way is no answer: nothing is done, and the ways are said again without the numbers before them."""
    twin = at_the_back_holder(tmp_path / "twin")
    twin.does(TakeCount(45, "back"), "45", "45", "2", "2")
    twin.lines += ["d", "0", "6", "47"]
    twin.does(PutRight("as-it-is", "back", 0), "3")
    twin.puts_down("")
    said = talked(crew(tmp_path / "plain"), *twin.lines)
    assert events(tmp_path / "plain") == events(tmp_path / "twin")
    assert sum(one.startswith("Step 5, Left back onto a needle") for one in said) == 1
    assert sum(one.startswith("3: Carry on.") for one in said) == 5


def test_a_count_that_changes_nothing_asks_nothing(tmp_path: Path) -> None:
    """As many as the recipe says: the work goes on at once."""
    twin = at_the_back_holder(tmp_path / "twin")
    twin.does(TakeCount(46, "back"), "46")
    twin.puts_down("")
    said = talked(crew(tmp_path / "plain"), *twin.lines)
    assert "This affects later steps." not in said
    assert events(tmp_path / "plain") == events(tmp_path / "twin")


def test_a_recount_that_leaves_another_number_asks_too(tmp_path: Path) -> None:
    """Three loops short half way and left as they are, and so on the side that follows: the band's number is named."""
    twin = Twin(crew(tmp_path / "twin"))
    twin.works_to(NECKBAND, 0, 12)
    loops = twin.loops(NECKBAND) - 3
    twin.does(TakeCount(loops, answer="loops", repair="as-it-is"), str(loops), str(loops), "2", "4")
    twin.puts_down("")
    lines = [*twin.lines[:-2], "escape", *twin.lines[-2:]]
    said = talked(crew(tmp_path / "plain"), *lines)
    at = said.index("This affects later steps.")
    assert any("70 on the neck needle, not 76" in one for one in said[at:]), said[at:]
    assert events(tmp_path / "plain") == events(tmp_path / "twin")
